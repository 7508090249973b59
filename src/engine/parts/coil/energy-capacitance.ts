import { agm } from '../../numerics/elliptic.ts';
import { EPSILON_0, type Farads } from '../../units/quantities.ts';
import { type Winding, wireLengthTo } from './winding.ts';

/** Rings that charges are put on; a winding of more turns has neighbours in a layer joined into strips. */
const MOST_RINGS = 240;

/**
 * Self-capacitance by the energy of the electric field: the voltage rises evenly along the winding from the earthed end,
 * charges settle on the turns accordingly, and C = Σ q·v for one volt across the coil.
 *
 * Turns are rings, Q/(4πε₀·agm(farthest, nearest distance)) the potential of one at another. In air, far from earth; the
 * covering raises what passes between neighbours (see `spacing`).
 * @param filled part of the distance between neighbouring metal surfaces that is covering, and its permittivity.
 * @returns F. Against Medhurst's measured single layers: see docs/physics/coils.md.
 */
export function energyCapacitance(w: Winding, filled: { part: number; permittivity: number }): Farads {
  const rings = gather(w);
  const n = rings.radius.length;
  const P = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const sum = rings.radius[i] + rings.radius[j];
      const dz = rings.z[i] - rings.z[j];
      // Turns described as running into one another are taken as touching, or the sum would have no answer.
      const near =
        i === j
          ? rings.size[i]
          : Math.max(
              Math.hypot(rings.radius[i] - rings.radius[j], dz, rings.apart[i]),
              1.01 * Math.max(rings.size[i], rings.size[j]),
            );
      const p = 1 / (4 * Math.PI * EPSILON_0 * agm(Math.hypot(sum, dz), near));
      P[i * n + j] = p;
      P[j * n + i] = p;
    }
  }
  const v = rings.voltage;
  const q = conjugateGradient(P, v, n);
  let C = 0;
  for (let i = 0; i < n; i++) C += q[i] * v[i];
  // Between touching coverings the flux passes through them: as plates in series, covering and air.
  const { part, permittivity } = filled;
  return C * between(w, part, permittivity);
}

/** How much the covering raises the capacitance: wholly for piled layers, little where neighbours differ by few turns. */
function between(w: Winding, part: number, permittivity: number): number {
  if (w.radii.length === 1 || w.columns === 1 || !w.full) return 1;
  return 1 / (1 - part + part / permittivity);
}

interface Rings {
  radius: number[];
  z: number[];
  /** Distance of a ring from itself, by which its own potential counts, m. */
  size: number[];
  /** Sideways distance of woven neighbours, m. */
  apart: number[];
  voltage: Float64Array;
}

function gather(w: Winding): Rings {
  const n = w.radius.length;
  const per = Math.ceil(n / MOST_RINGS);
  const rings: Rings = { radius: [], z: [], size: [], apart: [], voltage: new Float64Array(0) };
  const voltage: number[] = [];
  const total = wireLengthTo(w);
  const sideways = w.weave ? meanSideways(w) : 0;
  for (let start = 0; start < n; ) {
    let end = start + 1;
    while (end < n && end - start < per && (w.layer[end] === w.layer[start] || !w.full)) end++;
    const count = end - start;
    let r = 0;
    let z = 0;
    for (let i = start; i < end; i++) {
      r += w.radius[i] / count;
      z += w.z[i] / count;
    }
    rings.radius.push(r);
    rings.z.push(z);
    // Geometric mean distance from itself: a round wire's radius, 0.2235 of a strip's breadth, 0.447 of a square's side.
    const joined = w.full ? 0.2235 * count * w.pitch : 0.447 * Math.sqrt(count) * w.pitch;
    rings.size.push(count === 1 ? w.wireRadius : joined);
    rings.apart.push(sideways);
    voltage.push((wireLengthTo(w, start) + wireLengthTo(w, end)) / 2 / total);
    start = end;
  }
  rings.voltage = Float64Array.from(voltage);
  return rings;
}

/** Root mean square of the sideways distance between one turn and the next of a weave. */
function meanSideways(w: Winding): number {
  const { outward, along, shift } = w.weave!;
  let sum = 0;
  for (let q = 0; q < outward.length; q++) {
    const p = (q + shift) % outward.length;
    sum += (outward[p] - outward[q] + along[p] - along[q]) ** 2;
  }
  return Math.sqrt(sum / outward.length);
}

/** P·q = v for a symmetric positive definite P. */
function conjugateGradient(P: Float64Array, v: Float64Array, n: number): Float64Array {
  const q = new Float64Array(n);
  const r = v.slice();
  // Scaled by the diagonal: self-potentials differ between inner and outer turns.
  const scaled = (x: Float64Array) => x.map((value, i) => value / P[i * n + i]);
  let s = scaled(r);
  let d = s.slice();
  let rho = dot(r, s);
  const start = rho;
  const Pd = new Float64Array(n);
  for (let step = 0; step < 4 * n && rho > 1e-12 * start; step++) {
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += P[i * n + j] * d[j];
      Pd[i] = sum;
    }
    const a = rho / dot(d, Pd);
    for (let i = 0; i < n; i++) {
      q[i] += a * d[i];
      r[i] -= a * Pd[i];
    }
    s = scaled(r);
    const next = dot(r, s);
    const b = next / rho;
    rho = next;
    d = d.map((value, i) => s[i] + b * value);
  }
  return q;
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
};
