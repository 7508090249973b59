import { isLayered, layerSums, runningSums } from './layer-sums.ts';
import { ringMutual, ringSelf } from './ring.ts';
import { lastWeight, type Winding } from './winding.ts';

/**
 * Sums of turn-to-turn inductances over blocks of turns. Everything that inductance is asked for (the whole, a part up to
 * a tap, the mutual inductance of two parts) is a combination of S(a, b), the sum over the first a turns with the first b.
 */
export interface TurnSums {
  /** H; a and b in turns from the start, fractions interpolated. */
  block(a: number, b: number): number;
  /** Inductance of the whole, H. */
  readonly total: number;
}

/** Mutual inductance of two different turns; woven ones averaged over the places where they pass each other. */
function turnMutual(w: Winding, i: number, j: number): number {
  const dz = w.z[j] - w.z[i];
  const { weave } = w;
  if (!weave) return ringMutual(w.radius[i], w.radius[j], dz);
  const { outward, along, shift } = weave;
  const n = outward.length;
  const turn = ((j - i) * shift) % n;
  let sum = 0;
  for (let q = 0; q < n; q++) {
    const p = (q + turn + n) % n;
    sum += ringMutual(w.radius[i] + outward[q], w.radius[j] + outward[p], dz + along[p] - along[q]);
  }
  return sum / n;
}

/** Equal turns in one row: inductance depends only on how many turns apart they are. */
function singleLayerSums(w: Winding): TurnSums {
  const n = w.radius.length;
  // T(k) = sum over all pairs among k turns; second difference of T is twice the mutual inductance at that distance.
  const T = new Float64Array(n + 1);
  const self = ringSelf(w.radius[0], w.wireRadius);
  let row = self;
  for (let k = 1; k <= n; k++) {
    T[k] = T[k - 1] + row;
    if (k < n) row += 2 * turnMutual(w, 0, k);
  }
  return fromSquares(T, w.turns);
}

/** S(a, b) = [T(a) + T(b) − T(|a − b|)] / 2 where only the distance of two turns matters. */
export function fromSquares(T: Float64Array, turns: number): TurnSums {
  const whole = (a: number, b: number) => (T[a] + T[b] - T[Math.abs(a - b)]) / 2;
  const block = interpolated(whole);
  return { block, total: block(turns, turns) };
}

/** Between whole turns S is linear in each: a part of a turn counts as that part of a ring. */
function interpolated(whole: (a: number, b: number) => number): TurnSums['block'] {
  return (a, b) => {
    const i = Math.floor(a);
    const j = Math.floor(b);
    const s = a - i;
    const t = b - j;
    let sum = (1 - s) * (1 - t) * whole(i, j);
    if (s > 0) sum += s * (1 - t) * whole(i + 1, j);
    if (t > 0) sum += (1 - s) * t * whole(i, j + 1);
    if (s > 0 && t > 0) sum += s * t * whole(i + 1, j + 1);
    return sum;
  };
}

/** Every pair by itself, each distinct pair of lattice places computed once; layer upon layer, whole runs of pairs. */
function anyWindingSums(w: Winding): TurnSums {
  const n = w.radius.length;
  const pair = pairLookup(w);
  let prefix: Float64Array | undefined;
  /** Two-dimensional running sum of all pairs, made when first asked for: there are at most `MOST_IRREGULAR` turns. */
  const ofPairs = (a: number, b: number): number => {
    prefix ??= runningSums(n, pair);
    return prefix[a * (n + 1) + b];
  };
  const block = interpolated(isLayered(w) ? layerSums(w) : ofPairs);
  let total: number | undefined;
  return {
    block,
    get total() {
      total ??= w.full && Number.isInteger(w.turns) && !w.weave ? fullLatticeTotal(w) : symmetricTotal(w, pair);
      return total;
    },
  };
}

function symmetricTotal(w: Winding, pair: (i: number, j: number) => number): number {
  const n = w.radius.length;
  const last = lastWeight(w);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const wi = i === n - 1 ? last : 1;
    let row = 0;
    for (let j = 0; j < i; j++) row += pair(i, j);
    sum += wi * (wi * pair(i, i) + 2 * row);
  }
  return sum;
}

/** Self- and mutual inductances of turns, remembered by the lattice places of the pair. */
function pairLookup(w: Winding): (i: number, j: number) => number {
  const { layer, column, columns, radii, wireRadius } = w;
  const size = radii.length * radii.length * columns;
  const self = Float64Array.from(radii, (r) => ringSelf(r, wireRadius));
  if (size > 4e6) return (i, j) => (i === j ? self[layer[i]] : turnMutual(w, i, j));
  const table = new Float64Array(size);
  return (i, j) => {
    if (i === j) return self[layer[i]];
    const li = layer[i];
    const lj = layer[j];
    const d = Math.abs(column[i] - column[j]);
    const key = li < lj ? (li * radii.length + lj) * columns + d : (lj * radii.length + li) * columns + d;
    // A mutual inductance is never zero, so zero means not yet computed.
    return table[key] || (table[key] = turnMutual(w, i, j));
  };
}

/**
 * Total of a full rectangular lattice. Pairs with the same steps apart differ only in their mean radius, on which the
 * mutual inductance depends smoothly, so a long run of them is summed by Gauss's rule with the midpoint sum's correction.
 */
function fullLatticeTotal(w: Winding): number {
  const { radii, columns, zStep, wireRadius } = w;
  const R = radii.length;
  const step = R > 1 ? radii[1] - radii[0] : 0;
  let sum = 0;
  for (let i = 0; i < R; i++) sum += columns * ringSelf(radii[i], wireRadius);
  for (let m = 0; m < R; m++) {
    for (let c = m === 0 ? 1 : 0; c < columns; c++) {
      const times = (m === 0 || c === 0 ? 2 : 4) * (columns - c);
      sum += times * sumAlong(radii[0], step, R - m, m, c * zStep);
    }
  }
  return sum;
}

/** Σ over i < n of M(r₀ + i·p, r₀ + (i + m)·p, z). */
function sumAlong(first: number, step: number, n: number, m: number, z: number): number {
  const at = (i: number) => ringMutual(first + i * step, first + (i + m) * step, z);
  if (n <= 20 || first < 2 * step) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += at(i);
    return sum;
  }
  let sum = 0;
  for (let k = 0; k < 5; k++) {
    sum += GAUSS_WEIGHTS[k] * (at(n * (0.5 - GAUSS_NODES[k] / 2) - 0.5) + at(n * (0.5 + GAUSS_NODES[k] / 2) - 0.5));
  }
  // Euler–Maclaurin for midpoints: Σ f = ∫ f − [f′]/24.
  const slope = at(n) - at(n - 1) - (at(0) - at(-1));
  return (sum * n) / 2 - slope / 24;
}

/** Ten-point Gauss–Legendre, positive half (Abramowitz & Stegun table 25.4). */
const GAUSS_NODES = [
  0.14887433898163122, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
];
const GAUSS_WEIGHTS = [
  0.29552422471475287, 0.26926671930999635, 0.21908636251598204, 0.1494513491505806, 0.06667134430868814,
];

export function turnSums(w: Winding): TurnSums {
  return w.radii.length === 1 && w.zStep === w.pitch ? singleLayerSums(w) : anyWindingSums(w);
}
