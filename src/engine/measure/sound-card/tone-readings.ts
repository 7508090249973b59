import { type Complex, divide, magnitude, multiply, phase, polar, scale, subtract } from '../../numerics/complex.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import type { Hertz, Seconds } from '../../units/quantities.ts';
import { MARK, markPhase, markSize, type TonePlan } from './tone-plan.ts';

/** What was recorded while a plan was played. Full scale is 1. */
export interface CardRecording {
  readonly sampleRate: Hertz;
  /** The input across what is measured. */
  readonly input: ArrayLike<number>;
  /** The input at the output itself; left out where there is one input only: its delay then has to stay. */
  readonly reference?: ArrayLike<number>;
}

/** One tone as it came in: over the reference, or over what was played, at the same moment. */
export interface ToneReading {
  readonly frequency: Hertz;
  readonly transfer: Complex;
  /** Of each part of it: one standard deviation of the mean, from how much parts of the tone differ. */
  readonly standardError: number;
}

/** Why a recording cannot be trusted. */
export type CardFault = 'no-signal' | 'delay-moved' | 'clipped' | 'distorted';

/** What a recording says of the tones of a plan. */
export interface ToneReadings {
  readonly readings: readonly ToneReading[];
  /** Of what came in behind what was played, found by the mark. */
  readonly delay: Seconds;
  readonly faults: readonly CardFault[];
}

/** The longest delay that is looked for. */
const LONGEST: Seconds = 1;
/** A delay is found to within this, whatever is connected: the mark is about as wide. */
const MOVED: Seconds = 3e-4;
/** The mark has to stand so far above all else. */
const CLEAR = 4;
/** Samples between the delays tried first: far less than the mark's own width of about 0.4 ms. */
const COARSE: Seconds = 1.2e-4;
/** Of full scale: what clips, reaches it again and again. */
const FULL = 0.985;
const CLIPPED_SAMPLES = 4;
/** Of the tone: a third harmonic above this is distortion, −60 dB. */
const THIRD = 1e-3;
/** And it has to stand so many standard errors above the noise. */
const NOISE_REACH = 5;
/** Parts of a tone that are compared with each other. */
const PARTS = 6;
/** Degrees of freedom of each standard error: cosine and sine of all parts about their means. */
export const TONE_DEGREES = 2 * (PARTS - 1);
/** Share of a tone that is left for what its start set going to die away. */
const SETTLING = 0.3;

/**
 * When the mark came in.
 * @param samples recorded from the moment the playing began
 * @param sampleRate Hz
 * @returns the delay; undefined where no mark is heard within a second
 */
export function findDelay(samples: ArrayLike<number>, sampleRate: Hertz): Seconds | undefined {
  const n = Math.round(MARK.duration * sampleRate);
  const [c, s] = [new Float64Array(n), new Float64Array(n)];
  for (let i = 0; i < n; i++) {
    const t = i / sampleRate;
    c[i] = markSize(t) * Math.cos(markPhase(t));
    s[i] = markSize(t) * Math.sin(markPhase(t));
  }
  // In quadrature: what the network does to the phase moves no peak.
  const heardAt = (lag: number): number => {
    let [a, b] = [0, 0];
    for (let i = 0; i < n; i++) {
      const x = samples[lag + i];
      a += x * c[i];
      b += x * s[i];
    }
    return Math.hypot(a, b);
  };
  const last = Math.min(samples.length - n, Math.round(LONGEST * sampleRate));
  const step = Math.max(1, Math.round(COARSE * sampleRate));
  let [best, most, sum, count] = [0, -1, 0, 0];
  for (let lag = 0; lag <= last; lag += step) {
    const heard = heardAt(lag);
    sum += heard;
    count++;
    if (heard > most) [best, most] = [lag, heard];
  }
  if (!(most > (CLEAR * sum) / count)) return undefined;
  let fine = best;
  for (let lag = Math.max(0, best - step); lag <= Math.min(last, best + step); lag++) {
    const heard = heardAt(lag);
    if (heard > most) [fine, most] = [lag, heard];
  }
  return fine / sampleRate;
}

