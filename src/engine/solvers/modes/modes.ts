import { eigen } from '../../numerics/eigen.ts';
import { type ComplexMatrix, complexMatrix, solveComplexInPlace } from '../../numerics/lu-complex.ts';
import { uniform } from '../../numerics/random.ts';
import type { OutputRow, StateSpace } from './state-space.ts';

/**
 * The free motions of a network: each state is a sum of exponentials. A mode with `im` above 0 stands for itself and
 * its mirror image, so that a real output is Re(c·z) of single modes (im = 0) plus 2·Re(c·z) of the paired.
 */
export interface Modes {
  readonly count: number;
  /** λ, rad/s; real modes first. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** How many, counted from the start, are real. */
  readonly real: number;
  /** Drive of each mode by each emf: mode × emf. */
  readonly emfs: ComplexMatrix;
  /** Drive of each mode by each detector's current: mode × detector. */
  readonly detectors: ComplexMatrix;
  /** The c of an output row, one number per mode. */
  output(row: OutputRow): ComplexMatrix;
  /** Largest relative error of the response rebuilt from the modes at the frequencies it was tried at. */
  readonly residual: number;
}

/** Relative changes of the matrix tried in turn: networks with repeated modes need a nudge to have separate ones. */
const NUDGES = [0, 1e-12, 1e-10, 1e-8, 1e-7];

/**
 * @param trial angular frequencies at which the modes must give back the network's own response.
 * @throws RangeError when they cannot, to one part in 10⁴.
 */
export function modesOf(system: StateSpace, trial: readonly number[]): Modes {
  let best: Modes | undefined;
  for (const nudge of NUDGES) {
    const modes = decompose(system, nudge, trial);
    if (modes && (!best || modes.residual < best.residual)) best = modes;
    if (best && best.residual < 1e-7) break;
  }
  if (!best || !(best.residual < 1e-4)) {
    throw new RangeError('the free motions of this circuit cannot be told apart: change one of its values a little');
  }
  return best;
}

function decompose(system: StateSpace, nudge: number, trial: readonly number[]): Modes | undefined {
  const n = system.order;
  const E = system.emfs.length;
  const D = system.detectors.length;
  const A = nudge === 0 ? system.A : nudged(system.A, nudge);
  const { values, vectors } = eigen(A, n);
  const kinds = pairUp(values, n);
  const V = complexMatrix(n * n);
  let column = 0;
  for (const k of kinds.real) {
    // The vector of a real mode is real but for a common phase.
    let big = 0;
    for (let i = 1; i < n; i++) {
      if (
        Math.hypot(vectors.re[i * n + k], vectors.im[i * n + k]) >
        Math.hypot(vectors.re[big * n + k], vectors.im[big * n + k])
      )
        big = i;
    }
    const [cr, ci] = [vectors.re[big * n + k], vectors.im[big * n + k]];
    for (let i = 0; i < n; i++) V.re[i * n + column] = vectors.re[i * n + k] * cr + vectors.im[i * n + k] * ci;
    column++;
  }
  for (const k of kinds.paired) {
    for (let i = 0; i < n; i++) {
      V.re[i * n + column] = V.re[i * n + column + 1] = vectors.re[i * n + k];
      V.im[i * n + column] = vectors.im[i * n + k];
      V.im[i * n + column + 1] = -vectors.im[i * n + k];
    }
    column += 2;
  }
  const c = E + D;
  const drive = complexMatrix(n * c);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < E; j++) drive.re[i * c + j] = system.B[i * E + j];
    for (let j = 0; j < D; j++) drive.re[i * c + E + j] = system.G[i * D + j];
  }
  const factor = { re: V.re.slice(), im: V.im.slice() };
  if (!solveComplexInPlace(factor, n, drive, c)) return undefined;

  const real = kinds.real.length;
  const count = real + kinds.paired.length;
  const at = (m: number) => (m < real ? m : real + 2 * (m - real)); // its column in V
  const list = [...kinds.real, ...kinds.paired];
  const emfs = complexMatrix(count * E);
  const detectors = complexMatrix(count * D);
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  for (let m = 0; m < count; m++) {
    re[m] = Math.min(values.re[list[m]], 0);
    im[m] = m < real ? 0 : values.im[list[m]];
    for (const part of ['re', 'im'] as const) {
      if (part === 'im' && m < real) continue;
      for (let j = 0; j < E; j++) emfs[part][m * E + j] = drive[part][at(m) * c + j];
      for (let j = 0; j < D; j++) detectors[part][m * D + j] = drive[part][at(m) * c + E + j];
    }
  }
  const output = ({ states }: OutputRow): ComplexMatrix => {
    const out = complexMatrix(count);
    for (let m = 0; m < count; m++) {
      for (let i = 0; i < n; i++) {
        out.re[m] += states[i] * V.re[i * n + at(m)];
        if (m >= real) out.im[m] += states[i] * V.im[i * n + at(m)];
      }
    }
    return out;
  };
  const modes = { count, re, im, real, emfs, detectors, output };
  return { ...modes, residual: residual(system, modes, V, at, trial) };
}

