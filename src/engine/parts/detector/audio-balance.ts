import { type Complex, magnitude } from '../../numerics/complex.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import { type AveragedDetector, averagedCurrents } from './averaged.ts';

/** What the balance of one modulated carrier is struck between; phasors of the audio cycle, index k + K for k = -K … K. */
export interface Balance {
  readonly averaged: AveragedDetector;
  readonly K: number;
  /** Open-circuit carrier and sidebands at the device. */
  readonly emf: readonly Complex[];
  /** What the device looks into at each. */
  readonly source: readonly Complex[];
  /** Load at k = 0 … K times the audio frequency. */
  readonly load: readonly Complex[];
  readonly bias: number;
}

/** Voltages found (same index; `direct` for k = 0 … K, with the negative ones their conjugates) and the currents there. */
export interface BalanceState {
  readonly carrier: Complex[];
  readonly direct: Complex[];
  readonly carrierCurrent: Complex[];
  readonly meanCurrent: Complex[];
  /** Least mean current and least slope of it in the cycle. */
  readonly leastCurrent: number;
  readonly leastSlope: number;
  /** Largest harmonic K + 1 that the balance leaves out, over the first: of the load's voltage or of the carrier. */
  readonly leftOut: number;
  readonly converged: boolean;
  readonly iterations: number;
}

interface Samples {
  readonly re: Float64Array;
  readonly im: Float64Array;
}
const samples = (n: number): Samples => ({ re: new Float64Array(n), im: new Float64Array(n) });

/** Cosines and sines of a cycle cut in N: constants, kept because every station asks for them. */
const tables = new Map<number, { readonly cos: Float64Array; readonly sin: Float64Array }>();
function cycle(N: number) {
  let table = tables.get(N);
  if (!table) {
    table = {
      cos: Float64Array.from({ length: N }, (_, i) => Math.cos((2 * Math.PI * i) / N)),
      sin: Float64Array.from({ length: N }, (_, i) => Math.sin((2 * Math.PI * i) / N)),
    };
    tables.set(N, table);
  }
  return table;
}

/** What a balance of K harmonics is worked out in: kept, since every station asks for the same few. */
function makeWorkspace(K: number) {
  const N = K <= 2 ? 8 : K <= 3 ? 16 : K <= 7 ? 32 : 64;
  const width = 2 * K + 1;
  const size = 3 * width;
  return {
    N,
    size,
    /** Unknowns: re and im of each carrier phasor, then the direct one, then re and im of the audio ones (halved phasors). */
    x: new Float64Array(size),
    /** Equations left over, and their slopes by the unknowns. */
    F: new Float64Array(size),
    J: new Float64Array(size * size),
    /** At each instant: voltages of carrier and audio at which the device's slopes are taken, its currents. */
    V: samples(N),
    v0: new Float64Array(N),
    I1: samples(N),
    I0: new Float64Array(N),
    /** Voltages of the harmonics, and the currents there by the slopes. */
    T: samples(N),
    t0: new Float64Array(N),
    C1: samples(N),
    C0: new Float64Array(N),
    /** Slopes there: δI1 = a·δV + b·δV* + 2h·δv0 and δI0 = Re(h*·δV) + e·δv0. */
    a: new Float64Array(N),
    bb: samples(N),
    h: samples(N),
    e: new Float64Array(N),
    /** Harmonics of the currents, of their slopes, and of the currents with one more at the end. */
    i1: samples(width),
    i0: samples(width),
    A: samples(4 * K + 1),
    B: samples(4 * K + 1),
    G: samples(4 * K + 1),
    E: samples(4 * K + 1),
    last1: samples(width + 2),
    last0: samples(width + 2),
    out: averagedCurrents(),
  };
}
const workspaces = new Map<number, ReturnType<typeof makeWorkspace>>();
function workspace(K: number): ReturnType<typeof makeWorkspace> {
  let space = workspaces.get(K);
  if (!space) workspaces.set(K, (space = makeWorkspace(K)));
  return space;
}