/** Cosine and sine of a tone in samples from one place on, with a constant, by least squares under a Hann window. */
function phasorOf(samples: ArrayLike<number>, from: number, n: number, cyclesPerSample: number): Complex {
  // The three are all but orthogonal under the window: their products settle them as well as a factorisation.
  let [w1, wc, ws, cc, cs, ss, c, s, sum] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = Math.sin((Math.PI * (i + 0.5)) / n) ** 2;
    const angle = 2 * Math.PI * cyclesPerSample * (from + i);
    const [cosine, sine, x] = [Math.cos(angle), Math.sin(angle), samples[from + i]];
    w1 += weight;
    wc += weight * cosine;
    ws += weight * sine;
    cc += weight * cosine * cosine;
    cs += weight * cosine * sine;
    ss += weight * sine * sine;
    c += weight * cosine * x;
    s += weight * sine * x;
    sum += weight * x;
  }
  const found = Float64Array.of(c, s, sum);
  solveInPlace(Float64Array.of(cc, cs, wc, cs, ss, ws, wc, ws, w1), found);
  return { re: found[0], im: -found[1] };
}

const mean = (values: readonly Complex[]): Complex =>
  scale(
    values.reduce((sum, one) => ({ re: sum.re + one.re, im: sum.im + one.im })),
    1 / values.length,
  );

/** Clocks of input and output that differ turn the phase from part to part: it is turned back about the middle. */
function steadied(parts: readonly Complex[]): readonly Complex[] {
  const turns = parts.slice(1).map((part, i) => phase(divide(part, parts[i])));
  const turn = turns.reduce((sum, one) => sum + one, 0) / turns.length;
  const middle = (parts.length - 1) / 2;
  return parts.map((part, i) => multiply(part, polar(1, -turn * (i - middle))));
}

/**
 * What a recording says of every tone of a plan, by synchronous detection.
 * @param plan that was played from the first sample of the recording on
 * @param recording of the input, and of the output itself where there are two inputs
 * @param known delay of an earlier recording; left out: found by the mark. With one input all recordings that are
 *   compared take that of the first, and one whose mark came in 0.3 ms or more from it has the fault `delay-moved`
 * @returns transfers with their standard errors, the delay, and what makes the recording doubtful, the worst first
 */
export function toneReadings(plan: TonePlan, recording: CardRecording, known?: Seconds): ToneReadings {
  const { sampleRate, input, reference } = recording;
  const heard = reference ?? input;
  const found = findDelay(heard, sampleRate);
  if (found === undefined) return { readings: [], delay: 0, faults: ['no-signal'] };
  const delay = known ?? found;
  let isDistorted = false;
  const readings = plan.tones.flatMap(({ frequency, start, duration }): ToneReading[] => {
    const cycles = frequency / sampleRate;
    const first = Math.ceil((delay + start + SETTLING * duration) * sampleRate);
    const n = Math.floor((duration * (1 - SETTLING) * sampleRate) / PARTS);
    if (!(cycles < 0.48) || first + PARTS * n > input.length) return [];
    const partsOf = (samples: ArrayLike<number>) =>
      Array.from({ length: PARTS }, (_, k) => phasorOf(samples, first + k * n, n, cycles));
    const of = partsOf(input);
    // Against what was played: its sine began at the tone's start, a delay ago.
    const began = polar(1, -2 * Math.PI * frequency * (delay + start) - Math.PI / 2);
    const over = reference ? partsOf(reference) : undefined;
    const transfers = over ? of.map((one, k) => divide(one, over[k])) : steadied(of).map((one) => divide(one, began));
    const transfer = mean(transfers);
    const squares = transfers.reduce((sum, one) => sum + magnitude(subtract(one, transfer)) ** 2, 0);
    const standardError = Math.sqrt(squares / (2 * PARTS * (PARTS - 1)));
    if (3 * cycles < 0.45) {
      // Over the whole tone: in a part of few cycles the tone itself would be seen at three times its frequency.
      const [tone, third] = [1, 3].map((order) => magnitude(phasorOf(heard, first, PARTS * n, order * cycles)));
      const noise = NOISE_REACH * (standardError / magnitude(transfer));
      isDistorted ||= third > Math.max(THIRD, noise) * tone;
    }
    return [{ frequency, transfer, standardError }];
  });
  const isClipped = [input, heard].some((samples) => clips(samples));
  const faults: CardFault[] = [
    ...(Math.abs(found - delay) > MOVED ? (['delay-moved'] as const) : []),
    ...(isClipped ? (['clipped'] as const) : isDistorted ? (['distorted'] as const) : []),
  ];
  return { readings, delay, faults };
}

function clips(samples: ArrayLike<number>): boolean {
  let count = 0;
  for (let i = 0; i < samples.length; i++) if (Math.abs(samples[i]) >= FULL) count++;
  return count >= CLIPPED_SAMPLES;
}