/** Compare the states under unit drives at the trial frequencies with a direct solution. */
function residual(
  system: StateSpace,
  modes: Omit<Modes, 'residual'>,
  V: ComplexMatrix,
  at: (m: number) => number,
  trial: readonly number[],
): number {
  const n = system.order;
  const D = system.detectors.length;
  const E = system.emfs.length;
  if (n === 0) return 0;
  let worst = 0;
  for (const w of trial) {
    const M = complexMatrix(n * n);
    for (let i = 0; i < n * n; i++) M.re[i] = -system.A[i];
    for (let i = 0; i < n; i++) M.im[i * n + i] = w;
    const X = complexMatrix(n * (D + E));
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < D; j++) X.re[i * (D + E) + j] = system.G[i * D + j];
      for (let j = 0; j < E; j++) X.re[i * (D + E) + D + j] = system.B[i * E + j];
    }
    if (!solveComplexInPlace(M, n, X, D + E)) continue;
    for (let j = 0; j < D + E; j++) {
      let wrong = 0;
      let size = 0;
      for (let i = 0; i < n; i++) {
        let xr = 0;
        let xi = 0;
        for (let m = 0; m < modes.count; m++) {
          const [br, bi] =
            j < D
              ? [modes.detectors.re[m * D + j], modes.detectors.im[m * D + j]]
              : [modes.emfs.re[m * E + j - D], modes.emfs.im[m * E + j - D]];
          const [vr, vi] = [V.re[i * n + at(m)], V.im[i * n + at(m)]];
          for (const mirror of m < modes.real ? [1] : [1, -1]) {
            const pr = br * vr - bi * vi;
            const pi = mirror * (br * vi + bi * vr);
            const dr = -modes.re[m];
            const di = w - mirror * modes.im[m];
            const d = dr * dr + di * di;
            xr += (pr * dr + pi * di) / d;
            xi += (pi * dr - pr * di) / d;
          }
        }
        const k = i * (D + E) + j;
        wrong += (xr - X.re[k]) ** 2 + (xi - X.im[k]) ** 2;
        size += X.re[k] ** 2 + X.im[k] ** 2;
      }
      if (size > 0) worst = Math.max(worst, Math.sqrt(wrong / size));
      if (!(wrong >= 0)) return Number.POSITIVE_INFINITY;
    }
  }
  return worst;
}

/** Real eigenvalues, and one (upper half plane) of each conjugate pair. */
function pairUp(values: ComplexMatrix, n: number): { real: number[]; paired: number[] } {
  const free = new Set(Array.from({ length: n }, (_, i) => i));
  const paired: number[] = [];
  const upper = [...free].filter((k) => values.im[k] > 1e-13 * Math.hypot(values.re[k], values.im[k]));
  upper.sort((a, b) => values.im[b] - values.im[a]);
  for (const k of upper) {
    if (!free.has(k)) continue;
    let mate = -1;
    let nearest = Number.POSITIVE_INFINITY;
    for (const j of free) {
      if (values.im[j] >= 0) continue;
      const distance = Math.hypot(values.re[j] - values.re[k], values.im[j] + values.im[k]);
      if (distance < nearest) {
        nearest = distance;
        mate = j;
      }
    }
    if (mate < 0 || nearest > 0.5 * values.im[k]) continue; // rounding, not a swing: two real ones
    free.delete(k);
    free.delete(mate);
    paired.push(k);
  }
  return { real: [...free], paired };
}

/** Every entry changed by a small relative amount, always the same. */
function nudged(A: Float64Array, size: number): Float64Array {
  const next = uniform(12345);
  return A.map((a) => a * (1 + size * (2 * next() - 1)));
}
