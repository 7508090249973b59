import { type Coast, coastline, type LandTopology } from '../src/engine/place/coast.ts';
import { groundWave } from '../src/engine/place/ground-wave/ground-wave.ts';
import { arrivalMemory } from '../src/engine/place/stations/arrival.ts';
import { arrivals } from '../src/engine/place/stations/arrivals.ts';
import type { Station } from '../src/engine/place/stations/station.ts';

/** An invented site by a coast. */
const PLACE = { position: { latitude: 53.2, longitude: 5.1 }, ground: 'average' } as const;
const TIME = new Date('2025-11-05T20:00:00Z');

/** A ring of invented transmitters about 1000 km away, over land and sea, on as many channels as there are. */
export function benchStations(count: number): Station[] {
  return Array.from({ length: count }, (_, n) => ({
    name: `Station ${n + 1}`,
    frequency: 531e3 + 9e3 * (n % 120),
    power: 1e4 * (1 + (n % 7)),
    position: {
      latitude: 53.2 + 9 * Math.cos((2 * Math.PI * n) / count),
      longitude: 5.1 + 15 * Math.sin((2 * Math.PI * n) / count),
    },
  }));
}

/** Reading a coastline into its bands of latitude. */
export const benchCoastline = (land: LandTopology): Coast => coastline(land);

/** 200 mixed paths of 1000 km by night with nothing remembered. Aim: under a second. */
export const benchArrivals = (land: LandTopology, stations = benchStations(200)): number =>
  arrivals(PLACE, stations, { time: TIME, coast: coastline(land) }).length;

/** The same again with everything remembered, as when the time of day is moved. @returns a function to run often. */
export function benchArrivalsAgain(land: LandTopology, stations = benchStations(200)): () => number {
  const options = { time: TIME, coast: coastline(land), memory: arrivalMemory() };
  arrivals(PLACE, stations, options);
  return () => arrivals(PLACE, stations, options).length;
}

/** Points on one ground-wave curve, roots found beforehand. @returns the sum, so that nothing is left out. */
export function benchCurve(points: number): number {
  const { level } = groundWave({ frequency: 1e6, ground: 'average' });
  let sum = 0;
  for (let n = 1; n <= points; n++) sum += level((1e6 * n) / points);
  return sum;
}

/** Curves for new frequencies and grounds, each used at one distance beyond the switch. */
export function benchRoots(curves: number): number {
  let sum = 0;
  for (let n = 0; n < curves; n++) sum += groundWave({ frequency: 5e5 + 1e3 * n, ground: 'average' }).level(100e3);
  return sum;
}
