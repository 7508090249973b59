import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { logI0, ratioI1I0 } from './bessel-modified.ts';

// Source: Abramowitz & Stegun tables 9.8 and 9.11 (exp(-x)·I0, exp(-x)·I1), recomputed with scipy.special.ive.
const TABLE: readonly (readonly [number, number, number])[] = [
  [0.1, 0.9071009257823011, 0.04529844680880932],
  [0.5, 0.6450352704491501, 0.15642080318487173],
  [1, 0.4657596075936404, 0.2079104153497085],
  [2, 0.30850832255367105, 0.21526928924893768],
  [5, 0.1835408126093283, 0.16397226694454234],
  [10, 0.12783333716342862, 0.1212626813844555],
  [20, 0.08978031188482599, 0.08750622218328864],
  [50, 0.0565616266474542, 0.0559931238928954],
];

describe('modified Bessel functions', () => {
  test.each(TABLE)('at %d agree with the scaled tables', (x, i0, i1) => {
    expect(logI0(x) / (Math.log(i0) + x)).toBeCloseTo(1, 8);
    expect(ratioI1I0(x) / (i1 / i0)).toBeCloseTo(1, 8);
  });

  test('small arguments keep their digits: ln I0 → x²/4, ratio → x/2', () => {
    for (const x of [1e-8, 1e-5, 1e-3]) {
      expect(logI0(x) / ((x * x) / 4 - x ** 4 / 64)).toBeCloseTo(1, 9);
      expect(ratioI1I0(x) / (x / 2 - x ** 3 / 16)).toBeCloseTo(1, 9);
    }
    expect(logI0(0)).toBe(0);
    expect(ratioI1I0(0)).toBe(0);
  });

  test('large arguments neither overflow nor lose the leading terms', () => {
    expect(logI0(1e6)).toBeCloseTo(1e6 - 0.5 * Math.log(2e6 * Math.PI), 6);
    expect(1 - ratioI1I0(1e6)).toBeCloseTo(5e-7, 12);
  });

  test('the ratio is the slope of the logarithm, and rises from 0 towards 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 200, noNaN: true }), (x) => {
        const h = 1e-4 * (1 + x);
        // ln I0 is even, so the difference may reach across zero.
        expect(Math.abs((logI0(x + h) - logI0(x - h)) / (2 * h) - ratioI1I0(x))).toBeLessThan(1e-5);
        expect(ratioI1I0(x)).toBeLessThan(1);
        expect(ratioI1I0(x * 1.01)).toBeGreaterThan(ratioI1I0(x));
      }),
    );
  });
});
