import type { Detector, DevicePoint } from '../../../engine/parts/detector/detector.ts';
import type { Farads, Henries, Ohms, Seconds, Volts } from '../../../engine/units/quantities.ts';
import type { OneWay } from './one-way.ts';

/** What the detector's current meets: a capacitor, beside it the phones (or a resistor and an amplifier's input). */
export interface SmoothingLoad {
  readonly capacitance: Farads;
  /** What the direct current flows through. */
  readonly resistance: Ohms;
  /** In series with the resistance: the phones' windings. */
  readonly inductance?: Henries;
  /** An amplifier's input behind its coupling capacitor. */
  readonly coupled?: { readonly capacitance: Farads; readonly resistance: Ohms };
}

export interface SmoothingOptions {
  readonly detector: OneWay;
  readonly load: SmoothingLoad;
  readonly bias?: Volts;
  readonly bothHalves?: boolean;
  /** Voltage across the capacitor to begin with. */
  readonly start: Volts;
  /** Times round until it repeats; at most. */
  readonly rounds?: number;
}

/** A capacitor this small stands for none: the stray of the leads. */
const STRAY: Farads = 5e-12;
/** The textbook's perfect path is given this much resistance, or the capacitor could not be charged in finite time. */
const PERFECT_OHMS = 1;

/**
 * Voltage across the load capacitor, instant by instant, when a known voltage drives the detector: the capacitor filled
 * in gulps near each crest and drained between. Backward differentiation of second order with the detector solved in
 * every step, so that neither a tiny capacitor nor a steep curve upsets it.
 * @param drive the voltage at the detector over one period, equally spaced. @param step s.
 * @returns the voltage at the same instants, after as many times round as it takes to repeat within 2e-4 of its peak.
 */
export function smoothed(drive: Float64Array, step: Seconds, options: SmoothingOptions): Float64Array {
  // Newton's next step is the square of this one: what is left then is far below a line's width.
  let largest = 0;
  for (let k = 0; k < drive.length; k++) largest = Math.max(largest, Math.abs(drive[k]));
  const solve = stepSolver(options, 3e-6 * largest);
  return integrated(drive.length, step, options, (k, g, constant, guess) => solve(drive[k], g, constant, guess));
}

/** Solve i(v) = g·v − constant at instant k for v. */
type Solve = (k: number, g: number, constant: number, guess: number) => number;

/** The load's side of it: any law of a current that falls as the voltage rises. */
export function integrated(
  n: number,
  step: Seconds,
  { load, start, rounds = 4 }: Pick<SmoothingOptions, 'load' | 'start' | 'rounds'>,
  solve: Solve,
): Float64Array {
  const C = Math.max(load.capacitance, STRAY);
  const R = Math.max(load.resistance, 1e-3);
  const { inductance: L = 0, coupled } = load;
  const out = new Float64Array(n);
  let v1 = start;
  let v2 = v1;
  let i1 = v1 / R;
  let i2 = i1;
  let c1 = v1;
  let c2 = v1;
  const h = (2 / 3) * step;
  // Currents of the branches at the new time are a straight line in the new voltage.
  const gBranch = L > 0 ? h / (L + h * R) : 1 / R;
  const tau = coupled ? coupled.capacitance * coupled.resistance : 0;
  const gCoupled = coupled ? (1 / coupled.resistance) * (tau / (tau + h)) : 0;
  const g = C / h + gBranch + gCoupled;
  let largest = Math.abs(v1);
  for (let round = 0; round < rounds; round++) {
    const before = v1;
    for (let k = 0; k < n; k++) {
      const v0 = (4 * v1 - v2) / 3;
      const i0 = (4 * i1 - i2) / 3;
      const c0 = (4 * c1 - c2) / 3;
      const fromBranch = L > 0 ? (L * i0) / (L + h * R) : 0;
      const constant = (C / h) * v0 - fromBranch + gCoupled * c0;
      const v = solve(k, g, constant, 2 * v1 - v2);
      i2 = i1;
      i1 = gBranch * v + fromBranch;
      c2 = c1;
      c1 = coupled ? (tau * c0 + h * v) / (tau + h) : v;
      v2 = v1;
      v1 = v;
      out[k] = v;
      if (v > largest) largest = v;
    }
    if (Math.abs(v1 - before) < 2e-4 * largest) break;
  }
  return out;
}

/** Solve i(drive + bias − v) = g·v − constant for v. */
function stepSolver({ detector, bias = 0, bothHalves = false }: SmoothingOptions, near: Volts) {
  if (detector === 'perfect') {
    const G = 1 / PERFECT_OHMS;
    return (drive: number, g: number, constant: number, _guess: number): number => {
      const x = bothHalves ? Math.abs(drive) : drive;
      const open = constant / g;
      return x > open ? (constant + G * x) / (g + G) : open;
    };
  }
  return realSolver(detector, bias, bothHalves, near);
}

function realSolver(detector: Detector, bias: number, both: boolean, near: Volts) {
  const p: DevicePoint = { current: 0, conductance: 0 };
  return (drive: number, g: number, constant: number, guess: number): number => {
    const x = drive + bias;
    const y = -drive + bias;
    let v = guess;
    let low = Number.NEGATIVE_INFINITY;
    let high = Number.POSITIVE_INFINITY;
    for (let k = 0; k < 50; k++) {
      detector.evaluate(x - v, p);
      let i = p.current;
      let slope = p.conductance;
      if (both) {
        detector.evaluate(y - v, p);
        i += p.current;
        slope += p.conductance;
      }
      const f = g * v - constant - i;
      if (f > 0) high = v;
      else low = v;
      let next = v - f / (g + slope);
      if (!(next > low && next < high)) next = Number.isFinite(low + high) ? (low + high) / 2 : next;
      if (Math.abs(next - v) <= near) return next;
      v = next;
    }
    return v;
  };
}