/** Harmonics -H … H of a complex signal of N = 2^m instants into `s`, index k + H. */
function spectrum(re: Float64Array, im: Float64Array, H: number, s: Samples): void {
  const N = re.length;
  const { cos, sin } = cycle(N);
  for (let k = 0; k <= H; k++) {
    let rc = 0;
    let rs = 0;
    let ic = 0;
    let is = 0;
    for (let i = 0; i < N; i++) {
      const j = (k * i) & (N - 1);
      rc += re[i] * cos[j];
      rs += re[i] * sin[j];
      ic += im[i] * cos[j];
      is += im[i] * sin[j];
    }
    s.re[H + k] = (rc + is) / N;
    s.im[H + k] = (ic - rs) / N;
    s.re[H - k] = (rc - is) / N;
    s.im[H - k] = (ic + rs) / N;
  }
}
/** The same of a real signal. */
function realSpectrum(re: Float64Array, H: number, s: Samples): void {
  const N = re.length;
  const { cos, sin } = cycle(N);
  for (let k = 0; k <= H; k++) {
    let rc = 0;
    let rs = 0;
    for (let i = 0; i < N; i++) {
      const j = (k * i) & (N - 1);
      rc += re[i] * cos[j];
      rs += re[i] * sin[j];
    }
    s.re[H + k] = s.re[H - k] = rc / N;
    s.im[H + k] = -rs / N;
    s.im[H - k] = rs / N;
  }
}

/**
 * Carrier envelope and audio voltage of one period of a steady tone: the device answers each instant by its averages,
 * the networks answer each harmonic by their impedances. Newton on the harmonics; at an instant where the step would
 * multiply the current, the next slopes are taken where no more flows than the last ones gave.
 * @param start carrier and direct phasors to begin with; may hold fewer harmonics. @param mostIterations bounds the work.
 */
