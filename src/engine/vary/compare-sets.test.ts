import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { switchBand } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import { readText } from '../set/read.ts';
import { stationNamed } from '../set/want-problems.ts';
import { compareSets } from './compare-sets.ts';

const example = (name: string): SetDescription => {
  const read = readText(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.set;
};
const set = example('medium-wave-galena');
const STATION = 0;
const difference = (a: SetDescription, b: SetDescription) => compareSets([a, b], STATION).sets[1].difference!;
const withTap = (detectorTap: number): SetDescription => ({
  ...set,
  arrangement: { ...set.arrangement, detectorTap } as SetDescription['arrangement'],
});

describe('sets compared', () => {
  it('finds nothing otherwise in the same set, nor in one whose coil has another name or that stands elsewhere', () => {
    const named: SetDescription = {
      ...set,
      name: 'Another',
      place: { ...set.place, name: 'Elsewhere' },
      coils: set.coils.map((coil) => ({ ...coil, name: `my ${coil.name}` })),
      arrangement: { ...set.arrangement, coil: `my ${set.coils[0].name}` } as SetDescription['arrangement'],
    };
    const { sets, moved } = compareSets([set, set, named], STATION);
    for (const { difference } of sets.slice(1)) expect(difference).toEqual({ level: 0, bandwidth: 1, exchanges: [] });
    expect(moved).toEqual([2]);
  });

  // By the definition of sensitivity: the sound pressure level for the same power, and no effect on the tuned circuit.
  it('phones 10 dB more sensitive are 10 dB louder, and as selective', () => {
    const load = set.load as Extract<SetDescription['load'], { kind: 'phones' }>;
    const { level, bandwidth, exchanges } = difference(
      { ...set, load: { ...load, sensitivity: 100 } },
      { ...set, load: { ...load, sensitivity: 110 } },
    );
    expect(level).toBeCloseTo(10, 6);
    expect(bandwidth).toBeCloseTo(1, 9);
    expect(exchanges.map(({ part }) => part)).toEqual(['load']);
    expect(exchanges[0].level).toBeCloseTo(10, 6);
  });

  it('a change of the tap alone is all of the difference, and the other way round its opposite', () => {
    const [there, back] = [difference(withTap(18), withTap(50)), difference(withTap(50), withTap(18))];
    expect(there.exchanges).toHaveLength(1);
    expect(there.exchanges[0]).toMatchObject({
      part: 'arrangement',
      setting: { key: 'detectorTap', from: 18, to: 50 },
    });
    expect(back.level).toBeCloseTo(-there.level!, 9);
    expect(back.bandwidth).toBeCloseTo(1 / there.bandwidth!, 9);
    expect(back.exchanges[0].level).toBeCloseTo(-there.exchanges[0].level!, 9);
    // More of the coil before the detector loads the tuned circuit more.
    expect(there.bandwidth).toBeGreaterThan(1.2);
  });

  it.each(['two-tuned-circuits', 'ferrite-rod-valve-diode', 'slider-set', 'long-wave-foil'])(
    '%s: every part that is otherwise is exchanged, and none that is not',
    (name) => {
      const other = example(name);
      const here: SetDescription = { ...other, place: set.place, ear: set.ear };
      const { exchanges } = difference(set, here);
      const isOther = (key: 'tuning' | 'detector' | 'load') => JSON.stringify(set[key]) !== JSON.stringify(here[key]);
      const parts = exchanges.flatMap(({ part }) => part.split('-'));
      for (const key of ['tuning', 'detector', 'load'] as const) expect(parts.includes(key), key).toBe(isOther(key));
      expect(parts).toContain('coils');
    },
  );

  it('names the aerial of a frame beside a ferrite rod together with its coil', () => {
    const frame = example('frame-aerial');
    const rod: SetDescription = { ...example('ferrite-rod-valve-diode'), place: frame.place, ear: frame.ear };
    const parts = difference(frame, rod).exchanges.map(({ part }) => part);
    expect(parts).toContain('aerial-coils-arrangement');
    expect(parts).not.toContain('aerial');
    expect(parts).not.toContain('coils-arrangement');
  });

  it('leaves a wave trap tuned as it is in a set from another place', () => {
    const stops = set.place.stations[1];
    const trapped = (name: string): SetDescription => {
      const traps = [{ kind: 'parallel', stops: name, inductance: 150e-6, q: 100, coupling: 0.05 }];
      const stations = set.place.stations.map((one) => (one === stops ? { ...one, name } : one));
      return {
        ...set,
        place: { ...set.place, stations },
        arrangement: { ...set.arrangement, traps } as SetDescription['arrangement'],
      };
    };
    const [here, elsewhere] = [trapped(stops.name), trapped('Radio Elm')];
    const [same, moved] = [here, elsewhere].map((one) => difference(set, one));
    expect(moved.level).toBeCloseTo(same.level!, 9);
    expect(moved.bandwidth).toBeCloseTo(same.bandwidth!, 9);
  });

  it('refuses a station that is not there', () => {
    expect(() => compareSets([set, set], 99)).toThrow(RangeError);
  });

  it('a set with a band switch is compared on the band that receives the station best, the first as it stands', () => {
    const twoBand = example('two-band');
    const longWave = stationNamed(twoBand.place.stations, 'Radio Ostrand')!;
    const onLong = switchBand(twoBand, 'long wave');
    const { sets } = compareSets([onLong, twoBand], longWave);
    expect(sets[1].station.dial).toBeDefined();
    expect(sets[1].difference).toEqual({ level: 0, bandwidth: 1, exchanges: [] });
    const standing = compareSets([twoBand, twoBand], longWave).sets;
    expect([standing[0].station.dial, standing[1].station.dial]).toEqual([undefined, expect.anything()]);
  });
});
