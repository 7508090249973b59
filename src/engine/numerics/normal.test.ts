// Quantiles of the standard normal distribution: Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.5.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile, normalShare } from './normal.ts';

describe('the standard normal distribution', () => {
  it.each([
    [0.95, 1.644853627],
    [0.975, 1.959963985],
    [0.99, 2.326347874],
    [0.75, 0.6744897502],
    [0.5, 0],
    [1e-4, -3.719016485],
  ])('has its quantile of %d at %d', (p, x) => {
    expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(2e-9);
  });

  it('has quantiles and shares that undo one another', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-8, max: 1 - 1e-8, noNaN: true }), (p) => {
        expect(Math.abs(normalShare(normalQuantile(p)) - p)).toBeLessThan(1e-12);
      }),
    );
  });

  it('refuses what is no share', () => {
    for (const p of [0, 1, -1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(RangeError);
  });
});
