import { fromBase64Url, toBase64Url } from '../../../engine/set/base64-url.ts';
import type { Hertz, Seconds } from '../../../engine/units/quantities.ts';
import type { WaveProgramme } from './wave-programme.ts';

export type RecordedProgramme = Extract<WaveProgramme, { kind: 'recording' }>;

/** Samples a second that are kept: a channel of 9 or 10 kHz has room for 5 kHz of audio. */
export const RECORDING_RATE: Hertz = 10_000;
/** The longest that is kept. */
export const LONGEST_RECORDING: Seconds = 60;

/** Differences of 4 bits whose step follows the sound (adaptive differential coding). Steps and
 * changes are those of the IMA's recommended practices of 1992, from memory. */
const STEPS = Float64Array.from({ length: 89 }, (_, k) => (7 * 1.1 ** k) / 32_768);
const CHANGES = [-1, -1, -1, -1, 2, 4, 6, 8];

/** One side of the coding: both keep what was heard so far and the step alike. */
function adapted() {
  let heard = 0;
  let at = 0;
  return {
    /** The code whose value comes nearest. */
    codeFor(sample: number): number {
      const size = Math.min(7, Math.floor((4 * Math.abs(sample - heard)) / STEPS[at]));
      return sample < heard ? size | 8 : size;
    },
    take(code: number): number {
      const size = code & 7;
      const difference = ((size + 0.5) / 4) * STEPS[at];
      heard = Math.min(1, Math.max(-1, heard + (code & 8 ? -difference : difference)));
      at = Math.min(STEPS.length - 1, Math.max(0, at + CHANGES[size]));
      return heard;
    },
  };
}

/** Samples from −1 to 1 as text, two to a byte. */
export function samplesToText(samples: Float32Array): string {
  const coder = adapted();
  const bytes = new Uint8Array(Math.ceil(samples.length / 2));
  for (let i = 0; i < samples.length; i++) {
    const code = coder.codeFor(samples[i]);
    coder.take(code);
    bytes[i >> 1] |= i & 1 ? code : code << 4;
  }
  return toBase64Url(bytes);
}

/** @returns undefined for what is no such text. */
export function samplesFromText(text: string): Float32Array | undefined {
  const bytes = fromBase64Url(text);
  if (!bytes || bytes.length === 0) return undefined;
  const coder = adapted();
  const samples = new Float32Array(2 * bytes.length);
  for (let i = 0; i < samples.length; i++) samples[i] = coder.take(i & 1 ? bytes[i >> 1] & 15 : bytes[i >> 1] >> 4);
  return samples;
}

/** The recording kept in a description. @returns undefined where there is none. */
export function recordingOf(written: unknown): RecordedProgramme | undefined {
  const kept = (written as { recording?: Record<string, unknown> } | null | undefined)?.recording;
  if (typeof kept !== 'object' || kept === null) return undefined;
  const { name, rate, samples: text } = kept;
  if (typeof text !== 'string' || typeof rate !== 'number' || !(rate >= 4000 && rate <= 48_000)) return undefined;
  const samples = samplesFromText(text);
  if (!samples || samples.length < rate / 20) return undefined;
  return { kind: 'recording', name: String(name).slice(0, 60), samples, rate };
}

/** The description with this recording in it. */
export function withRecording<T>(written: T, { name, rate, samples }: RecordedProgramme): T {
  return { ...written, recording: { name: name.slice(0, 60), rate, samples: samplesToText(samples) } };
}

/** Quieter than this share of the loudest moment is silence before the first word (−40 dB). */
const SILENCE = 0.01;
/** Kept before the first sound and after the last, s. */
const LEAD: Seconds = 0.05;
/** Stretch over which loudness is judged, s. */
const WINDOW: Seconds = 0.02;

/** Loudness of each stretch of a recording: root of the mean square. */
function loudness(samples: Float32Array, rate: Hertz): number[] {
  const w = Math.max(1, Math.round(WINDOW * rate));
  return Array.from({ length: Math.ceil(samples.length / w) }, (_, k) => {
    const part = samples.subarray(k * w, (k + 1) * w);
    return Math.sqrt(part.reduce((sum, v) => sum + v * v, 0) / part.length);
  });
}

const greatest = (levels: readonly number[]): number => levels.reduce((a, b) => Math.max(a, b), 0);

/** A recording from its first sound to the last of the minute from there, at full level. @returns undefined for silence. */
export function trimmed(samples: Float32Array, rate: Hertz): Float32Array | undefined {
  const levels = loudness(samples, rate);
  const least = SILENCE * greatest(levels);
  if (!(least > 1e-8)) return undefined;
  const first = levels.findIndex((v) => v > least);
  const last = first + levels.slice(first, first + LONGEST_RECORDING / WINDOW).findLastIndex((v) => v > least);
  const from = Math.max(0, Math.round((first * WINDOW - LEAD) * rate));
  const until = Math.min(
    samples.length,
    Math.round(((last + 1) * WINDOW + LEAD) * rate),
    from + LONGEST_RECORDING * rate,
  );
  const out = samples.slice(from, until);
  let peak = 0;
  for (const v of out) peak = Math.max(peak, Math.abs(v));
  // Faded at both ends, so that nothing clicks.
  const fade = Math.min(Math.round(0.01 * rate), out.length >> 3);
  for (let i = 0; i < out.length; i++) out[i] *= Math.min(1, i / fade, (out.length - 1 - i) / fade) / peak;
  return out;
}

/** The middle of the loudest stretch: a moment worth looking at closely, s. */
export function loudestMoment({ samples, rate }: RecordedProgramme): Seconds {
  const levels = loudness(samples, rate);
  return (levels.indexOf(greatest(levels)) + 0.5) * WINDOW;
}

export const secondsOf = ({ samples, rate }: RecordedProgramme): Seconds => samples.length / rate;
