import { expect, test } from 'vitest';
import galena from '../../examples/medium-wave-galena.json' with { type: 'json' };
import { builtSet } from '../../src/engine/built/built-set.ts';
import { type Check, signsOf } from '../../src/engine/faults/checks.ts';
import { ohmPlacesOf } from '../../src/engine/faults/ohmmeter.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { checkText } from '../../src/outputs/words/en/faults/checks.ts';

const builtOf = (written: object) => {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return builtSet(read.set);
};

const textsOf = (written: object): readonly string[] => {
  const built = builtOf(written);
  const checks: readonly Check[] = [
    ...ohmPlacesOf(built).map((place) => ({ kind: 'ohms', place }) as const),
    ...signsOf(built).map((sign) => ({ kind: 'sign', sign }) as const),
  ];
  return checks.map((check) => checkText(check, built));
};

test('every check of a set says which part it is of, and no two say the same', () => {
  const traps = [{ kind: 'parallel', inductance: '40 µH', capacitance: '766 pF', q: 150 }];
  const texts = textsOf({
    ...galena,
    arrangement: { ...galena.arrangement, traps, seriesCapacitor: '100 pF' },
    load: { ...galena.load, equalizer: { resistance: '10 kΩ', capacitance: '0.1 µF' } },
  });
  expect(new Set(texts).size).toBe(texts.length);
  for (const text of [
    'Measure the resistance across the trap 1 coil.',
    'Measure the resistance across the by-pass capacitor, with one lead off.',
    'Measure the resistance across the capacitor of the equaliser, with one lead off.',
  ])
    expect(texts).toContain(text);
});

test('of two detectors each is measured by itself', () => {
  const texts = textsOf({
    ...galena,
    detector: { ...galena.detector, wiring: 'full-wave' },
    arrangement: { kind: 'direct', coil: galena.arrangement.coil },
  });
  expect(texts.filter((text) => text.includes('each of the two detectors'))).toHaveLength(2);
  expect(texts.filter((text) => text.includes('between turns'))).toHaveLength(2);
});
