import { inverseGram, reduceToTriangle, solveTriangle } from './qr.ts';

/** Residuals at the unknowns x; a value that is not finite says that x is not possible. */
export type Residuals = (x: Float64Array) => ArrayLike<number>;

export interface LeastSquaresOptions {
  /** Usual size of each unknown where it may be 0; sets steps and tolerance. Default: a thousandth of the start, or 1. */
  readonly scales?: readonly number[];
  /** First damping. Default 1e-3. */
  readonly damping?: number;
  /** Longest step of an unknown as a multiple of its size. Default: none. */
  readonly longestStep?: number;
  /** Steps after which it ends wherever it is. Default 2000. */
  readonly mostSteps?: number;
  /** Share of its size that no unknown moves by any more at the end. Default 1e-14. */
  readonly tolerance?: number;
}

export interface LeastSquaresFit {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
  /** Readings less unknowns. */
  readonly degreesOfFreedom: number;
  /** p×p row by row, scaled by the variance of the residuals; NaN without degrees of freedom. */
  readonly covariance: Float64Array;
  /** The same for residuals of unit variance, as weighted with known errors. */
  readonly gram: Float64Array;
}

const MOST_STEPS = 2000;
const MOST_TRIES = 60;
const DIFFERENCE = 6e-6;
const SETTLED = 1e-14;
/** Undamped last steps, and how far they may go as a share of an unknown's size. */
const POLISHES = 2;
const POLISH = 1e-5;
const ROUNDING = 1e-13;

const sumOfSquaresOf = (r: ArrayLike<number>): number => {
  let s = 0;
  for (let i = 0; i < r.length; i++) s += r[i] * r[i];
  return s;
};

/** ∂residual/∂x by central differences, m×n row by row. */
function jacobianOf(residuals: Residuals, x: Float64Array, m: number, sizeOf: (j: number) => number): Float64Array {
  const n = x.length;
  const J = new Float64Array(m * n);
  for (let j = 0; j < n; j++) {
    const h = DIFFERENCE * sizeOf(j);
    const trial = x.slice();
    trial[j] = x[j] + h;
    const above = residuals(trial);
    const high = trial[j];
    trial[j] = x[j] - h;
    const below = residuals(trial);
    for (let i = 0; i < m; i++) J[i * n + j] = (above[i] - below[i]) / (high - trial[j]);
  }
  return J;
}

/**
 * Nonlinear least squares: Levenberg and Marquardt's method with Moré's scaling, each step by Householder QR of the
 * stacked matrix, downhill only, until no unknown moves by more than the tolerance of its size.
 * @throws RangeError when the residuals at the start are not finite or fewer than the unknowns.
 * Source: Moré, The Levenberg-Marquardt algorithm (1978); damping after Nielsen, IMM-REP-1999-05.
 */
