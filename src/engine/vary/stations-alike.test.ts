import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Disturber } from '../kinds/adjustment.ts';
import { receive } from '../reception/path/receive.ts';
import { readValue } from '../set/read.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { disturberAt, disturberIndex, suggest } from './suggest.ts';
import { trialsOf } from './trial.ts';

const written = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));

interface Station {
  readonly frequency: number;
  readonly fieldStrength: number;
  readonly bearing: number;
}
const anyStation = fc.record({
  frequency: fc.constantFrom(603e3, 612e3, 621e3, 702e3),
  fieldStrength: fc.constantFrom(1e-3, 5e-3, 20e-3, 60e-3),
  bearing: fc.constantFrom(0, 90),
});

/** The first example with other stations, named by a rule. */
function setWith(stations: readonly Station[], nameOf: (index: number) => string) {
  const read = readValue({
    ...written,
    wants: [],
    place: { ...written.place, stations: stations.map((station, i) => ({ ...station, name: nameOf(i) })) },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}

/** What is found of each station beside each other one, by their places in the list. */
function found(stations: readonly Station[], nameOf: (index: number) => string) {
  const set = setWith(stations, nameOf);
  const { now } = trialsOf(set);
  const each = [...stations.keys()];
  return {
    clearances: each.map((station) => each.map((other) => now.clearanceFrom(station, other))),
    disturbers: each.map((station) => {
      const worst = disturberIndex(now, station);
      const { name: _, ...disturber }: Partial<Disturber> = worst === undefined ? {} : disturberAt(now, worst);
      return disturber;
    }),
    disturbances: receive(set).stations.map(({ disturbances }) => disturbances.map(({ by: _, ...one }) => one)),
  };
}

describe('stations that are alike in name and frequency', () => {
  it('are told apart: nothing that is found of them depends on their names', () => {
    fc.assert(
      fc.property(fc.array(anyStation, { minLength: 2, maxLength: 6 }), (stations) => {
        expect(found(stations, () => 'Marsh')).toEqual(found(stations, (i) => `Marsh ${i}`));
      }),
      { numRuns: 25 },
    );
  });

  it('each stand over a third by their own field', () => {
    const stations = [
      { frequency: 603e3, fieldStrength: 20e-3, bearing: 0 },
      { frequency: 612e3, fieldStrength: 60e-3, bearing: 0 },
      { frequency: 612e3, fieldStrength: 5e-3, bearing: 0 },
    ];
    const { clearances, disturbances } = found(stations, (i) => (i === 0 ? 'Fen' : 'Marsh'));
    expect(clearances[0][1]).toBeLessThan(clearances[0][2] - 10);
    expect(disturbances[0].map(({ index }) => index)).toEqual([1, 2]);
  });

  it('are told apart in a list so long that only some are watched, and in ranges', () => {
    const stations = Array.from({ length: 32 }, (_, i) => ({
      frequency: i === 0 ? 603e3 : 612e3,
      fieldStrength: 1e-3 * (1 + ((7 * i) % 32)),
      bearing: 0,
    }));
    const [alike, named] = [() => 'Marsh', (i: number) => `Marsh ${i}`].map((nameOf) => {
      const set = setWith(stations, nameOf);
      const { now } = trialsOf(set);
      const ranged = receiveRanged({ ...set, place: { ...set.place, stations: set.place.stations.slice(0, 5) } });
      return {
        clearances: [...stations.keys()].map((other) => now.clearanceFrom(0, other)),
        ranges: ranged.stations.map(({ disturbances }) => disturbances.map(({ index, range }) => ({ index, range }))),
      };
    });
    expect(new Set(alike.clearances.filter(Number.isFinite)).size).toBe(24);
    expect(alike).toEqual(named);
  });

  it('are advised about alike', () => {
    const stations = [
      { frequency: 603e3, fieldStrength: 20e-3, bearing: 0 },
      { frequency: 621e3, fieldStrength: 1e-3, bearing: 0 },
      { frequency: 621e3, fieldStrength: 60e-3, bearing: 90 },
    ];
    const [alike, named] = [() => 'Marsh', (i: number) => `Marsh ${i}`].map((nameOf) =>
      suggest(trialsOf(setWith(stations, nameOf)), 0).map(({ settings, gain }) => ({ settings, gain })),
    );
    expect(alike.length).toBeGreaterThan(0);
    // A trap names the station it stops: by frequency where the name is not enough.
    const byFrequency = JSON.parse(
      JSON.stringify(named).replace(/"Marsh (\d)"/g, (_, i) => `"${stations[i].frequency / 1e3} kHz"`),
    );
    expect(JSON.parse(JSON.stringify(alike))).toEqual(byFrequency);
  });
});
