import { averaged } from '../../../engine/parts/detector/averaged.ts';
import type { Detector, DevicePoint } from '../../../engine/parts/detector/detector.ts';
import { steadyDetector } from '../../../engine/parts/detector/steady.ts';
import type { Ohms, Volts } from '../../../engine/units/quantities.ts';

/** A one-way path as it is, or the perfect one of the textbook: a short circuit forwards, nothing backwards. */
export type OneWay = Detector | 'perfect';

export interface BareDetection {
  readonly detector: OneWay;
  /** What the current flows through, with nothing across it to smooth. */
  readonly resistance: Ohms;
  readonly bias?: Volts;
  /** Two detectors, one for each half. */
  readonly bothHalves?: boolean;
  /** Greatest voltage that is ever asked for. */
  readonly reach: Volts;
}

/** The output at equally spaced voltages, and its means at equally spaced amplitudes. */
export interface BareTables {
  readonly at: Float64Array;
  readonly means: Float64Array;
}

/** What comes out of a detector with nothing to smooth it. */
export interface BareOutput {
  /** None for the perfect path. */
  readonly tables?: BareTables;
  /** Voltage across the resistance for a voltage put in. */
  at(v: Volts): Volts;
  /** Mean over one cycle of a carrier of this amplitude. */
  mean(amplitude: Volts): Volts;
}

const POINTS = 4096;
const AMPLITUDES = 512;
const ANGLES = 192;

/** @param made its tables, where they were made before. @throws RangeError when resistance or reach is not above 0. */
export function bareOutput(options: BareDetection, made?: BareTables): BareOutput {
  const { detector, resistance: R, bias = 0, bothHalves = false, reach } = options;
  if (!(R > 0)) throw new RangeError(`resistance must be above 0 Ω, got ${R}`);
  if (!(reach > 0)) throw new RangeError(`reach must be above 0 V, got ${reach}`);
  if (detector === 'perfect') {
    return bothHalves
      ? { at: (v) => Math.abs(v), mean: (a) => (2 * Math.abs(a)) / Math.PI }
      : { at: (v) => Math.max(v, 0), mean: (a) => Math.abs(a) / Math.PI };
  }
  const table = made?.at ?? new Float64Array(POINTS + 1);
  if (!made) {
    const solve = outputSolver(detector, R, bias, bothHalves);
    let y = 0;
    for (let i = 0; i <= POINTS; i++) table[i] = y = solve(reach * ((2 * i) / POINTS - 1), y);
  }
  const at = (v: number): number => {
    const x = ((v / reach + 1) * POINTS) / 2;
    if (!(x > 0)) return table[0];
    if (x >= POINTS) return table[POINTS];
    const i = x | 0;
    return table[i] + (x - i) * (table[i + 1] - table[i]);
  };
  const means = made?.means ?? new Float64Array(AMPLITUDES + 1);
  for (let k = 0; !made && k <= AMPLITUDES; k++) {
    let sum = 0;
    for (let j = 0; j < ANGLES; j++) sum += at(((reach * k) / AMPLITUDES) * Math.cos((Math.PI * (j + 0.5)) / ANGLES));
    means[k] = sum / ANGLES;
  }
  return {
    tables: { at: table, means },
    at,
    mean(amplitude) {
      const x = Math.min(Math.abs(amplitude) / reach, 1) * AMPLITUDES;
      // The parabola through the nearest three: near zero the curve is one.
      const k = Math.max(1, Math.min(AMPLITUDES - 1, Math.round(x)));
      const f = x - k;
      const bend = means[k - 1] - 2 * means[k] + means[k + 1];
      return means[k] + f * 0.5 * (means[k + 1] - means[k - 1] + f * bend);
    },
  };
}

/**
 * Voltage across the load when a steady carrier has filled a large capacitor there: where a wave is followed from.
 * @returns volts.
 */
export function settledVoltage(options: Omit<BareDetection, 'reach'> & { readonly amplitude: Volts }): Volts {
  const { detector, amplitude, resistance, bias = 0 } = options;
  if (detector === 'perfect') return amplitude;
  return steadyDetector({
    averaged: averaged(detector),
    openCircuit: amplitude,
    sourceImpedance: { re: 0, im: 0 },
    dcResistance: resistance,
    bias,
  }).directVoltage;
}

/** y = R·i(v + bias − y) by Newton inside a bracket; the left side less the right rises with y. */
function outputSolver(detector: Detector, R: number, bias: number, both: boolean) {
  const p: DevicePoint = { current: 0, conductance: 0 };
  return (v: number, guess: number): number => {
    const excess = (y: number): { f: number; slope: number } => {
      detector.evaluate(v + bias - y, p);
      let i = p.current;
      let g = p.conductance;
      if (both) {
        detector.evaluate(-v + bias - y, p);
        i += p.current;
        g += p.conductance;
      }
      return { f: y - R * i, slope: 1 + R * g };
    };
    const forward = Math.max(v, both ? -v : v) + bias;
    let low = Math.min(0, forward, -excess(0).f);
    let high = Math.max(0, forward);
    let y = Math.min(high, Math.max(low, guess));
    for (let k = 0; k < 60; k++) {
      const { f, slope } = excess(y);
      if (f > 0) high = y;
      else low = y;
      let next = y - f / slope;
      if (!(next > low && next < high)) next = (low + high) / 2;
      if (Math.abs(next - y) <= 1e-10 * Math.abs(y) + 1e-15) return next;
      y = next;
    }
    return y;
  };
}