export function balance(
  b: Balance,
  start: Pick<BalanceState, 'carrier' | 'direct'>,
  mostIterations = 40,
): BalanceState {
  const { averaged, K, emf, source, load, bias } = b;
  const width = 2 * K + 1;
  const { N, size, x, V, v0, I1, I0, a, bb, h, e, out, F, J, i1, i0, A, B, G, E, last1, last0 } = workspace(K);
  const { T, t0, C1, C0 } = workspace(K);
  const { cos, sin } = cycle(N);
  x.fill(0);
  const from = (start.carrier.length - 1) / 2;
  for (let k = -Math.min(K, from); k <= Math.min(K, from); k++) {
    x[2 * (k + K)] = start.carrier[k + from].re;
    x[2 * (k + K) + 1] = start.carrier[k + from].im;
  }
  const D = 2 * width;
  for (let k = 0; k <= Math.min(K, start.direct.length - 1); k++) {
    if (k === 0) x[D] = start.direct[0].re;
    else {
      x[D + 2 * k - 1] = start.direct[k].re;
      x[D + 2 * k] = start.direct[k].im;
    }
  }

  const toTime = (of: Float64Array, carrier: Samples, direct: Float64Array) => {
    for (let i = 0; i < N; i++) {
      let re = 0;
      let im = 0;
      for (let k = -K; k <= K; k++) {
        const j = (k * i) & (N - 1);
        const p = of[2 * (k + K)];
        const q = of[2 * (k + K) + 1];
        re += p * cos[j] - q * sin[j];
        im += p * sin[j] + q * cos[j];
      }
      carrier.re[i] = re;
      carrier.im[i] = im;
      let d = of[D];
      for (let k = 1; k <= K; k++) {
        const j = (k * i) & (N - 1);
        d += 2 * (of[D + 2 * k - 1] * cos[j] - of[D + 2 * k] * sin[j]);
      }
      direct[i] = d;
    }
  };
  const { currentScale: scale, slopeVoltage: s } = averaged.detector;
  /** Slopes and currents at instant i, at its voltages. */
  const device = (i: number) => {
    const m = Math.sqrt(V.re[i] * V.re[i] + V.im[i] * V.im[i]);
    const g = m > 0 ? out.fundamental / m : out.meanByDirect;
    const ur = m > 0 ? V.re[i] / m : 1;
    const ui = m > 0 ? V.im[i] / m : 0;
    const half = m > 0 ? (out.fundamentalByAmplitude - g) / 2 : 0;
    I1.re[i] = g * V.re[i];
    I1.im[i] = g * V.im[i];
    I0[i] = out.mean;
    a[i] = g + half;
    bb.re[i] = half * (ur * ur - ui * ui);
    bb.im[i] = half * 2 * ur * ui;
    h.re[i] = out.meanByAmplitude * ur;
    h.im[i] = out.meanByAmplitude * ui;
    e[i] = out.meanByDirect;
  };
  const averages = (i: number) => averaged.at(Math.sqrt(V.re[i] * V.re[i] + V.im[i] * V.im[i]), v0[i], out);
  /** So far on the straight way to the voltages of the harmonics that no more than `most` flows. */
  const partWay = (i: number, re: number, im: number, direct: number, most: number) => {
    let low = 0;
    let high = 1;
    const at = (share: number) => {
      V.re[i] = re + share * (T.re[i] - re);
      V.im[i] = im + share * (T.im[i] - im);
      v0[i] = direct + share * (t0[i] - direct);
      averages(i);
    };
    for (let k = 0; k < 24 && !(out.mean <= most && out.mean >= most / 2); k++) {
      const middle = (low + high) / 2;
      at(middle);
      if (out.mean <= most) low = middle;
      else high = middle;
    }
    if (!(out.mean <= most)) at(low);
  };
  /** The carrier of the harmonics, at a direct voltage so much lower that about `target` flows. */
  const lowered = (i: number, target: number) => {
    let low = Number.NEGATIVE_INFINITY;
    let high = v0[i];
    for (let k = 0; k < 40 && !(out.mean <= 1.5 * target && out.mean >= 0.7 * target); k++) {
      if (out.mean > target) high = v0[i];
      else low = v0[i];
      // From above, neither Newton's step nor that of an exponential goes too far.
      const step =
        out.mean > target
          ? Math.max((out.mean - target) / out.meanByDirect, s * Math.log((out.mean + scale) / (target + scale)))
          : Number.NaN;
      v0[i] = high - step > low ? high - step : (low + high) / 2;
      averages(i);
    }
  };
  /**
   * Takes the slopes at instant i anew at the voltages of the harmonics; where far more would flow there than the last
   * slopes gave, short of them, where about as much flows. @returns whether at the voltages of the harmonics.
   */
  const follow = (i: number): boolean => {
    const [re, im, direct, before] = [V.re[i], V.im[i], v0[i], I0[i]];
    const [dre, dim, dv] = [T.re[i] - re, T.im[i] - im, t0[i] - direct];
    const predicted = before + h.re[i] * dre + h.im[i] * dim + e[i] * dv;
    V.re[i] = T.re[i];
    V.im[i] = T.im[i];
    v0[i] = t0[i];
    averages(i);
    // A device nearly as good one way as the other: its currents cancel in the mean, which then measures nothing.
    const carried = Math.sqrt(I1.re[i] * I1.re[i] + I1.im[i] * I1.im[i]);
    const oneWay = Math.abs(predicted) + scale;
    const slack = Math.max(Math.abs(before), oneWay) < CANCELS * carried ? carried : oneWay;
    let isThere = !(out.mean > predicted + slack);
    if (!isThere) {
      // A carrier that turns round passes through nothing: there only the way itself is safe.
      const along = T.re[i] * re + T.im[i] * im;
      const isSameWay = along > SAME_WAY * Math.hypot(T.re[i], T.im[i]) * Math.hypot(re, im);
      const most = Math.max(before, predicted + slack);
      if (isSameWay) lowered(i, Math.max(predicted, LEAST_SHARE * before, scale));
      else if (out.mean <= most) isThere = true;
      else partWay(i, re, im, direct, most);
    }
    device(i);
    return isThere;
  };
  const H = 2 * K;
  let converged = false;
  let iterations = 0;

  /** One 2×2 (or 1-wide) block: z·(p·δ + q·δ*), with -1 on δ's own diagonal taken care of elsewhere. */
  const block = (
    row: number,
    column: number,
    z: Complex,
    pr: number,
    pi: number,
    qr: number,
    qi: number,
    rows: number,
    columns: number,
  ) => {
    const rr = pr + qr;
    const ri = pi + qi;
    const ir = qi - pi;
    const ii = pr - qr;
    const at = row * size + column;
    J[at] = z.re * rr - z.im * ri;
    if (columns > 1) J[at + 1] = z.re * ir - z.im * ii;
    if (rows > 1) {
      J[at + size] = z.re * ri + z.im * rr;
      if (columns > 1) J[at + size + 1] = z.re * ii + z.im * ir;
    }
  };

  /** The currents that the slopes of instant i give at the voltages of the harmonics. */
  const onSlopes = (i: number, isThere: boolean) => {
    const re = isThere ? 0 : T.re[i] - V.re[i];
    const im = isThere ? 0 : T.im[i] - V.im[i];
    const direct = isThere ? 0 : t0[i] - v0[i];
    C1.re[i] = I1.re[i] + a[i] * re + bb.re[i] * re + bb.im[i] * im + 2 * h.re[i] * direct;
    C1.im[i] = I1.im[i] + a[i] * im + bb.im[i] * re - bb.re[i] * im + 2 * h.im[i] * direct;
    C0[i] = I0[i] + h.re[i] * re + h.im[i] * im + e[i] * direct;
  };

  toTime(x, V, v0);
  for (let i = 0; i < N; i++) {
    averages(i);
    device(i);
    onSlopes(i, true);
  }
  while (!converged && iterations < mostIterations) {
    iterations++;
    spectrum(C1.re, C1.im, K, i1);
    realSpectrum(C0, K, i0);
    realSpectrum(a, H, A);
    spectrum(bb.re, bb.im, H, B);
    spectrum(h.re, h.im, H, G);
    realSpectrum(e, H, E);
    for (let k = -K; k <= K; k++) {
      const z = source[k + K];
      const row = 2 * (k + K);
      const [p, q] = [i1.re[k + K], i1.im[k + K]];
      F[row] = emf[k + K].re - x[row] - (z.re * p - z.im * q);
      F[row + 1] = emf[k + K].im - x[row + 1] - (z.re * q + z.im * p);
      for (let l = -K; l <= K; l++) {
        block(row, 2 * (l + K), z, A.re[k - l + H], A.im[k - l + H], B.re[k + l + H], B.im[k + l + H], 2, 2);
      }
      block(row, D, z, 2 * G.re[k + H], 2 * G.im[k + H], 0, 0, 2, 1);
      for (let l = 1; l <= K; l++) {
        const near = k - l + H;
        const far = k + l + H;
        block(row, D + 2 * l - 1, z, 2 * G.re[near], 2 * G.im[near], 2 * G.re[far], 2 * G.im[far], 2, 2);
      }
    }
    for (let k = 0; k <= K; k++) {
      const z = load[k];
      const row = k === 0 ? D : D + 2 * k - 1;
      const rows = k === 0 ? 1 : 2;
      const [p, q] = [i0.re[k + K], i0.im[k + K]];
      F[row] = (k === 0 ? bias : 0) - x[row] - (z.re * p - z.im * q);
      if (k > 0) F[row + 1] = -x[row + 1] - (z.re * q + z.im * p);
      for (let l = -K; l <= K; l++) {
        // Re(h*·δV): half of h* δV and half of h δV*.
        const near = l - k + H;
        const far = k + l + H;
        block(row, 2 * (l + K), z, G.re[near] / 2, -G.im[near] / 2, G.re[far] / 2, G.im[far] / 2, rows, 2);
      }
      block(row, D, z, E.re[k + H], E.im[k + H], 0, 0, rows, 1);
      for (let l = 1; l <= K; l++) {
        block(row, D + 2 * l - 1, z, E.re[k - l + H], E.im[k - l + H], E.re[k + l + H], E.im[k + l + H], rows, 2);
      }
    }
    for (let k = 0; k < size; k++) J[k * size + k] += 1;
    evenRows(J, F, size);
    try {
      solveInPlace(J, F);
    } catch (refusal) {
      // Equations beyond what numbers can hold: what there is so far stands, and is said not to have settled.
      if (refusal instanceof RangeError) break;
      throw refusal;
    }
    if (!F.every(Number.isFinite)) break;
    let movedCarrier = 0;
    let largestCarrier = 0;
    let movedDirect = 0;
    let largestDirect = 0;
    for (let k = 0; k < size; k++) {
      x[k] += F[k];
      if (k < D) {
        movedCarrier = Math.max(movedCarrier, Math.abs(F[k]));
        largestCarrier = Math.max(largestCarrier, Math.abs(x[k]));
      } else {
        movedDirect = Math.max(movedDirect, Math.abs(F[k]));
        largestDirect = Math.max(largestDirect, Math.abs(k === D ? bias - x[k] : x[k]));
      }
    }
    if (!Number.isFinite(movedCarrier + movedDirect)) break;
    toTime(x, T, t0);
    let isAll = true;
    for (let i = 0; i < N; i++) {
      const isThere = follow(i);
      onSlopes(i, isThere);
      isAll &&= isThere;
    }
    converged = isAll && movedCarrier < 1e-4 * largestCarrier && movedDirect < 1e-4 * largestDirect + 1e-15;
  }

  spectrum(I1.re, I1.im, K + 1, last1);
  realSpectrum(I0, K + 1, last0);
  const at = (s: Samples, k: number): Complex => ({ re: s.re[k + K + 1], im: s.im[k + K + 1] });
  const size2 = magnitude;
  const first = size2(at(last0, 1)) * size2(load[Math.min(1, K)]);
  const side = Math.max(size2(emf[K + 1]), size2(emf[K - 1]));
  const missing = Math.max(
    first > 0 ? (size2(at(last0, K + 1)) * size2(load[K])) / first : 0,
    side > 0 ? (Math.max(size2(at(last1, K + 1)), size2(at(last1, -K - 1))) * size2(source[2 * K])) / side : 0,
  );
  return {
    carrier: Array.from({ length: width }, (_, k) => ({ re: x[2 * k], im: x[2 * k + 1] })),
    direct: Array.from({ length: K + 1 }, (_, k) =>
      k === 0 ? { re: x[D], im: 0 } : { re: x[D + 2 * k - 1], im: x[D + 2 * k] },
    ),
    carrierCurrent: Array.from({ length: width }, (_, k) => at(last1, k - K)),
    meanCurrent: Array.from({ length: K + 1 }, (_, k) => at(last0, k)),
    leastCurrent: I0.reduce((least, value) => Math.min(least, value)),
    leastSlope: e.reduce((least, value) => Math.min(least, value)),
    leftOut: missing,
    converged,
    iterations,
  };
}

/** Less mean than this share of the current at the carrier: currents both ways cancel in it. */
const CANCELS = 0.05;
/** A current falls to no less than this share in one step. */
const LEAST_SHARE = 0.03;
/** Cosine of the angle between two carriers up to which they are taken to point the same way. */
const SAME_WAY = 0.9;

/** Each equation over its largest factor: with loads from ohms to insulators they differ by many powers of ten. */
function evenRows(J: Float64Array, F: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    let largest = 0;
    for (let j = 0; j < size; j++) largest = Math.max(largest, Math.abs(J[i * size + j]));
    if (!(largest > 2)) continue;
    for (let j = 0; j < size; j++) J[i * size + j] /= largest;
    F[i] /= largest;
  }
}
