import type { ComplexMatrix } from '../../numerics/lu-complex.ts';
import type { Winding } from './winding.ts';

/**
 * The turns' dipoles act on one another. With K the matrix of 1/n² between turns n apart in a row, the answer b to a field
 * h is (λ ∓ u²K)·b = h, the same K at every frequency. A few steps of Lanczos from h reduce K to a small tridiagonal
 * matrix, after which every frequency costs only that.
 */
export interface Reaction {
  /**
   * Σ weight·h·b and Σ b per turn for (λ + sign·u²K)·b = h.
   * @param out re, im of the first, then of the second.
   */
  answer(lambdaRe: number, lambdaIm: number, signedU2: number, out: Float64Array): void;
}

const STEPS = 5;
/** Neighbours farther than this act too weakly to count: Σ_{n>24} 1/n² is 2 % of the whole, and smooth. */
const REACH = 24;

export interface TurnReaction {
  /** K·v into out; both by turn. */
  apply(v: Float64Array, out: Float64Array): void;
  /** Row sums over that of an endless row: how much of a full set of neighbours each turn has, 0 to 1. */
  readonly company: Float64Array;
}

/** Strength of the dipole action between turns of a row, over that of neighbours one pitch apart. */
function strengths(w: Winding): Float64Array {
  const reach = Math.min(REACH, w.radius.length - 1);
  const K = new Float64Array(reach + 1);
  const { weave } = w;
  for (let k = 1; k <= reach; k++) {
    if (!weave) {
      K[k] = 1 / (k * k);
      continue;
    }
    // Woven: by the distance along the row and sideways where they pass, (x² − y²)/(x² + y²)².
    const n = weave.outward.length;
    let sum = 0;
    for (let q = 0; q < n; q++) {
      const p = (q + k * weave.shift) % n;
      const side = (weave.outward[p] - weave.outward[q] + weave.along[p] - weave.along[q]) / w.pitch;
      sum += (k * k - side * side) / (k * k + side * side) ** 2;
    }
    K[k] = sum / n;
  }
  return K;
}

/** Windings of several rows up to this many turns have all their pairs counted; larger ones only those in a row. */
const MOST_PAIRED = 600;

export function dipoleCoupling(w: Winding): TurnReaction {
  const several = w.radii.length > 1 && w.columns > 1;
  return several && w.radius.length <= MOST_PAIRED ? allPairs(w) : inRows(w);
}

/** Every pair, by steps apart on the lattice: (x² − y²)/(x² + y²)² with x along the row and y from row to row. */
function allPairs(w: Winding): TurnReaction {
  const n = w.radius.length;
  const { layer, column, radii, columns } = w;
  const outward = (radii[1] - radii[0]) / w.pitch;
  const upward = w.zStep / w.pitch;
  const table = new Float64Array(radii.length * columns);
  for (let l = 0; l < radii.length; l++) {
    for (let c = l === 0 ? 1 : 0; c < columns; c++) {
      const x = w.rows === 'axial' ? c * upward : l * outward;
      const y = w.rows === 'axial' ? l * outward : c * upward;
      table[l * columns + c] = (x * x - y * y) / (x * x + y * y) ** 2;
    }
  }
  const apply = (v: Float64Array, out: Float64Array) => {
    out.fill(0);
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < i; j++) {
        const K = table[Math.abs(layer[i] - layer[j]) * columns + Math.abs(column[i] - column[j])];
        sum += K * v[j];
        out[j] += K * v[i];
      }
      out[i] += sum;
    }
  };
  return { apply, company: inRows(w).company };
}

/** Neighbours in the same row, by place in it. */
function inRows(w: Winding): TurnReaction {
  const n = w.radius.length;
  const K = strengths(w);
  const oneRow = w.rows === 'axial' ? w.radii.length === 1 : w.columns === 1;
  const apply = oneRow && w.full ? alongOneRow(K, n) : alongRows(w, K);
  const company = new Float64Array(n);
  apply(new Float64Array(n).fill(1), company);
  for (let i = 0; i < n; i++) company[i] = Math.min(1, Math.max(0, company[i] / (Math.PI ** 2 / 3)));
  return { apply, company };
}

/** Turns in winding order are neighbours in the row. */
const alongOneRow =
  (K: Float64Array, n: number): TurnReaction['apply'] =>
  (v, out) => {
    out.fill(0);
    for (let k = 1; k < K.length; k++) {
      const strength = K[k];
      for (let i = k; i < n; i++) {
        out[i] += strength * v[i - k];
        out[i - k] += strength * v[i];
      }
    }
  };

