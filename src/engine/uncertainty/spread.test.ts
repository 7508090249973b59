import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deviates, rangedOf } from './draws.ts';
import { addResponse, throughPoints } from './figure-response.ts';
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
  /** What it adds at some deviates. */
  const added = (low: number, high: number, ...at: number[]): Float64Array => {
    const draws = new Float64Array(at.length);
    addResponse(draws, Float64Array.from(at), low, high);
    return draws;
  };

  it('goes through what it was made of', () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true }), (a, b) => {
        const [low, high, middle] = added(a, b, -NINETY, NINETY, 0);
        expect(low).toBeCloseTo(a, 9);
        expect(high).toBeCloseTo(b, 9);
        expect(middle).toBeCloseTo(0, 9);
      }),
    );
  });

  it('takes a set that could not be evaluated as on a line with the others', () => {
    expect(added(Number.NaN, 3, -NINETY)[0]).toBeCloseTo(-3, 12);
    const curve = throughPoints([
      [0, 0],
      [-10, -20],
      [10, Number.NaN],
    ]);
    expect(curve(5)).toBeCloseTo(10, 9);
    expect(curve(-5)).toBeCloseTo(-10, 9);
  });
});
