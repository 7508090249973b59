import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { readText, receive, turnSwitch } from '../../src/engine/index.ts';
import { preparer, type StoryScene, scenesOf } from '../../src/outputs/explain/index.ts';
import { storyTexts } from '../../src/outputs/words/index.ts';

function example(name: string) {
  const read = readText(readFileSync(inRoot('examples', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
}
const onCarrier = (carrier: number, more: StoryScene['settings'] = {}) => ({
  rows: [],
  settings: { ...more, carrier },
});

describe('a carrier that is turned', () => {
  test('is received as a station there is: by the same coil on the same band', () => {
    const set = example('medium-wave-galena');
    const reception = receive(set);
    const prepare = preparer(set, reception);
    const other = reception.stations.find((s) => s.dial && s.index !== reception.best[0])!;
    const moved = prepare(onCarrier(other.frequency)).waves.spec;
    // The best station's levels, its Q that of the circuit at the other's frequency.
    expect(moved.carrier).toBe(other.frequency);
    expect(moved.loadedQ / other.loadedQ).toBeGreaterThan(0.6);
    expect(moved.loadedQ / other.loadedQ).toBeLessThan(1.6);
    const own = prepare({ rows: [], settings: {} }).waves.spec;
    expect(moved.loadedQ).not.toBeCloseTo(own.loadedQ, 1);
  });

  test('on another position of the band switch has that coil’s Q', () => {
    const set = example('two-band');
    const reception = receive(set);
    const station = reception.stations[reception.best[0]];
    const isMedium = station.frequency > 385e3;
    const prepare = preparer(set, reception);
    const carrier = isMedium ? 200e3 : 1000e3;
    const moved = prepare(onCarrier(carrier)).waves.spec;
    // The same set with the switch turned, on a station of the same strength and place there.
    const turned = turnSwitch(
      set,
      set.bands!.findIndex((band) => band.arrangement !== undefined),
    );
    const described = { ...set.place.stations[station.index], frequency: carrier };
    const there = receive({ ...turned, place: { ...set.place, stations: [described] } });
    // A whole reception sets the pointer a little otherwise than one station by itself.
    expect(Math.abs(moved.loadedQ / there.stations[0].loadedQ - 1)).toBeLessThan(0.02);
    expect(Math.abs(moved.atDetector / there.stations[0].detectorVoltage - 1)).toBeLessThan(0.02);
    expect(Math.abs(moved.loadedQ / station.loadedQ - 1)).toBeGreaterThan(0.2);
  });

  test('on a band that the coil does not reach is received by the coil rewound for it', () => {
    const set = example('long-wave-foil');
    const reception = receive(set);
    const prepare = preparer(set, reception);
    const own = prepare({ rows: [], settings: {} }).waves.spec;
    const moved = prepare(onCarrier(1000e3)).waves.spec;
    const bandwidth = moved.carrier / moved.loadedQ;
    // A long-wave Q at 1 MHz would be a bandwidth in proportion to the carrier, on a coil that cannot be tuned there.
    expect(moved.loadedQ).not.toBeCloseTo(own.loadedQ, 0);
    expect(bandwidth).toBeGreaterThan(own.carrier / own.loadedQ);
    expect(moved.atTuned).toBeGreaterThan(0);
    const beyond = prepare(onCarrier(1700e3)).waves.spec;
    expect(beyond.loadedQ).not.toBeCloseTo(moved.loadedQ, 1);
  });

  test('works with another detector at once, and goes back to the set’s own', () => {
    const set = example('medium-wave-galena');
    const prepare = preparer(set, receive(set));
    const own = prepare({ rows: [], settings: {} }).waves.spec;
    const galena = prepare(onCarrier(900e3)).waves.spec;
    const silicon = prepare(onCarrier(900e3, { detector: 'silicon' })).waves.spec;
    expect(silicon.loadedQ).not.toBeCloseTo(galena.loadedQ, 1);
    expect(silicon.detectorId).toBe('silicon');
    expect(prepare({ rows: [], settings: {} }).waves.spec.loadedQ).toBe(own.loadedQ);
    expect(prepare(onCarrier(own.carrier)).waves.spec.loadedQ).toBe(own.loadedQ);
  });

  test('the story’s scene of two bands draws each with its own', () => {
    const set = example('medium-wave-galena');
    const prepare = preparer(set, receive(set));
    const scene = scenesOf(undefined).scenes.find(({ title }) => title === storyTexts.bands.title)!;
    const [long, medium] = prepare(scene).rows.map(({ waves }) => waves.spec);
    expect([long.carrier, medium.carrier]).toEqual([200e3, 1000e3]);
    expect(long.loadedQ).not.toBeCloseTo(medium.loadedQ, 1);
  });
});
