import fc from 'fast-check';
import { expect, test } from 'vitest';
import frame from '../../../examples/frame-aerial.json' with { type: 'json' };
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { readValue } from '../set/read.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { explainingSizes, measuredFigures } from './explaining-sizes.ts';
import { fittedLogarithm, reachOf } from './fitted.ts';
import { calculatedFigure, measurableFigures } from './measurable.ts';

function setOf(description: unknown) {
  const read = readValue(description);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const INDUCTANCE = ['coils', 0, 'measured', 'inductance'];
/** As a meter of 0.5 % reads it. */
const reading = (value: number) => fittedLogarithm(Math.log(value), 0.005, reachOf());

test('a coil wound with other turns, or on another former, than described: both sizes are found', () => {
  const set = setOf(demo);
  const { turns, formerDiameter } = demo.coils[0];
  const described = Number.parseFloat(formerDiameter) * 1e-3;
  fc.assert(
    fc.property(fc.integer({ min: turns - 8, max: turns + 8 }), (actual) => {
      fc.pre(Math.abs(actual - turns) > 1);
      const { value } = calculatedFigure(withValueAt(set, ['coils', 0, 'turns'], actual), INDUCTANCE)!.calculated;
      const found = explainingSizes(set, INDUCTANCE, reading(value));
      expect(found.find(({ size }) => size === 'coil.turns')?.explaining).toBe(actual);
    }),
    { numRuns: 15 },
  );
  fc.assert(
    fc.property(fc.double({ min: 0.92, max: 1.08, noNaN: true }), (factor) => {
      fc.pre(Math.abs(factor - 1) > 0.02);
      const actual = withValueAt(set, ['coils', 0, 'formerDiameter'], described * factor);
      const { value } = calculatedFigure(actual, INDUCTANCE)!.calculated;
      const found = explainingSizes(set, INDUCTANCE, reading(value));
      const former = found.find(({ size }) => size === 'coil.formerDiameter')!;
      expect(former.explaining / (described * factor)).toBeCloseTo(1, 5);
      expect(former.described).toBeCloseTo(described, 9);
    }),
    { numRuns: 15 },
  );
});

test.each([
  ['medium-wave set, inductance', demo, INDUCTANCE, 0.93],
  ['medium-wave set, aerial', demo, ['aerial', 'measured', 'capacitance'], 1.12],
  ['medium-wave set, earth', demo, ['earth', 'measured', 'resistance'], 1.4],
  ['frame, inductance', frame, ['aerial', 'measured', 'inductance'], 1.06],
] as const)('every size found makes the calculated figure the measured one: %s', (_, description, path, factor) => {
  const set = setOf(description);
  const wanted = factor * calculatedFigure(set, path)!.calculated.value;
  const found = explainingSizes(set, path, reading(wanted));
  expect(found.length).toBeGreaterThan(0);
  for (const { size, path: at, described, explaining } of found) {
    expect(valueAtPath(set, at)).toBe(described);
    const ofOne = (value: number) => calculatedFigure(withValueAt(set, at, value), path)!.calculated.value;
    // What is counted comes as near as a whole number can.
    const step = /turns|vanes|sheets/i.test(size)
      ? Math.abs(ofOne(explaining + 0.5) / ofOne(explaining - 0.5) - 1)
      : 2e-5;
    expect(Math.abs(ofOne(explaining) / wanted - 1), size).toBeLessThan(step);
  }
});

test('what is measured as calculated, or off by more than any size could be, names none', () => {
  const set = setOf(demo);
  const { value } = calculatedFigure(set, INDUCTANCE)!.calculated;
  expect(explainingSizes(set, INDUCTANCE, reading(value * 1.008))).toEqual([]);
  expect(explainingSizes(set, INDUCTANCE, reading(value * 3))).toEqual([]);
  expect(explainingSizes(set, INDUCTANCE, reading(Number.NaN))).toEqual([]);
});

test('a measured value of the description stands beside the calculated one with its method and date', () => {
  const measured = { inductance: { value: '200 µH', error: '1 %', method: 'bridge', date: '2026-11-20' } };
  const [only, ...others] = measuredFigures(setOf({ ...demo, coils: [{ ...demo.coils[0], measured }] }));
  expect(others).toEqual([]);
  expect(only).toMatchObject({ property: 'coil.inductance', path: INDUCTANCE, method: 'bridge', date: '2026-11-20' });
  expect(only.measured.value).toBeCloseTo(200e-6, 9);
  expect(only.sizes.map(({ size }) => size)).toContain('coil.turns');
});

test.each([
  ['aerial.resistance', ['aerial', 'measured', 'resistance']],
  ['aerial.effectiveHeight', ['aerial', 'measured', 'effectiveHeight']],
] as const)('%s measured at 600 kHz as calculated there names no sizes, whatever it is at 1 MHz', (property, path) => {
  const measuredAs = (value: number) => setOf(withValueAt(demo, path, { value, error: '0.1 %', at: '600 kHz' }));
  const figureOf = (value: number) => measurableFigures(measuredAs(value)).find((one) => one.property === property)!;
  const { value } = figureOf(1).calculated;
  const elsewhere = calculatedFigure(setOf(demo), path)!.calculated.value;
  // Half a per cent apart names sizes: a figure that runs less with frequency would say nothing here.
  expect(Math.abs(value / elsewhere - 1)).toBeGreaterThan(0.005);
  const [only] = measuredFigures(measuredAs(value));
  expect(only).toMatchObject({ property, at: 600e3, sizes: [] });
  expect(only.agreement.difference).toBeCloseTo(0, 6);
});
