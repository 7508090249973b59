import { root } from './roots.ts';

/** A smooth curve through points that never overshoots them: rising data give a rising curve. */
export interface MonotoneCurve {
  /** Value; outside the points the end value is held. */
  at(x: number): number;
  /** Slope; zero outside the points. */
  slopeAt(x: number): number;
  /** The first x, from the left, where the curve has this value; undefined when it never has. */
  inverse(y: number): number | undefined;
  readonly first: number;
  readonly last: number;
}

/**
 * Piecewise cubic with Fritsch and Butland's slopes (weighted harmonic mean; SIAM J. Sci. Stat. Comput. 5, 300 (1984)).
 * @param xs at least two, rising. @param ys as many.
 * @throws RangeError when the points are not such.
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[]): MonotoneCurve {
  const n = xs.length;
  if (!(n >= 2) || ys.length !== n) throw new RangeError(`a curve needs two or more points, got ${n} and ${ys.length}`);
  const h = new Float64Array(n - 1);
  const s = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = xs[i + 1] - xs[i];
    s[i] = (ys[i + 1] - ys[i]) / h[i];
    if (!(h[i] > 0) || !Number.isFinite(s[i]))
      throw new RangeError(`points of a curve must be finite and rise in x: ${xs[i]} then ${xs[i + 1]}`);
  }
  const d = slopes(h, s);

  const interval = (x: number): number => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x < xs[middle]) high = middle;
      else low = middle;
    }
    return low;
  };
  /** The cubic of interval i at t = 0..1. */
  const cubic = (i: number, t: number): number => {
    const c = h[i] * (d[i] - s[i]);
    const e = h[i] * (d[i + 1] - s[i]);
    return ys[i] + t * (ys[i + 1] - ys[i]) + t * (1 - t) * ((1 - t) * c - t * e);
  };
  const at = (x: number): number => {
    if (Number.isNaN(x)) return Number.NaN;
    if (x <= xs[0]) return ys[0];
    if (x >= xs[n - 1]) return ys[n - 1];
    const i = interval(x);
    // Rounding near an end must not leave the interval, or the inverse would not find its way back.
    const low = Math.min(ys[i], ys[i + 1]);
    const high = Math.max(ys[i], ys[i + 1]);
    return Math.min(high, Math.max(low, cubic(i, (x - xs[i]) / h[i])));
  };
  const slopeAt = (x: number): number => {
    if (!(x >= xs[0] && x <= xs[n - 1])) return 0;
    const i = interval(x);
    const t = (x - xs[i]) / h[i];
    return s[i] + (1 - t) * (1 - 3 * t) * (d[i] - s[i]) - t * (2 - 3 * t) * (d[i + 1] - s[i]);
  };
  const inverse = (y: number): number | undefined => {
    for (let i = 0; i < n - 1; i++) {
      const rising = ys[i + 1] >= ys[i];
      if (!(rising ? y >= ys[i] && y <= ys[i + 1] : y <= ys[i] && y >= ys[i + 1])) continue;
      if (y === ys[i]) return xs[i];
      if (y === ys[i + 1]) return xs[i + 1];
      return xs[i] + root((t) => (t < 1 ? cubic(i, t) : ys[i + 1]) - y, 0, 1) * h[i];
    }
    return undefined;
  };
  return { at, slopeAt, inverse, first: xs[0], last: xs[n - 1] };
}

function slopes(h: Float64Array, s: Float64Array): Float64Array {
  const n = h.length + 1;
  const d = new Float64Array(n);
  if (n === 2) return d.fill(s[0]);
  for (let i = 1; i < n - 1; i++) {
    if (!(s[i - 1] * s[i] > 0)) continue;
    const w1 = 2 * h[i] + h[i - 1];
    const w2 = h[i] + 2 * h[i - 1];
    d[i] = (w1 + w2) / (w1 / s[i - 1] + w2 / s[i]);
  }
  d[0] = endSlope(h[0], h[1], s[0], s[1]);
  d[n - 1] = endSlope(h[n - 2], h[n - 3], s[n - 2], s[n - 3]);
  return d;
}

/** Three-point slope at an end, kept from turning back or overshooting. */
function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (!(d * s0 > 0)) return 0;
  return s0 * s1 < 0 && Math.abs(d) > 3 * Math.abs(s0) ? 3 * s0 : d;
}
