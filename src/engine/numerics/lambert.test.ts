import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wrightOmega } from './lambert.ts';
import { lookUpOmega, OMEGA_HIGHEST, OMEGA_LOWEST, omegaTable } from './omega-table.ts';

describe("Wright's omega", () => {
  test('known values of Lambert’s W (DLMF 4.13: ω(ln x) = W(x), W(e) = 1, W(1) = 0.56714329…)', () => {
    expect(wrightOmega(0)).toBeCloseTo(0.5671432904097838, 14);
    expect(wrightOmega(1)).toBeCloseTo(1, 14);
  });

  test('w + ln w = z over the whole range', () => {
    fc.assert(
      fc.property(fc.double({ min: -600, max: 1e6, noNaN: true }), (z) => {
        const w = wrightOmega(z);
        expect(Math.abs(w + Math.log(w) - z)).toBeLessThan(1e-12 * (1 + Math.abs(z)));
      }),
    );
  });

  test('by its table within 1e-11', () => {
    const table = omegaTable();
    fc.assert(
      fc.property(fc.double({ min: OMEGA_LOWEST, max: OMEGA_HIGHEST, maxExcluded: true, noNaN: true }), (z) => {
        expect(Math.abs(lookUpOmega(z, table) / wrightOmega(z) - 1)).toBeLessThan(1e-11);
      }),
      { numRuns: 2000 },
    );
  });

  test('far ends: e^z below, z above; nothing overflows', () => {
    expect(wrightOmega(-50) / Math.exp(-50)).toBeCloseTo(1, 14);
    expect(wrightOmega(1e300)).toBe(1e300);
    expect(wrightOmega(-1000)).toBe(0);
    expect(Number.isNaN(wrightOmega(Number.NaN))).toBe(true);
  });
});
