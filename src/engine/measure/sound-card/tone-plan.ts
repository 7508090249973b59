import type { Hertz, Seconds } from '../../units/quantities.ts';

/** One tone of a measurement: when it is full, after its rise and before its fall. */
export interface PlayedTone {
  readonly frequency: Hertz;
  readonly start: Seconds;
  readonly duration: Seconds;
}

/** What a sound card plays to measure an impedance: a short sweep by which its delay is found, then steady tones. */
export interface TonePlan {
  readonly tones: readonly PlayedTone[];
  readonly duration: Seconds;
}

/** Each tone lasts so many cycles, and no shorter than this, so that what it starts in the load has died away. */
const [LEAST_CYCLES, LEAST_TIME] = [20, 0.24];
/** Rise and fall of a tone: a click would be loud in phones. */
const RAMP: Seconds = 0.012;
const PAUSE: Seconds = 0.03;
/** The sweep by which the delay is found. */
export const MARK = { from: 400 as Hertz, to: 3200 as Hertz, duration: 0.15 as Seconds } as const;

/** Hz, about a third of an octave apart; below 1 kHz none is a harmonic of 50 or 60 Hz. */
const THIRDS = [
  21, 26, 33, 42, 53, 66, 83, 106, 134, 168, 213, 267, 336, 424, 534, 673, 848, 1000, 1347, 1697, 2138, 2694, 3394,
  4277, 5389, 6790, 8555, 10780, 13580, 17110, 20000,
];

/**
 * Tones for a sweep of impedance, 20 Hz to 20 kHz in steps of about a third of an octave.
 * @param frequencies Hz, rising; default the usual ones, 1 kHz among them
 * @returns when each is played; the first begins after the mark
 */
export function tonePlan(frequencies: readonly Hertz[] = THIRDS): TonePlan {
  let at = MARK.duration + 0.2;
  const tones = frequencies.map((frequency) => {
    const duration = Math.max(LEAST_TIME, LEAST_CYCLES / frequency);
    const tone = { frequency, start: at + RAMP, duration };
    at += duration + 2 * RAMP + PAUSE;
    return tone;
  });
  return { tones, duration: at + 0.1 };
}

/** Phase of the mark's sweep at a time from its beginning, radians. */
export const markPhase = (t: Seconds): number =>
  2 * Math.PI * (MARK.from * t + ((MARK.to - MARK.from) * t * t) / (2 * MARK.duration));
/** Size of the mark at a time from its beginning, at most 1. */
export const markSize = (t: Seconds): number =>
  t > 0 && t < MARK.duration ? Math.sin((Math.PI * t) / MARK.duration) ** 2 : 0;

/**
 * What is played at a moment.
 * @param plan of the measurement
 * @param t from the beginning
 * @returns between −1 and 1
 */
export function soundAt({ tones }: TonePlan, t: Seconds): number {
  if (t < MARK.duration) return markSize(t) * Math.sin(markPhase(t));
  const tone = tones.find(({ start, duration }) => t > start - RAMP && t < start + duration + RAMP);
  if (!tone) return 0;
  const into = t - tone.start;
  const fromEnd = Math.min(into + RAMP, tone.duration + RAMP - into) / RAMP;
  const size = fromEnd >= 1 ? 1 : Math.sin((Math.PI / 2) * fromEnd) ** 2;
  return size * Math.sin(2 * Math.PI * tone.frequency * into);
}

/**
 * Samples of all that is played.
 * @param plan of the measurement
 * @param sampleRate Hz
 * @param amplitude of full scale; default a quarter, which few inputs clip
 * @returns from the beginning to the end of the plan
 */
export function playedSamples(plan: TonePlan, sampleRate: Hertz, amplitude = 0.25): Float32Array {
  const samples = new Float32Array(Math.ceil(plan.duration * sampleRate));
  return samples.map((_, i) => amplitude * soundAt(plan, i / sampleRate));
}