export function leastSquares(
  residuals: Residuals,
  start: ArrayLike<number>,
  { scales, damping = 1e-3, longestStep, mostSteps = MOST_STEPS, tolerance = SETTLED }: LeastSquaresOptions = {},
): LeastSquaresFit {
  let x = Float64Array.from(start);
  const n = x.length;
  const least = Float64Array.from(x, (value, j) => scales?.[j] ?? (1e-3 * Math.abs(value) || 1));
  const sizeOf = (j: number) => Math.max(Math.abs(x[j]), least[j]);
  let r = Float64Array.from(residuals(x));
  const m = r.length;
  let sum = sumOfSquaresOf(r);
  if (!Number.isFinite(sum)) throw new RangeError('the residuals at the start of a fit are not finite');
  if (!(m >= n)) throw new RangeError(`${m} readings cannot settle ${n} unknowns`);
  const steepest = new Float64Array(n);
  let mu = damping;
  let growth = 2;
  for (let turn = 0; turn < mostSteps; turn++) {
    const J = jacobianOf(residuals, x, m, sizeOf);
    for (let j = 0; j < n; j++) {
      let norm = 0;
      for (let i = 0; i < m; i++) norm = Math.hypot(norm, J[i * n + j]);
      if (norm > steepest[j]) steepest[j] = norm;
    }
    // The triangle of [J, −r] once; each try then only adds its damping below it.
    const whole = reduceToTriangle(
      J.slice(),
      Float64Array.from(r, (value) => -value),
      n,
    );
    const residualOfLinear = sum - sumOfSquaresOf(whole.target);
    let moved = false;
    let settled = false;
    for (let attempt = 0; attempt < MOST_TRIES && !moved; attempt++) {
      const stacked = new Float64Array(2 * n * n);
      stacked.set(whole.R);
      for (let j = 0; j < n; j++) stacked[(n + j) * n + j] = Math.sqrt(mu) * (steepest[j] || 1);
      const right = new Float64Array(2 * n);
      right.set(whole.target);
      const step = solveTriangle(reduceToTriangle(stacked, right, n));
      if (longestStep !== undefined)
        for (let j = 0; j < n; j++) {
          const most = longestStep * sizeOf(j);
          step[j] = Math.max(-most, Math.min(most, step[j]));
        }
      settled = step.every((move, j) => Math.abs(move) <= tolerance * sizeOf(j));
      const trial = x.map((value, j) => value + step[j]);
      const next = Float64Array.from(residuals(trial));
      const nextSum = sumOfSquaresOf(next);
      const fall = sum - nextSum;
      if (fall > 0) {
        let linear = residualOfLinear;
        for (let i = 0; i < n; i++) {
          let s = whole.target[i];
          for (let j = i; j < n; j++) s -= whole.R[i * n + j] * step[j];
          linear += s * s;
        }
        const ratio = fall / Math.max(sum - linear, Number.MIN_VALUE);
        mu *= Math.max(0.1, 1 - (2 * ratio - 1) ** 3);
        growth = 2;
        x = trial;
        r = next;
        sum = nextSum;
        moved = true;
      } else {
        if (settled) break;
        mu *= growth;
        growth *= 2;
      }
    }
    if (!moved || settled) break;
  }
  // The sum of squares cannot tell x to better than the root of its rounding; where its slope is 0 can.
  let final = reduceToTriangle(
    jacobianOf(residuals, x, m, sizeOf),
    r.map((value) => -value),
    n,
  );
  for (let turn = 0; turn < POLISHES; turn++) {
    const step = solveTriangle(final);
    const trial = x.map((value, j) => value + step[j]);
    if (!step.every((move, j) => Math.abs(move) <= POLISH * sizeOf(j))) break;
    const next = Float64Array.from(residuals(trial));
    const nextSum = sumOfSquaresOf(next);
    if (!(nextSum <= sum * (1 + ROUNDING))) break;
    x = trial;
    r = next;
    sum = nextSum;
    final = reduceToTriangle(
      jacobianOf(residuals, x, m, sizeOf),
      r.map((value) => -value),
      n,
    );
  }
  const degreesOfFreedom = m - n;
  const variance = sum / degreesOfFreedom;
  const gram = inverseGram(final);
  return {
    x,
    residuals: r,
    sumOfSquares: sum,
    degreesOfFreedom,
    covariance: gram.map((value) => value * variance),
    gram,
  };
}

/**
 * The same from the same start in three ways (plain; steps held to twice each unknown; almost undamped), the best of
 * them kept: for problems where a start far off leads a single run astray.
 */
export function leastSquaresOfThree(
  residuals: Residuals,
  start: ArrayLike<number>,
  options: Pick<LeastSquaresOptions, 'scales'> = {},
): LeastSquaresFit {
  const fits = [{}, { longestStep: 2 }, { damping: 1e-8 }].map((way) =>
    leastSquares(residuals, start, { ...options, ...way }),
  );
  return fits.reduce((best, fit) => (fit.sumOfSquares < best.sumOfSquares ? fit : best));
}
