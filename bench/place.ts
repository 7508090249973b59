import { readFileSync } from 'node:fs';
import { type Coast, coastline, type LandTopology } from '../src/engine/place/coast.ts';
import { groundWave } from '../src/engine/place/ground-wave/ground-wave.ts';
import { arrivalMemory } from '../src/engine/place/stations/arrival.ts';
import { arrivals } from '../src/engine/place/stations/arrivals.ts';
import type { Station } from '../src/engine/place/stations/station.ts';
import { fieldsAtSite } from '../src/engine/reception/path/field.ts';
import type { PlaceDescription } from '../src/engine/set/place.ts';
import type { Measurement } from './bench.ts';

/** An invented site by a coast. */
const PLACE = { position: { latitude: 53.2, longitude: 5.1 }, ground: 'average' } as const;
const TIME = new Date('2025-11-05T20:00:00Z');

/** A ring of invented transmitters about 1000 km away, over land and sea, on as many channels as there are. */
function ring(count: number): Station[] {
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

const land: LandTopology = JSON.parse(readFileSync('node_modules/world-atlas/land-50m.json', 'utf8'));
const stations = ring(200);
const kept = { time: TIME, coast: coastline(land), memory: arrivalMemory() };

/** 40 stations over one kind of ground, as when a set's own parts are changed. */
const near: PlaceDescription = {
  name: 'Here',
  ground: 'average',
  environment: 'rural',
  stations: Array.from({ length: 40 }, (_, n) => ({
    name: `Station ${n + 1}`,
    frequency: 531e3 + 27e3 * n,
    power: 1e4,
    distance: (20 + 15 * n) * 1e3,
    mastGain: 0,
    modulation: 0.6,
    programme: 'speech' as const,
  })),
};
const nearKept = { memory: arrivalMemory() };
/** Kept, lest the work be left out. */
export const keep = { sum: 0 };

export const measurements: Measurement[] = [
  {
    name: '200 stations at 1000 km over land and sea by night, coast and roots found anew',
    unit: 'list',
    goal: { atMost_s: 1 },
    run() {
      const coast: Coast = coastline(land);
      keep.sum += arrivals(PLACE, stations, { time: TIME, coast }).length;
    },
  },
  {
    name: 'the same with what is known kept',
    unit: 'list',
    against: '200 stations at 1000 km over land and sea by night, coast and roots found anew',
    run() {
      keep.sum += arrivals(PLACE, stations, kept).length;
    },
  },
  {
    name: 'field of 40 stations over one kind of ground',
    unit: 'list',
    goal: { atMost_s: 0.002 },
    run() {
      const fieldOf = fieldsAtSite(near);
      for (const station of near.stations) keep.sum += fieldOf(station).fieldStrength;
    },
  },
  {
    name: 'the same with its curves kept, as when a slider of the set moves',
    unit: 'list',
    against: 'field of 40 stations over one kind of ground',
    run() {
      const fieldOf = fieldsAtSite(near, nearKept);
      for (const station of near.stations) keep.sum += fieldOf(station).fieldStrength;
    },
  },
  {
    name: 'points on one ground-wave curve',
    unit: 'point',
    run() {
      const { level } = groundWave({ frequency: 1e6, ground: 'average' });
      for (let n = 1; n <= 1000; n++) keep.sum += level(1e3 * n);
      return 1000;
    },
  },
  {
    name: 'ground-wave curves for new frequencies, one far point of each',
    unit: 'curve',
    run() {
      for (let n = 0; n < 100; n++)
        keep.sum += groundWave({ frequency: 5e5 + 1e3 * n, ground: 'average' }).level(100e3);
      return 100;
    },
  },
];
