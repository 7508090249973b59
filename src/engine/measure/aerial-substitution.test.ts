import { describe, expect, test } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { readValue } from '../set/read.ts';
import { readMeasurements } from './readings.ts';
import { capacitorOf, positionOn } from './scale-of-capacitor.ts';

const [L, strays, Ca, natural] = [220e-6, 20e-12, 190e-12, 4e6];

/** Dial positions with the aerial and without it, and what a set of such a capacitor makes of them. */
function substituted(tuning: object, stated?: object) {
  const { law: _, ...rest } = demo.tuning as Record<string, unknown>;
  const read = readValue({ ...demo, tuning: { ...rest, ...tuning } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const capacitor = capacitorOf(read.set)!;
  const points = [600e3, 700e3, 800e3].map((frequency) => {
    const theta = (Math.PI * frequency) / (2 * natural);
    const aerial = (Ca * Math.tan(theta)) / theta;
    const at = (across: number) => positionOn(frequency, { ...capacitor, L, stray: strays + across });
    // Behind 120 pF, so that there is room on the dial for it.
    return { frequency, without: at(0), with: at((aerial * 120e-12) / (aerial + 120e-12)), series: '120 pF' };
  });
  const taken = readMeasurements(
    [{ kind: 'aerial-substitution', points, ...(stated && { capacitor: stated }) }],
    read.set,
  );
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  return taken.measurements[0].fit!;
}

describe('an aerial by substitution on the set’s own dial', () => {
  for (const law of ['semicircular', 'square-law', 'straight-line frequency', 'logarithmic'] as const)
    test(`a ${law} capacitor, its law and ends as described`, () => {
      const { figures } = substituted({ law });
      expect(figures.capacitance.value / Ca).toBeCloseTo(1, 4);
      expect(figures.capacitance.standardError / Ca).toBeGreaterThan(0.005);
    });

  test('with a padder in series', () => {
    expect(substituted({ law: 'square-law', padder: '2 nF' }).figures.capacitance.value / Ca).toBeCloseTo(1, 4);
  });

  test('a law that nobody knows is the described one; another one that is stated is named', () => {
    const ends = { minimum: '15 pF', maximum: '500 pF' };
    expect(substituted({ law: 'square-law' }, { law: 'unknown', ...ends }).figures.capacitance.value / Ca).toBeCloseTo(
      1,
      4,
    );
    const { figures, warnings } = substituted({ law: 'square-law' }, { law: 'semicircular', ...ends });
    expect(figures.capacitance.value / Ca).toBeCloseTo(1, 4);
    expect(warnings.map(({ code }) => code)).toContain('measure.other-law');
  });

  test('is refused where nobody says what the capacitor is', () => {
    const read = readMeasurements([
      { kind: 'aerial-substitution', points: [{ frequency: '693 kHz', without: 0.6, with: 0.2 }] },
    ]);
    expect(read.ok ? [] : read.problems).toEqual([
      { path: 'measurements[0].points', unfit: { code: 'dial.no-capacitor' } },
    ]);
  });
});
