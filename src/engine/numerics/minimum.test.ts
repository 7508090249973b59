import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { maximum, minimum } from './minimum.ts';

const counted = (f: (x: number) => number) => {
  let count = 0;
  const once = (x: number) => {
    count++;
    return f(x);
  };
  return { f: once, count: () => count };
};

describe('minimum', () => {
  // Brent 1973, table 5.4.1: least values of Σ ((2i − 5)/(x − i²))², i = 1..20, one between each pair of poles; his i = 1, 2, 3.
  const brent = (x: number) => {
    let sum = 0;
    for (let i = 1; i <= 20; i++) sum += ((2 * i - 5) / (x - i * i)) ** 2;
    return sum;
  };
  test.each([
    [1, 3.0229153, 3.6766990169],
    [2, 6.6837536, 1.11185001],
    [3, 11.2387017, 1.2182217637],
  ])('Brent’s function between %i² and the next square', (i, x, value) => {
    const found = minimum(brent, i * i + 1e-9, (i + 1) ** 2 - 1e-9, 1e-9);
    expect(found.x).toBeCloseTo(x, 6);
    expect(found.value).toBeCloseTo(value, 8);
  });

  test('exact where calculus gives it: x^x, cosh, x e^-x', () => {
    expect(minimum((x) => x ** x, 1e-6, 2).x).toBeCloseTo(Math.exp(-1), 7);
    expect(minimum((x) => Math.cosh(x - 0.7), -10, 4).x).toBeCloseTo(0.7, 6);
    expect(maximum((x) => x * Math.exp(-x), 0, 30)).toMatchObject({
      x: expect.closeTo(1, 6),
      value: expect.closeTo(Math.exp(-1), 14),
    });
  });

  test('any single valley, smooth or sharp, within the tolerance; ends count; never more than 202 evaluations', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.constantFrom(0.5, 1, 1.5, 2),
        (at, low, power) => {
          const c = counted((x) => Math.abs(x - at) ** power);
          const found = minimum(c.f, low, low + 7, 1e-6);
          expect(Math.abs(found.x - Math.min(low + 7, Math.max(low, at)))).toBeLessThan(2e-6);
          expect(c.count()).toBeLessThanOrEqual(202);
        },
      ),
    );
  });

  test('takes less than golden section for what is smooth', () => {
    const c = counted((x) => (x - 0.3) ** 2 + (x - 0.3) ** 4);
    minimum(c.f, 0, 1, 1e-6);
    expect(c.count()).toBeLessThan(20); // golden section: 31
  });

  test('refuses no range, no number', () => {
    expect(() => minimum((x) => x, 1, 0)).toThrow(RangeError);
    expect(() => minimum((x) => x, 0, Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => minimum(() => Number.NaN, 0, 1)).toThrow(/no number/);
    expect(minimum((x) => x, 2, 2)).toEqual({ x: 2, value: 2 });
  });
});
