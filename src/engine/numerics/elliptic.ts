/**
 * Arithmetic-geometric mean of two lengths, a ≥ b > 0.
 * The complete elliptic integral of the first kind is K(k) = π / (2·agm(1, k′)) (Gauss; Abramowitz & Stegun 17.6.3).
 */
export function agm(a: number, b: number): number {
  // Quadratic convergence: the last halving step is already exact to rounding.
  while (a - b > 1e-8 * a) {
    const mean = (a + b) / 2;
    b = Math.sqrt(a * b);
    a = mean;
  }
  return (a + b) / 2;
}

/**
 * Complete elliptic integrals K and E by the complementary modulus k′ = √(1 − k²), which keeps every digit where k → 1.
 * @param kc k′, above 0 and up to 1.
 * @param out K in [0], E in [1].
 * Source: Abramowitz & Stegun 17.6.3 and 17.6.4.
 */
export function completeElliptic(kc: number, out: Float64Array): void {
  let a = 1;
  let b = kc;
  let c2 = 1 - kc * kc;
  let sum = c2 / 2;
  let power = 0.5;
  while (c2 > 1e-17) {
    const c = (a - b) / 2;
    const mean = (a + b) / 2;
    b = Math.sqrt(a * b);
    a = mean;
    c2 = c * c;
    power *= 2;
    sum += power * c2;
  }
  out[0] = Math.PI / (2 * a);
  out[1] = out[0] * (1 - sum);
}
