import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

export interface DecayFit {
  /** Of the damped oscillation, Hz. */
  readonly frequency: Fitted;
  readonly q: Fitted;
  /** Of the samples about the fit (one standard deviation), in their unit. */
  readonly scatter: number;
}

/** Samples that a start is sought in: the oscillation is strongest there. */
const FIRST_SAMPLES = 4096;

/** Frequency of the highest bin of a periodogram on a grid of half a bin, cycles a sample. */
function strongest(v: Float64Array): number {
  const n = v.length;
  let best = 0;
  let highest = -1;
  for (let k = 1; k < n; k++) {
    // Goertzel's recursion.
    const c = 2 * Math.cos((Math.PI * k) / n);
    let [a, b] = [0, 0];
    for (let i = 0; i < n; i++) [a, b] = [v[i] + c * a - b, a];
    const power = a * a + b * b - c * a * b;
    if (power > highest) [highest, best] = [power, k / (2 * n)];
  }
  return best;
}

/** Amplitudes of cosine and sine and a constant that follow the samples best, frequency and decay (per sample) given. */
function amplitudesAt(v: Float64Array, f: number, alpha: number) {
  const rows = new Float64Array(3 * v.length);
  for (let i = 0; i < v.length; i++) {
    const e = Math.exp(-alpha * i);
    rows[3 * i] = e * Math.cos(2 * Math.PI * f * i);
    rows[3 * i + 1] = e * Math.sin(2 * Math.PI * f * i);
    rows[3 * i + 2] = 1;
  }
  const { x, residuals } = linearLeastSquares(rows, v, 3);
  return { x, sum: residuals.reduce((s, r) => s + r * r, 0) };
}

interface Oscillation {
  /** Cycles a sample, and the decay a sample. */
  readonly f: number;
  readonly alpha: number;
}

function startOf(v: Float64Array): Oscillation {
  const tail = v.subarray(Math.floor(v.length * 0.8));
  const mean = tail.reduce((s, x) => s + x, 0) / tail.length;
  const around = strongest(v.map((x) => x - mean));
  let best: Oscillation & { sum: number } = { f: around, alpha: 1 / v.length, sum: Number.POSITIVE_INFINITY };
  for (let lifetimes = 0.2; lifetimes < v.length / 2; lifetimes *= 1.8)
    for (const bins of [-0.5, 0, 0.5]) {
      const f = around + bins / (2 * v.length);
      const alpha = lifetimes / v.length;
      if (!(f > 0)) continue;
      const { sum } = amplitudesAt(v, f, alpha);
      if (sum < best.sum) best = { f, alpha, sum };
    }
  return best;
}

/** One fit of all five unknowns about a start. */
function fitFrom(v: Float64Array, { f, alpha }: Oscillation) {
  const Q = (Math.PI * f) / alpha;
  const { x } = amplitudesAt(v, f, alpha);
  const size = Math.hypot(x[0], x[1]) || 1;
  const frequencyAt = (detuning: number) => f * (1 + detuning / Q);
  const fit = leastSquares(
    ([a, b, detuning, lnQ, constant]) => {
      const frequency = frequencyAt(detuning);
      const decay = (Math.PI * frequency) / Math.exp(lnQ);
      const possible = frequency > 0 && frequency < 0.5;
      return v.map((sample, i) => {
        if (!possible) return Number.NaN;
        const phase = 2 * Math.PI * frequency * i;
        return sample - Math.exp(-decay * i) * (a * Math.cos(phase) + b * Math.sin(phase)) - constant;
      });
    },
    [x[0], x[1], 0, Math.log(Q), x[2]],
    { scales: [size, size, 1, 1, size] },
  );
  return { fit, f: frequencyAt(fit.x[2]), alpha: (Math.PI * frequencyAt(fit.x[2])) / Math.exp(fit.x[3]), f0: f, Q };
}

/**
 * Frequency and Q of an oscillation that dies away: v against e^(−πf0t/Q)(a·cos 2πf0t + b·sin 2πf0t) + c, t = 0 at the
 * first sample.
 * @param samples at least 16, in any unit
 * @param sampleRate Hz
 * @returns frequency (Hz) and Q, each with its standard error and range
 * @throws UnfitReadings
 */
export function fitDecay(samples: ArrayLike<number>, sampleRate: number): DecayFit {
  const v = Float64Array.from(samples);
  const first = v.subarray(0, FIRST_SAMPLES);
  if (first.every((x) => x === first[0])) throw new UnfitReadings({ code: 'decay.no-ringing' });
  const beginning = fitFrom(first, startOf(first));
  const { fit, f, f0, Q } = v.length > first.length ? fitFrom(v, beginning) : beginning;
  const amplitude = Math.hypot(fit.x[0], fit.x[1]);
  const scatter = Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom);
  const sAmplitude = Math.sqrt(fit.covariance[0] + fit.covariance[6]);
  // Noise alone has some best oscillation too; its amplitude is within a few of its own errors.
  if (!(amplitude > 4 * sAmplitude)) throw new UnfitReadings({ code: 'decay.no-ringing' });
  const reach = reachOf(fit.degreesOfFreedom);
  return {
    frequency: fitted(f * sampleRate, (f0 / Q) * Math.sqrt(fit.covariance[12]) * sampleRate, reach),
    q: fittedLogarithm(fit.x[3], Math.sqrt(fit.covariance[18]), reach),
    scatter,
  };
}
