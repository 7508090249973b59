// Abramowitz & Stegun, table 17.1 (parameter m = k²), from memory; E and K also satisfy Legendre's relation.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { agm, completeElliptic } from './elliptic.ts';

const at = (m1: number) => {
  const out = new Float64Array(2);
  completeElliptic(Math.sqrt(m1), out);
  return { K: out[0], E: out[1] };
};

describe('complete elliptic integrals', () => {
  it.each([
    [1, 1.5707963267949, 1.5707963267949],
    [0.5, 1.8540746773014, 1.3506438810477],
    [0.1, 2.5780921133482, 1.1047747327041],
  ])('complementary parameter %d', (m1, K, E) => {
    expect(at(m1).K / K - 1).toBeCloseTo(0, 12);
    expect(at(m1).E / E - 1).toBeCloseTo(0, 12);
  });

  it('keeps K → ln(4/k′) to the last digits where k → 1', () => {
    for (const kc of [1e-6, 1e-9]) expect(at(kc * kc).K / Math.log(4 / kc) - 1).toBeCloseTo(0, 10);
  });

  it('obeys Legendre: E K′ + E′ K − K K′ = π/2', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (m) => {
        const a = at(m);
        const b = at(1 - m);
        expect((a.E * b.K + b.E * a.K - a.K * b.K) / (Math.PI / 2) - 1).toBeCloseTo(0, 11);
      }),
    );
  });

  it('has a mean between the two numbers', () => {
    // Gauss's constant: 1/agm(1, √2) = 0.8346268416740731
    expect(agm(Math.SQRT2, 1) * 0.8346268416740731).toBeCloseTo(1, 14);
  });
});
