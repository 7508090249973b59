import { solveInPlace } from '../../numerics/linear-solve.ts';
import type { Hertz, Radians, Seconds } from '../../units/quantities.ts';

export interface Tone {
  readonly frequency: Hertz;
  /** Peak, in the unit of the samples. */
  readonly amplitude: number;
  /** Of a cosine at time 0. */
  readonly phase: Radians;
}

export interface ToneOptions {
  /** Time of the first sample. Default 0. */
  readonly start?: Seconds;
  /** Length of the mean each sample is, whose droop is made good. Default 0: points. */
  readonly mean?: Seconds;
  /** Other tones to allow for, Hz, so that they are not taken for these. */
  readonly also?: readonly Hertz[];
}

/**
 * The mean and the tones in evenly spaced samples. Where every tone has a whole number of periods in the window, plain
 * Fourier sums; otherwise all of them are fitted together by least squares under a Hann window.
 * @param interval between samples, s.
 */
export function tonesOf(
  samples: Float64Array,
  interval: Seconds,
  frequencies: readonly Hertz[],
  { start = 0, mean = 0, also = [] }: ToneOptions = {},
): { mean: number; tones: Tone[] } {
  const n = samples.length;
  if (!(n > 1 && interval > 0)) throw new RangeError('tones need at least two samples and the time between them');
  const span = n * interval;
  const distinct = [...new Set([...frequencies, ...also])].filter((f) => f > 0);
  for (const f of distinct) {
    if (!(f < 0.5 / interval)) throw new RangeError(`a tone of ${f} Hz is too high for samples ${interval} s apart`);
  }
  const whole = distinct.every((f) => Math.abs(f * span - Math.round(f * span)) < 1e-6 * Math.max(1, f * span));
  const droop = (f: number) => {
    const x = Math.PI * f * mean;
    return x === 0 ? 1 : x / Math.sin(x);
  };
  const tone = (f: number, re: number, im: number): Tone => ({
    frequency: f,
    amplitude: Math.hypot(re, im) * droop(f),
    phase: Math.atan2(im, re),
  });
  if (whole) {
    let total = 0;
    for (let i = 0; i < n; i++) total += samples[i];
    return { mean: total / n, tones: frequencies.map((f) => tone(f, ...fourier(samples, interval, start, f))) };
  }
  const fit = leastSquares(samples, interval, start, distinct);
  return {
    mean: fit[0],
    tones: frequencies.map((f) => {
      const k = distinct.indexOf(f);
      return k < 0 ? tone(f, fit[0], 0) : tone(f, fit[1 + 2 * k], fit[2 + 2 * k]);
    }),
  };
}

/** (2/n)·Σ x·exp(−j2πft) by a rotating phasor, set right every 512 samples. */
function fourier(samples: Float64Array, dt: number, start: number, f: number): [number, number] {
  const w = 2 * Math.PI * f;
  const cr = Math.cos(w * dt);
  const ci = -Math.sin(w * dt);
  let re = 0;
  let im = 0;
  let x = 1;
  let y = 0;
  for (let i = 0; i < samples.length; i++) {
    if (i % 512 === 0) {
      x = Math.cos(w * (start + i * dt));
      y = -Math.sin(w * (start + i * dt));
    }
    re += samples[i] * x;
    im += samples[i] * y;
    const t = x * cr - y * ci;
    y = x * ci + y * cr;
    x = t;
  }
  return [(2 * re) / samples.length, (2 * im) / samples.length];
}

/** Mean, then re and im of each tone: x ≈ mean + Σ re·cos(wt) − im·sin(wt). */
function leastSquares(samples: Float64Array, dt: number, start: number, frequencies: readonly number[]): Float64Array {
  const n = samples.length;
  const m = 1 + 2 * frequencies.length;
  const gram = new Float64Array(m * m);
  const right = new Float64Array(m);
  const row = new Float64Array(m);
  for (let i = 0; i < n; i++) {
    const t = start + i * dt;
    const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / n);
    row[0] = 1;
    frequencies.forEach((f, k) => {
      row[1 + 2 * k] = Math.cos(2 * Math.PI * f * t);
      row[2 + 2 * k] = -Math.sin(2 * Math.PI * f * t);
    });
    for (let a = 0; a < m; a++) {
      right[a] += weight * row[a] * samples[i];
      for (let b = 0; b <= a; b++) gram[a * m + b] += weight * row[a] * row[b];
    }
  }
  for (let a = 0; a < m; a++) {
    // Keeps tones too close to be told apart in this window from running away.
    gram[a * m + a] *= 1 + 1e-9;
    for (let b = 0; b < a; b++) gram[b * m + a] = gram[a * m + b];
  }
  solveInPlace(gram, right);
  return right;
}
