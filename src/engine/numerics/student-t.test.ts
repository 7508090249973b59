import { expect, test } from 'vitest';
import { studentQuantile, studentTails } from './student-t.ts';

test('quantiles are those of the tables', () => {
  // Abramowitz and Stegun, table 26.10.
  const rows = [
    [0.95, 1, 6.314],
    [0.95, 2, 2.92],
    [0.95, 3, 2.353],
    [0.95, 4, 2.132],
    [0.95, 5, 2.015],
    [0.95, 10, 1.812],
    [0.975, 7, 2.365],
    [0.995, 3, 5.841],
    [0.95, 120, 1.658],
  ];
  for (const [p, degrees, t] of rows) expect(studentQuantile(p, degrees), `${p}, ${degrees}`).toBeCloseTo(t, 3);
});

test('quantile and tails are inverse, above and below the change of method', () => {
  for (const degrees of [1, 2, 3, 4, 5, 8, 33, 100, 399, 400, 401, 5000])
    for (const p of [0.6, 0.9, 0.95, 0.99, 0.9995])
      expect(studentTails(studentQuantile(p, degrees), degrees) / (2 * (1 - p))).toBeCloseTo(1, 8);
  expect(studentQuantile(0.05, 6)).toBe(-studentQuantile(0.95, 6));
  expect(studentTails(0, 5)).toBe(1);
});

test('no degrees of freedom are refused', () => {
  expect(() => studentQuantile(0.95, 0)).toThrow(RangeError);
  expect(() => studentTails(1, Number.NaN)).toThrow(RangeError);
});
