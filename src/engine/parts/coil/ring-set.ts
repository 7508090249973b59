import { lastWeight, type Winding } from './winding.ts';

/** Rings that stand for a winding as seen from outside: positions from its middle, and how many turns each stands for. */
export interface RingSet {
  readonly radius: Float64Array;
  readonly z: Float64Array;
  readonly weight: Float64Array;
  /** Wire radius, closer than twice which no two rings of different coils can come. */
  readonly wireRadius: number;
}

/** Every turn by itself. */
export function everyTurn(w: Winding): RingSet {
  const middle = ((w.columns - 1) * w.zStep) / 2;
  const weight = new Float64Array(w.radius.length).fill(1);
  weight[weight.length - 1] = lastWeight(w);
  return { radius: w.radius, z: w.z.map((z) => z - middle), weight, wireRadius: w.wireRadius };
}

/**
 * Fewer rings with the same far field: each layer of a solenoid (or the disc of a spiral) as a current sheet, sampled at
 * Gauss's points. Right to 1e-4 when no nearer than a tenth of the winding's length.
 * @param most rings per layer.
 */
export function condensed(w: Winding, most: number): RingSet {
  if (w.weave || !w.full || !Number.isInteger(w.turns)) return everyTurn(w);
  const along = w.columns > most;
  const outward = w.radii.length > most;
  if (!along && !outward) return everyTurn(w);
  const middle = ((w.columns - 1) * w.zStep) / 2;
  const columns = along ? gauss(w.columns, most) : evenly(w.columns);
  const layers = outward ? gauss(w.radii.length, most) : evenly(w.radii.length);
  const step = w.radii.length > 1 ? w.radii[1] - w.radii[0] : 0;
  const radius: number[] = [];
  const z: number[] = [];
  const weight: number[] = [];
  for (const l of layers) {
    for (const c of columns) {
      radius.push(w.radii[0] + l.at * step);
      z.push(c.at * w.zStep - middle);
      weight.push(l.weight * c.weight);
    }
  }
  return {
    radius: Float64Array.from(radius),
    z: Float64Array.from(z),
    weight: Float64Array.from(weight),
    wireRadius: w.wireRadius,
  };
}

interface Sample {
  readonly at: number;
  readonly weight: number;
}

const evenly = (n: number): Sample[] => Array.from({ length: n }, (_, i) => ({ at: i, weight: 1 }));

/** Gauss–Legendre points for a sum over n equal steps, taken as the integral from −1/2 to n − 1/2. */
function gauss(n: number, points: number): Sample[] {
  const samples: Sample[] = [];
  for (let k = 0; k < points; k++) {
    let x = Math.cos((Math.PI * (k + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let p0 = 1;
      let p1 = x;
      for (let m = 2; m <= points; m++) [p0, p1] = [p1, ((2 * m - 1) * x * p1 - (m - 1) * p0) / m];
      slope = (points * (x * p1 - p0)) / (x * x - 1);
      x -= p1 / slope;
    }
    samples.push({ at: (n * (1 + x)) / 2 - 0.5, weight: n / ((1 - x * x) * slope * slope) });
  }
  return samples;
}