function alongRows(w: Winding, K: Float64Array): TurnReaction['apply'] {
  const n = w.radius.length;
  const reach = K.length - 1;
  const axial = w.rows === 'axial';
  // Turns by row and place; a step of the row may be several of the lattice.
  const stride = axial ? Math.max(1, Math.round(w.pitch / w.zStep)) : 1;
  const along = axial ? w.columns : w.radii.length;
  const across = axial ? w.radii.length : w.columns;
  const at = new Int32Array(along * across).fill(-1);
  const key = (i: number) => (axial ? w.layer[i] * along + w.column[i] : w.column[i] * along + w.layer[i]);
  for (let i = 0; i < n; i++) at[key(i)] = i;
  return (v, out) => {
    for (let i = 0; i < n; i++) {
      const own = key(i);
      const place = axial ? w.column[i] : w.layer[i];
      let sum = 0;
      for (let k = 1; k <= reach; k++) {
        const step = k * stride;
        if (place >= step) {
          const j = at[own - step];
          if (j >= 0) sum += K[k] * v[j];
        }
        if (place + step < along) {
          const j = at[own + step];
          if (j >= 0) sum += K[k] * v[j];
        }
      }
      out[i] = sum;
    }
  };
}

/** @param h field by turn. @param weight of each turn in the sum, such as its length. */
export function reactionTo(h: Float64Array, weight: Float64Array, coupling: TurnReaction): Reaction {
  const n = h.length;
  const root = weight.map(Math.sqrt);
  let v = h.map((x, i) => x * root[i]);
  const norm = Math.sqrt(v.reduce((s, x) => s + x * x, 0));
  if (!(norm > 0)) return { answer: (_r, _i, _u, out) => void out.fill(0) };
  v = v.map((x) => x / norm);
  const alpha: number[] = [];
  const beta: number[] = [];
  const onto: number[] = [];
  const basis: Float64Array[] = [];
  const plain = new Float64Array(n);
  const acted = new Float64Array(n);
  for (let k = 0; k < Math.min(STEPS, n); k++) {
    basis.push(v);
    onto.push(v.reduce((s, x, i) => s + x / root[i], 0));
    // K in the weighted basis, √w·K·1/√w made symmetric: weights of neighbours are nearly equal.
    for (let i = 0; i < n; i++) plain[i] = v[i];
    coupling.apply(plain, acted);
    let a = 0;
    for (let i = 0; i < n; i++) a += v[i] * acted[i];
    alpha.push(a);
    // Orthogonal to all before, for so few steps the cheapest safe way.
    for (const b of basis) {
      let s = 0;
      for (let i = 0; i < n; i++) s += b[i] * acted[i];
      for (let i = 0; i < n; i++) acted[i] -= s * b[i];
    }
    const size = Math.sqrt(acted.reduce((s, x) => s + x * x, 0));
    if (!(size > 1e-9)) break;
    beta.push(size);
    v = acted.map((x) => x / size);
  }
  return { answer: tridiagonal(alpha, beta, onto, norm) };
}

/** First component of (λ + s·T)⁻¹e₁, and its sum against `onto`, by elimination from the far end. */
function tridiagonal(alpha: number[], beta: number[], onto: number[], norm: number): Reaction['answer'] {
  const m = alpha.length;
  const d: ComplexMatrix = { re: new Float64Array(m), im: new Float64Array(m) };
  return (lr, li, s, out) => {
    for (let k = m - 1; k >= 0; k--) {
      let re = lr + s * alpha[k];
      let im = li;
      if (k < m - 1) {
        const b = s * beta[k];
        const p = (b * b) / (d.re[k + 1] ** 2 + d.im[k + 1] ** 2);
        re -= p * d.re[k + 1];
        im += p * d.im[k + 1];
      }
      d.re[k] = re;
      d.im[k] = im;
    }
    let p = d.re[0] ** 2 + d.im[0] ** 2;
    let yr = d.re[0] / p;
    let yi = -d.im[0] / p;
    out[0] = norm * norm * yr;
    out[1] = norm * norm * yi;
    let sr = onto[0] * yr;
    let si = onto[0] * yi;
    for (let k = 1; k < m; k++) {
      const b = -s * beta[k - 1];
      p = d.re[k] ** 2 + d.im[k] ** 2;
      const tr = (b * (yr * d.re[k] + yi * d.im[k])) / p;
      yi = (b * (yi * d.re[k] - yr * d.im[k])) / p;
      yr = tr;
      sr += onto[k] * yr;
      si += onto[k] * yi;
    }
    out[2] = norm * sr;
    out[3] = norm * si;
  };
}
