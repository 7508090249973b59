import { wrightOmega } from '../../numerics/lambert.ts';
import {
  type Amperes,
  type Kelvins,
  type Ohms,
  type Siemens,
  temperatureVoltage,
  type Volts,
} from '../../units/quantities.ts';

/** i = Is·(exp(v/nVt) − 1), with an ohmic resistance in series. */
export interface ExponentialDevice {
  readonly saturationCurrent: Amperes;
  readonly ideality: number;
  /** Default 300 K. */
  readonly temperature?: Kelvins;
  /** Default 0. */
  readonly seriesResistance?: Ohms;
}
/** Any other: a measured curve, a valve. Current must not fall as the voltage rises. */
export interface CurveDevice {
  /** A at V. */
  current(volts: number): number;
  /** dI/dV, S at V. */
  conductance(volts: number): number;
  /** Given when the curve is an exponential junction with leakage across it and resistance in series. */
  readonly law?: JunctionLaw;
}
export interface JunctionLaw {
  readonly saturationCurrent: Amperes;
  /** nVt, V. */
  readonly slopeVoltage: Volts;
  readonly seriesResistance: Ohms;
  /** Across the junction, S. */
  readonly leakage: Siemens;
}
export type Device = ExponentialDevice | CurveDevice;

/** The closed law of a device, if it has one. @throws RangeError naming the figure that no device can have. */
export function lawOf(d: Device): JunctionLaw | undefined {
  const law =
    'saturationCurrent' in d
      ? {
          saturationCurrent: d.saturationCurrent,
          slopeVoltage: d.ideality * temperatureVoltage(d.temperature ?? 300),
          seriesResistance: d.seriesResistance ?? 0,
          leakage: 0,
        }
      : d.law;
  if (!law) return undefined;
  const { saturationCurrent: Is, slopeVoltage: s, seriesResistance: Rs, leakage } = law;
  if (!(Is > 0 && Is < 1)) throw new RangeError(`a saturation current must be above 0 and below 1 A, not ${Is}`);
  if (!(s > 0 && s < 10)) throw new RangeError(`a slope voltage of ${s} V is not that of a detector`);
  if (!(Rs >= 0 && Number.isFinite(Rs))) throw new RangeError(`a series resistance must be 0 Ω or more, not ${Rs}`);
  if (!(leakage >= 0 && Number.isFinite(leakage)))
    throw new RangeError(`a leakage must be 0 S or more, not ${leakage}`);
  return law;
}

/** A device as a curve of its terminal voltage. */
export function curveOf(d: Device): CurveDevice {
  if (!('saturationCurrent' in d)) return d;
  const { saturationCurrent: Is, slopeVoltage: s, seriesResistance: Rs } = lawOf(d)!;
  if (Rs === 0) {
    return {
      current: (v) => Is * Math.expm1(Math.min(v / s, 600)),
      conductance: (v) => (Is / s) * Math.exp(Math.min(v / s, 600)),
    };
  }
  const a = (Rs * Is) / s;
  const offset = a + Math.log(a);
  const omega = (v: number) => wrightOmega(v / s + offset);
  return {
    current: (v) => (s / Rs) * omega(v) - Is,
    conductance: (v) => {
      const w = omega(v);
      return w / (1 + w) / Rs;
    },
  };
}

/**
 * The voltage v at which v = open + r·i(v), for r ≤ 0: Newton's steps, halved into the interval that must hold the
 * answer when they leave it. Always ends.
 */
export function solveLoadLine(device: CurveDevice, open: number, r: number, guess: number): number {
  let v = guess;
  let f = v - open - r * device.current(v);
  // The slope of f is at least 1, so the root is no further off than f.
  let low = v - Math.abs(f);
  let high = v + Math.abs(f);
  for (let i = 0; i < 80; i++) {
    if (f > 0) high = v;
    else low = v;
    let next = v - f / (1 - r * device.conductance(v));
    if (!(next >= low && next <= high)) next = (low + high) / 2;
    if (Math.abs(next - v) <= 1e-12 * Math.abs(next) + 1e-13) return next;
    v = next;
    f = v - open - r * device.current(v);
  }
  return v;
}

/**
 * As `solveLoadLine` for several devices: v = open + R·i(v), R symmetric and nowhere positive, row by row.
 * `v` holds the guess and receives the answer; `work` needs n·(n + 4) places.
 */
export function solveLoadPlane(
  devices: readonly CurveDevice[],
  open: Float64Array,
  R: Float64Array,
  v: Float64Array,
  work: Float64Array,
): void {
  const n = devices.length;
  const F = work.subarray(0, n);
  const trial = work.subarray(n, 2 * n);
  const step = work.subarray(2 * n, 3 * n);
  const i0 = work.subarray(3 * n, 4 * n);
  const M = work.subarray(4 * n, 4 * n + n * n);
  const miss = (at: Float64Array): number => {
    let size = 0;
    for (let a = 0; a < n; a++) i0[a] = devices[a].current(at[a]);
    for (let a = 0; a < n; a++) {
      let f = at[a] - open[a];
      for (let b = 0; b < n; b++) f -= R[a * n + b] * i0[b];
      F[a] = f;
      size += f * f;
    }
    return size;
  };
  let size = miss(v);
  for (let turn = 0; turn < 60; turn++) {
    for (let a = 0; a < n; a++) {
      for (let b = 0; b < n; b++) M[a * n + b] = (a === b ? 1 : 0) - R[a * n + b] * devices[b].conductance(v[b]);
      step[a] = -F[a];
    }
    eliminate(M, step, n);
    if (!finite(step)) {
      // Detectors on a node that nothing discharges are one equation twice: each for itself then.
      for (let a = 0; a < n; a++) step[a] = -F[a] / (1 - R[a * n + a] * devices[a].conductance(v[a]));
    }
    let scale = 1;
    let next = size;
    for (let half = 0; half < 40; half++) {
      for (let a = 0; a < n; a++) trial[a] = v[a] + scale * step[a];
      next = miss(trial);
      if (next <= size * (1 - 0.2 * scale) || next < 1e-26) break;
      scale /= 2;
    }
    let moved = 0;
    for (let a = 0; a < n; a++) {
      moved = Math.max(moved, Math.abs(trial[a] - v[a]) / (Math.abs(v[a]) + 0.1));
      v[a] = trial[a];
    }
    size = next;
    if (moved < 1e-12) return;
  }
}

function finite(x: Float64Array): boolean {
  for (let a = 0; a < x.length; a++) if (!Number.isFinite(x[a])) return false;
  return true;
}

/** M·x = b in place by elimination with pivoting, for the few equations of a step. */
function eliminate(M: Float64Array, b: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(M[i * n + k]) > Math.abs(M[pivot * n + k])) pivot = i;
    if (pivot !== k) {
      for (let j = k; j < n; j++) {
        const swap = M[k * n + j];
        M[k * n + j] = M[pivot * n + j];
        M[pivot * n + j] = swap;
      }
      const swap = b[k];
      b[k] = b[pivot];
      b[pivot] = swap;
    }
    for (let i = k + 1; i < n; i++) {
      const f = M[i * n + k] / M[k * n + k];
      for (let j = k + 1; j < n; j++) M[i * n + j] -= f * M[k * n + j];
      b[i] -= f * b[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) b[k] -= M[k * n + j] * b[j];
    b[k] /= M[k * n + k];
  }
}
