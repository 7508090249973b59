import { describe, expect, test } from 'vitest';
import longWave from '../../../examples/long-wave-foil.json' with { type: 'json' };
import galena from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import amplifier from '../../../examples/medium-wave-germanium-amplifier.json' with { type: 'json' };
import { type BuiltSet, builtSet } from '../built/built-set.ts';
import { readValue } from '../set/read.ts';
import { planted } from './cases.ts';
import { signsOf } from './checks.ts';
import { faultsOfSet } from './dictionary.ts';
import { ohmPlacesOf, ohmReadings, seriesCapacitorsOf } from './ohmmeter.ts';
import { touchOf } from './touch.ts';

const builtOf = (written: object) => {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return builtSet(read.set);
};

const faultsOf = (built: BuiltSet) => faultsOfSet(built, [0], 'day');

const trapped = {
  ...galena,
  arrangement: {
    ...galena.arrangement,
    traps: [{ kind: 'parallel', inductance: '40 µH', capacitance: '766 pF', q: 150 }],
  },
};
const fixed = { kind: 'fixed', capacitance: '300 pF' };

describe('a capacitor that tunes, traps or leads to earth is not in the way of the signal', () => {
  test.each<[string, object]>([
    ['a fixed tuning capacitor', { ...galena, tuning: fixed }],
    ['the capacitor of a trap', trapped],
  ])('%s', (_, written) => {
    const built = builtOf(written);
    expect(seriesCapacitorsOf(built)).toEqual([]);
    expect(ohmPlacesOf(built)).not.toContain('fixed-capacitor');
    expect(signsOf(built)).not.toContain('louder-with-capacitor-bridged');
    for (const fault of faultsOf(built)) expect(fault.signs['louder-with-capacitor-bridged'], fault.id).toBe(undefined);
  });

  test('a shorted tuning capacitor shows by itself alone, beside one in series too', () => {
    const built = builtOf({ ...longWave, tuning: fixed });
    const shorted = faultsOf(built).find(({ code }) => code === 'tuning-shorted')!;
    const set = planted(built.circuit, [{ fault: shorted, severity: 0.5 }], [0]);
    const [alone, others] = ohmReadings(set, ['capacitor-alone', 'fixed-capacitor'], built.circuit);
    expect(alone).toBeLessThan(1);
    expect(others).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('in the way of the signal', () => {
  test.each<[string, object, readonly string[]]>([
    ['a series capacitor', longWave, ['series-capacitor']],
    ['a coupling capacitor', amplifier, ['coupling-capacitor']],
  ])('%s: its short and its open are told by the checks of it', (_, written, parts) => {
    const built = builtOf(written);
    expect(seriesCapacitorsOf(built)).toEqual(parts);
    expect(ohmPlacesOf(built)).toContain('fixed-capacitor');
    const readingWith = (code: string) => {
      const set = planted(built.circuit, [{ fault: of(code), severity: 0.5 }], [0]);
      return ohmReadings(set, ['fixed-capacitor'], built.circuit)[0];
    };
    const of = (code: string) => faultsOf(built).find((fault) => fault.code === code && fault.part === parts[0])!;
    expect(of('capacitor-open').signs['louder-with-capacitor-bridged']).toBeGreaterThan(0.5);
    expect(readingWith('capacitor-shorted')).toBeLessThan(1);
    expect(readingWith('capacitor-open')).toBe(Number.POSITIVE_INFINITY);
  });

  test('of two, one has the leads and the other is named too', () => {
    const arrangement = { ...amplifier.arrangement, seriesCapacitor: '100 pF' };
    const built = builtOf({ ...amplifier, arrangement });
    const { leads, parts } = touchOf({ kind: 'ohms', place: 'fixed-capacitor' }, built);
    expect([...new Set(leads.map(({ part }) => part)), ...parts].sort()).toEqual([
      'coupling-capacitor',
      'series-capacitor',
    ]);
  });

  test('of a list of elements, what joins two stages: not what lies across the coil, or leads to earth', () => {
    const elements = [
      { kind: 'capacitor', name: 'into', from: 'aerial', to: 'top', capacitance: '100 pF' },
      { kind: 'inductor', name: 'L', from: 'top', to: 'low', inductance: '200 µH', q: 150 },
      { kind: 'capacitor', name: 'across', from: 'top', to: 'low', capacitance: '50 pF' },
      { kind: 'capacitor', name: 'foot', from: 'low', to: 'earth', capacitance: '10 nF' },
      { kind: 'resistor', name: 'R', from: 'low', to: 'earth', resistance: '1 MΩ' },
      { kind: 'tuning', name: 'C', from: 'top', to: 'earth' },
      { kind: 'detector', name: 'D', from: 'top', to: 'out' },
    ];
    const built = builtOf({ ...galena, arrangement: { kind: 'elements', elements } });
    expect(seriesCapacitorsOf(built).map((id) => built.parts.get(id)!.displayName)).toEqual(['into']);
  });
});
