import { type Henries, type Metres, MU_0 } from '../../units/quantities.ts';

/** Complete elliptic integrals K and E by the arithmetic-geometric mean (Abramowitz & Stegun 17.6). @param k modulus, 0 ≤ k < 1. */
function elliptic(k: number): { K: number; E: number } {
  let a = 1;
  let b = Math.sqrt((1 - k) * (1 + k));
  let c = k;
  let sum = (k * k) / 2;
  let power = 0.5;
  while (Math.abs(c) > 1e-15 * a) {
    const next = (a + b) / 2;
    c = (a - b) / 2;
    b = Math.sqrt(a * b);
    a = next;
    power *= 2;
    sum += power * c * c;
  }
  const K = Math.PI / (2 * a);
  return { K, E: K * (1 - sum) };
}

/** Mutual inductance of two coaxial circles `z` apart (Maxwell). @throws nothing; infinite when they coincide. */
export function coaxialCircles(r1: Metres, r2: Metres, z: Metres): Henries {
  const k2 = (4 * r1 * r2) / ((r1 + r2) ** 2 + z * z);
  const k = Math.sqrt(k2);
  const { K, E } = elliptic(k);
  return MU_0 * Math.sqrt(r1 * r2) * ((2 / k - k) * K - (2 / k) * E);
}

/** Round wire bent to a circle, uniform current, low frequency (Rayleigh & Niven). @param a wire radius. */
export function circleSelfInductance(r: Metres, a: Metres): Henries {
  const q = (a / r) ** 2;
  const l = Math.log((8 * r) / a);
  return MU_0 * r * ((1 + q / 8) * l + q / 24 - 1.75);
}

/**
 * Inductance of a cylindrical current sheet of one turn a metre (Lorenz 1879): its second differences are the mutual
 * inductances of equal lengths of it. @returns henries, 0 for no length.
 */
export function currentSheet(r: Metres, length: Metres): Henries {
  if (length === 0) return 0;
  const k2 = (4 * r * r) / (4 * r * r + length * length);
  const k = Math.sqrt(k2);
  const { K, E } = elliptic(k);
  return ((MU_0 * 8 * r ** 3) / 3) * (((2 * k2 - 1) * E + (1 - k2) * K) / (k2 * k) - 1);
}

/** Mean over two coaxial circles `z` apart of 1/distance. @returns 1/length. */
export function meanInverseOfCircles(r1: Metres, r2: Metres, z: Metres): number {
  const far2 = (r1 + r2) ** 2 + z * z;
  return ((2 / Math.PI) * elliptic(Math.sqrt((4 * r1 * r2) / far2)).K) / Math.sqrt(far2);
}
