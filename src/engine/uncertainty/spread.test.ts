import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deviates, rangedOf } from './draws.ts';
import { parabola, throughPoints } from './figure-response.ts';
import { between, NINETY, plusOrMinus, timesOrOver, valueAtDeviate } from './spread.ts';

describe('a spread', () => {
  it('has its middle at 0 and its ends at the deviates that leave one case in twenty outside', () => {
    for (const spread of [
      timesOrOver(3, 'a', 150),
      plusOrMinus(8, 'a'),
      between('difference', [-7, 4, 20], 'a'),
      between('factor', [0.97, 1.15, 1.55], 'a'),
    ]) {
      expect(valueAtDeviate(spread, 0)).toBeCloseTo(spread.middle, 12);
      expect(valueAtDeviate(spread, -NINETY)).toBeCloseTo(spread.low, 12);
      expect(valueAtDeviate(spread, NINETY)).toBeCloseTo(spread.high, 12);
    }
  });

  it('of a factor stays above 0 and rises, however far out', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: 1.01, max: 20, noNaN: true }),
        (u, k) => {
          const spread = timesOrOver(k, 'a', 2);
          expect(valueAtDeviate(spread, u)).toBeGreaterThan(0);
          expect(valueAtDeviate(spread, u + 0.1)).toBeGreaterThan(valueAtDeviate(spread, u));
        },
      ),
    );
  });

  it('is refused where it does not rise', () => {
    expect(() => between('factor', [0, 1, 2], 'a')).toThrow(RangeError);
    expect(() => between('difference', [1, 0, 2], 'a')).toThrow(RangeError);
    expect(() => between('difference', [0, Number.NaN, 2], 'a')).toThrow(RangeError);
  });
});

describe('the draws', () => {
  it('are those of a standard normal distribution, the same for a name and unlike those of another', () => {
    const draws = deviates('soil');
    const { median, range } = rangedOf(draws);
    expect(Math.abs(median)).toBeLessThan(1e-9);
    expect(Math.abs(range[0] + NINETY)).toBeLessThan(2e-3);
    expect(Math.abs(range[1] - NINETY)).toBeLessThan(2e-3);
    expect(deviates('soil')).toBe(draws);
    for (const name of ['ground', 'hearing', 'site/603000/A', 'site/603000/B']) {
      const other = deviates(name);
      const together = draws.reduce((sum, x, k) => sum + x * other[k], 0) / draws.length;
      // Of draws that know nothing of one another, 1/√2000 is usual.
      expect(Math.abs(together)).toBeLessThan(4 / Math.sqrt(draws.length));
    }
  });
});

describe('a response', () => {
  it('goes through what it was made of', () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true }), (a, b) => {
        const response = parabola([-NINETY, a], [NINETY, b]);
        expect(response(-NINETY)).toBeCloseTo(a, 9);
        expect(response(NINETY)).toBeCloseTo(b, 9);
        expect(response(0)).toBeCloseTo(0, 9);
      }),
    );
  });

  it('takes a set that could not be evaluated as on a line with the others', () => {
    const response = parabola([-1, Number.NaN], [1, 3]);
    expect(response(-1)).toBeCloseTo(-3, 12);
    const curve = throughPoints([
      [0, 0],
      [-10, -20],
      [10, Number.NaN],
    ]);
    expect(curve(5)).toBeCloseTo(10, 9);
    expect(curve(-5)).toBeCloseTo(-10, 9);
  });
});
