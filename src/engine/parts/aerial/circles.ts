import { completeElliptic } from '../../numerics/elliptic.ts';
import { type Henries, type Metres, MU_0 } from '../../units/quantities.ts';

const integrals = new Float64Array(2);

/**
 * Inductance of a cylindrical current sheet of one turn a metre (Lorenz 1879). @returns henries, 0 for no length.
 */
export function currentSheet(r: Metres, length: Metres): Henries {
  if (length === 0) return 0;
  const k2 = (4 * r * r) / (4 * r * r + length * length);
  completeElliptic(length / Math.hypot(2 * r, length), integrals);
  const [K, E] = integrals;
  return ((MU_0 * 8 * r ** 3) / 3) * (((2 * k2 - 1) * E + (1 - k2) * K) / k2 ** 1.5 - 1);
}

/** Mean over two coaxial circles `z` apart of 1/distance: the potential of one charged ring along another. @returns 1/length. */
export function meanInverseOfCircles(r1: Metres, r2: Metres, z: Metres): number {
  const far = Math.hypot(r1 + r2, z);
  completeElliptic(Math.hypot(r1 - r2, z) / far, integrals);
  return ((2 / Math.PI) * integrals[0]) / far;
}
