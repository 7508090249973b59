import type { Complex } from '../../numerics/complex.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import type { Amperes, Volts } from '../../units/quantities.ts';
import type { Detector, DevicePoint } from './detector.ts';

export interface WaveformOptions {
  readonly detector: Detector;
  /** Peak volts of the carrier with the device taken out. */
  readonly openCircuit: Volts;
  /** What the device looks into at n times the carrier's frequency, n = 1, 2, …; real parts at least 0. */
  readonly impedanceAt: (harmonic: number) => Complex;
  readonly dcResistance: number;
  readonly bias?: Volts;
  /** Carrier across the device and mean voltage across it, to start from: the steady answer of the plain average. */
  readonly start: { readonly carrier: Complex; readonly direct: Volts };
  /** Points of the cycle, even; default by the carrier's strength: 64, 128 or 256. */
  readonly points?: number;
}

/** One cycle of a steady carrier at the device; angle 2πj/points, the open-circuit carrier being a cosine. */
export interface Waveform {
  readonly voltage_V: Float64Array;
  readonly current_A: Float64Array;
  readonly directCurrent: Amperes;
  /** Current phasors at n times the carrier, index n; index 0 is not used. Peak amperes. */
  readonly harmonics: readonly Complex[];
  readonly converged: boolean;
  readonly iterations: number;
}

const HARMONICS = 24;

/**
 * Steady carrier with every harmonic: the current's pulses leave voltages at 2, 3, … times the carrier on whatever the
 * device looks into, and those shape the pulses. Newton on the points of one cycle against the network's impedances
 * (harmonic balance). The plain average leaves this out; it matters below a loaded Q of about 15 with strong signals.
 * @throws RangeError when the equations are singular (an impedance with negative resistance).
 */
export function carrierWaveform(options: WaveformOptions): Waveform {
  const { detector, openCircuit, impedanceAt, dcResistance, bias = 0, start } = options;
  const s = detector.slopeVoltage;
  const x = Math.hypot(start.carrier.re, start.carrier.im) / s;
  const M = options.points ?? (x < 15 ? 64 : x < 100 ? 128 : 256);
  const angle = (k: number) => (2 * Math.PI * k) / M;

  // What a unit of current at one point takes off the voltage at another, by their distance in the cycle.
  const kernel = new Float64Array(M).fill(dcResistance / M);
  for (let n = 1; n < M / 2; n++) {
    const z = impedanceAt(n);
    for (let k = 0; k < M; k++) kernel[k] += (2 / M) * (z.re * Math.cos(angle(n * k)) - z.im * Math.sin(angle(n * k)));
  }
  const v = new Float64Array(M);
  const e = new Float64Array(M);
  for (let j = 0; j < M; j++) {
    e[j] = bias + openCircuit * Math.cos(angle(j));
    v[j] = start.direct + start.carrier.re * Math.cos(angle(j)) - start.carrier.im * Math.sin(angle(j));
  }
  const i = new Float64Array(M);
  const g = new Float64Array(M);
  const step = new Float64Array(M);
  const matrix = new Float64Array(M * M);
  const point: DevicePoint = { current: 0, conductance: 0 };
  let converged = false;
  let iterations = 0;
  const sample = () => {
    for (let j = 0; j < M; j++) {
      detector.evaluate(v[j], point);
      i[j] = point.current;
      g[j] = point.conductance;
    }
  };
  while (!converged && iterations < 60) {
    iterations++;
    sample();
    for (let j = 0; j < M; j++) {
      let drop = 0;
      for (let m = 0; m < M; m++) {
        const k = kernel[(j - m + M) % M];
        drop += k * i[m];
        matrix[j * M + m] = k * g[m];
      }
      matrix[j * M + j] += 1;
      step[j] = e[j] - drop - v[j];
    }
    solveInPlace(matrix, step);
    let up = 0;
    let size = 0;
    for (let j = 0; j < M; j++) {
      up = Math.max(up, step[j]);
      size = Math.max(size, Math.abs(step[j]));
    }
    // No further up the exponential than three e-folds at once.
    const share = up > 3 * s ? (3 * s) / up : 1;
    for (let j = 0; j < M; j++) v[j] += share * step[j];
    converged = share === 1 && size < 1e-9 * (openCircuit + Math.abs(bias));
  }
  sample();
  const harmonics: Complex[] = [];
  for (let n = 0; n <= HARMONICS; n++) {
    let re = 0;
    let im = 0;
    for (let j = 0; j < M; j++) {
      re += (2 / M) * i[j] * Math.cos(angle(n * j));
      im -= (2 / M) * i[j] * Math.sin(angle(n * j));
    }
    harmonics.push({ re, im });
  }
  return { voltage_V: v, current_A: i, directCurrent: harmonics[0].re / 2, harmonics, converged, iterations };
}
