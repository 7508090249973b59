import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundary, firstWhole, root } from './roots.ts';

const counted = (f: (x: number) => number) => {
  let count = 0;
  const once = (x: number) => {
    count++;
    return f(x);
  };
  return { f: once, count: () => count };
};

describe('root', () => {
  // G. E. Alefeld, F. A. Potra & Y. Shi, ACM TOMS 21 (1995) 327: some of their test problems; roots where not exact from
  // mpmath 1.3 at 30 digits, or by definition (Abramowitz & Stegun: zero of J0 2.404825557695773 through its series).
  const besselJ0 = (x: number) => {
    let term = 1;
    let sum = 1;
    for (let k = 1; k < 40; k++) sum += term *= -(x * x) / (4 * k * k);
    return sum;
  };
  test.each<[string, (x: number) => number, number, number, number]>([
    ['cos x = x (Dottie)', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['x e^x = 1 (DLMF 4.13: Ω)', (x) => x * Math.exp(x) - 1, -1, 1, 0.5671432904097838],
    ['sin x = x/2', (x) => Math.sin(x) - x / 2, Math.PI / 2, Math.PI, 1.895494267033981],
    ['J0, first zero (A&S 9.5)', besselJ0, 2, 3, 2.404825557695773],
    ['x² = 2 from far', (x) => x * x - 2, 0, 1e8, Math.SQRT2],
    ['tenth power, flat', (x) => x ** 10 - 0.5 ** 10, 0, 5, 0.5],
    ['pole at one end', (x) => 1 / x - 3, 1e-300, 1, 1 / 3],
    ['a step', (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
    ['falling', (x) => 1 - x ** 3, -4, 9, 1],
    ['ends exchanged', (x) => x - 0.25, 1, 0, 0.25],
  ])('%s', (_, f, low, high, want) => {
    const c = counted(f);
    expect(Math.abs(root(c.f, low, high) / want - 1)).toBeLessThan(3e-15);
    expect(c.count()).toBeLessThan(140);
  });

  test('smooth functions take few evaluations: halving to the last bit takes over 50', () => {
    for (const f of [(x: number) => Math.cos(x) - x, (x: number) => x * Math.exp(x) - 1]) {
      const c = counted(f);
      root(c.f, 0, 1);
      expect(c.count()).toBeLessThan(14);
    }
  });

  test('any monotone function, any bracket: the root is bracketed within the tolerance, in at most three evaluations a bit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.constantFrom(1 / 9, 1 / 3, 1, 3, 9, 31),
        fc.double({ min: 1e-9, max: 1e-2, noNaN: true }),
        (at, below, above, power, tolerance) => {
          const c = counted((x) => Math.sign(x - at) * Math.abs(x - at) ** power);
          const x = root(c.f, at - below, at + above, tolerance);
          const rounding = 1e-12 * (Math.abs(at) + below + above);
          expect(Math.abs(x - at)).toBeLessThanOrEqual(tolerance + rounding);
          expect(c.count()).toBeLessThanOrEqual(3 * Math.max(0, Math.log2((below + above) / tolerance) + 3) + 4);
        },
      ),
    );
  });

  test('never more than 200 evaluations, however flat', () => {
    const c = counted((x) => Math.sign(x) * Math.max(Math.abs(x) ** 31, 1e-300));
    expect(Math.abs(root(c.f, -1, 2))).toBeLessThan(1e-15);
    expect(c.count()).toBeLessThanOrEqual(200);
  });

  test('ends that are roots are taken; no root and no number are refused', () => {
    expect(root((x) => x, 0, 1)).toBe(0);
    expect(root((x) => x - 1, 0, 1)).toBe(1);
    expect(() => root((x) => x + 1, 0, 1)).toThrow(/no root between 0 and 1/);
    expect(() => root(() => Number.NaN, 0, 1)).toThrow(RangeError);
    expect(() => root((x) => (x === 0.5 ? Number.NaN : x - 0.4), 0, 1)).toThrow(/no number at 0.5/);
  });
});

describe('boundary', () => {
  test('closes in on either side, linear and logarithmic', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.boolean(), (at, upward) => {
        const holds = (x: number) => (upward ? x < at : x >= at);
        const [from, to] = upward ? [1e-4, 1] : [1, 1e-4];
        for (const scale of ['linear', 'logarithmic'] as const) {
          const [inside, outside] = boundary(holds, from, to, scale === 'linear' ? 1e-6 : 1.001, scale);
          expect(holds(inside)).toBe(true);
          expect(holds(outside)).toBe(false);
          if (scale === 'linear') expect(Math.abs(inside - outside)).toBeLessThanOrEqual(1e-6);
          else expect(Math.max(inside / outside, outside / inside)).toBeLessThanOrEqual(1.001);
        }
      }),
    );
  });

  test('ends at the last bit when asked for more, and refuses what cannot be halved', () => {
    expect(boundary((x) => x < 0.3, 0, 1, 0)[1]).toBe(0.3);
    expect(() => boundary(() => true, 0, Number.POSITIVE_INFINITY, 1)).toThrow(RangeError);
    expect(() => boundary(() => true, 0, 1, 1.1, 'logarithmic')).toThrow(RangeError);
  });
});

test('the first whole number that fits', () => {
  for (const n of [1, 2, 77, 100]) expect(firstWhole((k) => k >= n, 0, 100)).toBe(n);
  expect(() => firstWhole(() => true, 3, 3)).toThrow(RangeError);
  expect(() => firstWhole(() => true, 0.5, 3)).toThrow(RangeError);
});
