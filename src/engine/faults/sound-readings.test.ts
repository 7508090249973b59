import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { builtSet } from '../built/built-set.ts';
import { coilModel } from '../kinds/models.ts';
import { receive } from '../reception/path/receive.ts';
import { readText } from '../set/read.ts';
import { faultModel } from './fault-model.ts';
import { isReadAtMiddle, ohmPlacesOf, ohmReadings } from './ohmmeter.ts';
import { sound } from './planting.ts';
import { soundReadings } from './sound-readings.ts';

const examples = readdirSync(inRoot('examples')).filter((name) => name.endsWith('.json'));
const setOf = (name: string) => {
  const read = readText(readFileSync(inRoot('examples', name), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
};

describe.each(examples)('%s with nothing wrong', (name) => {
  const set = setOf(name);
  const built = builtSet(set);
  const readings = soundReadings(built, {});

  test('a wired coil reads as its wire does, from start to end', () => {
    let seen = 0;
    for (const [id, { values, terminals }] of built.parts) {
      if (values.kind !== 'coil' || values.coil === undefined) continue;
      const [start, end] = (['start', 'end'] as const).map((is) => terminals.find((one) => one.is === is)!);
      const { dcResistance } = coilModel(set.coils[values.coil]);
      expect(readings.ohmsBetween(id, start.id, end.id)! / dcResistance).toBeCloseTo(1, 2);
      seen++;
    }
    if (set.coils.length > 0) expect(seen).toBeGreaterThan(0);
  });

  test('places read as the search for faults has them', () => {
    const { bench, sound } = faultModel(built, { cases: 1 });
    bench.places.forEach((place, i) => {
      expect(readings.ohmsAt(place)).toBe(sound.ohms[i]);
    });
    const strongest = Math.max(...bench.stations.map((station) => readings.directVoltage(station)));
    expect(strongest).toBeCloseTo(sound.directVoltage, 12);
  });

  test('a meter of 10 MΩ takes a little of each station’s direct voltage, and no more', () => {
    for (const { index, dial, directVoltage } of receive(set, {}).stations) {
      if (!dial || Math.abs(directVoltage) < 1e-6) continue;
      const share = readings.directVoltage(index) / directVoltage;
      expect(share).toBeGreaterThan(0.9);
      expect(share).toBeLessThanOrEqual(1 + 1e-9);
    }
  });
});

test('a crystal alone conducts one way more than the other', () => {
  const [forward, back] = soundReadings(builtSet(setOf('medium-wave-galena.json')), {}).detectorAlone();
  expect(forward).toBeLessThan(5e3);
  expect(back).toBeGreaterThan(5 * forward);
});

test('a reading that another place of the tuning changes is one of those read with the slider in the middle', () => {
  for (const name of examples) {
    const built = builtSet(setOf(name));
    const places = ohmPlacesOf(built);
    const { circuit } = built;
    const readingsAt = (position: number) => {
      const assembly = { ...circuit.assembly, baseAt: () => circuit.assembly.baseAt(position) };
      return ohmReadings(sound({ ...circuit, assembly }), places, circuit);
    };
    const [low, middle] = [readingsAt(0.1), readingsAt(0.5)];
    const differing = places.filter((_, i) => Math.abs(low[i] - middle[i]) > 0.01 * middle[i]);
    const said = places.filter((place) => isReadAtMiddle(place, built));
    expect(said, name).toEqual(differing);
    expect(differing.length > 0, name).toBe(name === 'slider-set.json');
  }
});
