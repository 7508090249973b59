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
  /** Current phasors at n times the carrier, index n; index 0 is the mean. Peak amperes. */
  readonly harmonics: readonly Complex[];
  readonly converged: boolean;
  readonly iterations: number;
}

/** Multiples of the carrier kept: those beyond meet little impedance and little current. */
const HARMONICS = 20;

/**
 * Steady carrier with every harmonic: the current's pulses leave voltages at 2, 3, … times the carrier on whatever the
 * device looks into, and those shape the pulses. Newton on the voltage's harmonics against the network's impedances
 * (harmonic balance). The plain average leaves this out; it matters below a loaded Q of about 15 with strong signals.
 * @throws RangeError when the equations are singular (an impedance with negative resistance).
 */
export function carrierWaveform(options: WaveformOptions): Waveform {
  const { detector, openCircuit, impedanceAt, dcResistance, bias = 0, start } = options;
  const s = detector.slopeVoltage;
  const x = Math.hypot(start.carrier.re, start.carrier.im) / s;
  const M = options.points ?? (x < 15 ? 64 : x < 100 ? 128 : 256);
  const N = HARMONICS;
  const size = 2 * N + 1;
  const cos = Float64Array.from({ length: M }, (_, k) => Math.cos((2 * Math.PI * k) / M));
  const sin = Float64Array.from({ length: M }, (_, k) => Math.sin((2 * Math.PI * k) / M));
  const impedances = Array.from({ length: N + 1 }, (_, n) => (n === 0 ? { re: dcResistance, im: 0 } : impedanceAt(n)));

  // Unknowns: mean voltage, then real and imaginary part of each harmonic of the voltage.
  const unknown = new Float64Array(size);
  unknown[0] = start.direct;
  unknown[1] = start.carrier.re;
  unknown[2] = start.carrier.im;
  const v = new Float64Array(M);
  const i = new Float64Array(M);
  const g = new Float64Array(M);
  const point: DevicePoint = { current: 0, conductance: 0 };
  const wave = (of: Float64Array, into: Float64Array) => {
    into.fill(of[0]);
    for (let n = 1; n <= N; n++) {
      for (let j = 0; j < M; j++) {
        const k = (n * j) % M;
        into[j] += of[2 * n - 1] * cos[k] - of[2 * n] * sin[k];
      }
    }
  };
  const sample = () => {
    wave(unknown, v);
    for (let j = 0; j < M; j++) {
      detector.evaluate(v[j], point);
      i[j] = point.current;
      g[j] = point.conductance;
    }
  };
  const phasor = (of: Float64Array, n: number): Complex => {
    let re = 0;
    let im = 0;
    for (let j = 0; j < M; j++) {
      const k = (n * j) % M;
      re += of[j] * cos[k];
      im -= of[j] * sin[k];
    }
    return { re: re / M, im: im / M };
  };

  const matrix = new Float64Array(size * size);
  const step = new Float64Array(size);
  const change = new Float64Array(M);
  let converged = false;
  let iterations = 0;
  while (!converged && iterations < 60) {
    iterations++;
    sample();
    const G = Array.from({ length: 2 * N + 1 }, (_, k) => phasor(g, k));
    for (let n = 0; n <= N; n++) {
      const I = phasor(i, n);
      const z = impedances[n];
      const row = n === 0 ? 0 : 2 * n - 1;
      const twice = n === 0 ? 1 : 2;
      const drop = { re: twice * (z.re * I.re - z.im * I.im), im: twice * (z.re * I.im + z.im * I.re) };
      step[row] = (n === 0 ? bias : n === 1 ? openCircuit : 0) - drop.re - unknown[row];
      if (n > 0) step[row + 1] = -drop.im - unknown[row + 1];
      for (let m = 0; m <= N; m++) {
        // δI_n = p·δV_m + q·δV_m*, with p and q the conductance's harmonics n - m and n + m.
        const near = G[Math.abs(n - m)];
        const share = m === 0 ? twice : twice / 2;
        const p = { re: share * near.re, im: share * (n >= m ? near.im : -near.im) };
        const q = m === 0 ? { re: 0, im: 0 } : { re: share * G[n + m].re, im: share * G[n + m].im };
        const real = { re: p.re + q.re, im: p.im + q.im };
        const imaginary = { re: -(p.im - q.im), im: p.re - q.re };
        const column = m === 0 ? 0 : 2 * m - 1;
        const at = row * size + column;
        matrix[at] = z.re * real.re - z.im * real.im;
        if (m > 0) matrix[at + 1] = z.re * imaginary.re - z.im * imaginary.im;
        if (n > 0) {
          matrix[at + size] = z.re * real.im + z.im * real.re;
          if (m > 0) matrix[at + size + 1] = z.re * imaginary.im + z.im * imaginary.re;
        }
      }
    }
    for (let k = 0; k < size; k++) matrix[k * size + k] += 1;
    solveInPlace(matrix, step);
    wave(step, change);
    let up = 0;
    let largest = 0;
    for (let j = 0; j < M; j++) {
      up = Math.max(up, change[j]);
      largest = Math.max(largest, Math.abs(change[j]));
    }
    // No further up the exponential than three e-folds at once.
    const share = up > 3 * s ? (3 * s) / up : 1;
    for (let k = 0; k < size; k++) unknown[k] += share * step[k];
    converged = share === 1 && largest < 1e-9 * (openCircuit + Math.abs(bias));
  }
  sample();
  const harmonics = Array.from({ length: N + 1 }, (_, n) => {
    const I = phasor(i, n);
    return n === 0 ? I : { re: 2 * I.re, im: 2 * I.im };
  });
  return { voltage_V: v, current_A: i, directCurrent: harmonics[0].re, harmonics, converged, iterations };
}
