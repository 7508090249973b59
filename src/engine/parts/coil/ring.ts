import { completeElliptic } from '../../numerics/elliptic.ts';
import { type Amperes, type Henries, type Metres, MU_0 } from '../../units/quantities.ts';

/**
 * Mutual inductance of two coaxial circles of thin wire.
 *
 * Maxwell's M = μ₀√(r₁r₂)[(2/k − k)K − (2/k)E] put in terms of the arithmetic-geometric mean of the farthest and nearest
 * distances of the circles: M = μ₀ (π/2) Σ 2ⁿ⁻¹cₙ² / agm. No difference of nearly equal numbers is left, neither for
 * close rings nor for distant ones. Source: Maxwell, Treatise, art. 701; King 1924 for the series.
 *
 * @param offset distance of their planes. The circles must not coincide.
 */
export function ringMutual(r1: Metres, r2: Metres, offset: Metres): Henries {
  const z2 = offset * offset;
  const sum = r1 + r2;
  const difference = r1 - r2;
  let a = Math.sqrt(sum * sum + z2);
  let b = Math.sqrt(difference * difference + z2);
  let c = (2 * r1 * r2) / (a + b);
  let total = 0;
  let power = 1;
  for (;;) {
    const add = power * c * c;
    total += add;
    const mean = (a + b) / 2;
    b = Math.sqrt(a * b);
    a = mean;
    if (add < 1e-12 * total) break;
    c = (c * c) / (2 * (a + b));
    power *= 2;
  }
  return (MU_0 * Math.PI * total) / (a + b);
}

/**
 * Self-inductance of one turn of round wire, current spread evenly over its section.
 * Source: Rayleigh & Niven 1881, good to (a/r)⁴.
 * @param radius to the wire's centre. @param wireRadius bare.
 */
export function ringSelf(radius: Metres, wireRadius: Metres): Henries {
  const q = (wireRadius / radius) ** 2;
  return MU_0 * radius * ((1 + q / 8) * Math.log((8 * radius) / wireRadius) + q / 24 - 1.75);
}

const integrals = new Float64Array(2);

/**
 * Magnetic field of a ring of one ampere at a point.
 * @param ring its radius. @param radius of the point, above 0. @param offset of the point along the axis.
 * @param out axial H in [0], radial H in [1], A/m.
 * Source: Smythe, Static and Dynamic Electricity, 7.10.
 */
export function ringField(ring: Metres, radius: Metres, offset: Metres, out: Float64Array): void {
  const z2 = offset * offset;
  const far2 = (ring + radius) ** 2 + z2;
  const near2 = (ring - radius) ** 2 + z2;
  const far = Math.sqrt(far2);
  completeElliptic(Math.sqrt(near2 / far2), integrals);
  const [K, E] = integrals;
  out[0] = (K + ((ring * ring - radius * radius - z2) / near2) * E) / (2 * Math.PI * far);
  out[1] = (offset * (((ring * ring + radius * radius + z2) / near2) * E - K)) / (2 * Math.PI * radius * far);
}

/** Field at the wire of a ring of one ampere due to its own curvature: I/(4πr)·(ln(8r/a) − 1), along the axis. */
export const ownField = (radius: Metres, wireRadius: Metres): Amperes =>
  (Math.log((8 * radius) / wireRadius) - 1) / (4 * Math.PI * radius);
