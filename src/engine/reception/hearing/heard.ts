import { type Warning, warning } from '../../facts/warning.ts';
import type { Decibels, Hertz, Ratio } from '../../units/quantities.ts';
import { intelligibilityAmong, MASKING } from './intelligibility.ts';
import { PEAKS, type Programme, programmeShares, USUAL_BANDWIDTH } from './programme.ts';
import { type Room, roomNoise, soundLevelA } from './room.ts';
import { powerSum, THIRD_OCTAVES } from './third-octaves.ts';
import { hearingThreshold } from './threshold.ts';
import type { HeardBand, Loudness } from './types.ts';

export interface HeardInput {
  /** dB SPL at the ear of a tone of this frequency that carries the whole programme's rms modulation. */
  readonly soundPressureLevelAt: (frequency: Hertz) => Decibels;
  /** Default speech. */
  readonly programme?: Programme;
  /** Default a quiet room. */
  readonly room?: Room;
  /** Default phones. */
  readonly listening?: 'phones' | 'loudspeaker';
  /** Default 2. */
  readonly ears?: 1 | 2;
  /** Threshold of the listener over that of the young, healthy ear of the standards, dB; default 0. */
  readonly hearingLoss?: Decibels;
  /** Highest audio frequency sent; default 4.5 kHz. */
  readonly bandwidth?: Hertz;
}

export interface Heard {
  /** Long-term level of the programme at the ear, and the same A-weighted. */
  readonly spl: Decibels;
  readonly splA: Decibels;
  /** How far it could be turned down until its loud moments are just lost, in the band where it stands out most. */
  readonly margin: Decibels;
  /** The same with no noise in the room. */
  readonly marginInSilence: Decibels;
  readonly loudness: Loudness;
  readonly room: Room;
  /** Speech intelligibility index, 0..1, with no other station; undefined for music and tones. */
  readonly intelligibility?: Ratio;
  readonly bands: readonly HeardBand[];
  readonly warnings: readonly Warning[];
}

/**
 * Where the words change, dB over the threshold in silence. At 0 the loud moments of speech are just detected, some 10 dB
 * up half the words are understood, ordinary talk (62 dB SPL) is at 52 to 60. Common practice, no source, but for those anchors.
 */
const IN_SILENCE = { faint: 0, quiet: 15, comfortable: 35, loud: 67 } as const;
/** Over noise less is enough: loudness recovers quickly above a masking sound. Common practice, no source. */
const OVER_NOISE = { faint: 0, quiet: 10, comfortable: 22 } as const;
/** dB(A) that anybody calls loud. Common practice, no source. */
const LOUD_ANYWHERE: Decibels = 80;
/** Where exposure for a working day starts to harm (common occupational limit). */
const HARMFUL: Decibels = 85;

/** Worked out once: a dial asks for thousands of answers. */
const thresholdsFor = (how: 'phones' | 'free field') => ({
  1: THIRD_OCTAVES.map((f) => hearingThreshold(f, how, 1)),
  2: THIRD_OCTAVES.map((f) => hearingThreshold(f, how, 2)),
});
const THRESHOLDS = { phones: thresholdsFor('phones'), loudspeaker: thresholdsFor('free field') };

/** How a programme is heard, band by band against the ear's threshold and the room. @throws RangeError for a level of NaN. */
export function heard(input: HeardInput): Heard {
  const { programme = 'speech', room = 'quiet room', listening = 'phones', ears = 2 } = input;
  const { bandwidth = USUAL_BANDWIDTH, hearingLoss = 0 } = input;
  const shares = programmeShares(programme);
  const noise = roomNoise(room, listening);
  const thresholds = THRESHOLDS[listening][ears];
  const peaks = PEAKS[programme];
  let marginInSilence = Number.NEGATIVE_INFINITY;
  const bands = THIRD_OCTAVES.map((frequency, i): HeardBand => {
    const share = frequency <= bandwidth ? shares[i] : Number.NEGATIVE_INFINITY;
    const level = share === Number.NEGATIVE_INFINITY ? share : input.soundPressureLevelAt(frequency) + share;
    if (Number.isNaN(level)) throw new RangeError(`the sound pressure level at ${frequency} Hz is not a number`);
    const threshold = thresholds[i] + hearingLoss;
    const silent = level + peaks - threshold;
    marginInSilence = Math.max(marginInSilence, silent);
    return {
      frequency,
      level,
      threshold,
      noise: noise[i],
      margin: Math.min(silent, level + peaks - (noise[i] - MASKING)),
    };
  });
  const spl = powerSum(bands.map((b) => b.level));
  const splA = soundLevelA(bands.map((b) => b.level));
  const margin = Math.max(...bands.map((b) => b.margin));
  const loudness = loudnessOf(marginInSilence, margin, splA);
  const speech = programme === 'speech' || programme === 'mixed';
  return {
    spl,
    splA,
    margin,
    marginInSilence,
    loudness,
    room,
    intelligibility: speech ? intelligibilityAmong(bands, []) : undefined,
    bands,
    warnings: splA >= HARMFUL ? [warning('reception.harmful-level')] : [],
  };
}

/** How loud a programme is from what stands over the threshold in silence and over the room, and its level in dB(A). */
export function loudnessOf(inSilence: Decibels, overNoise: Decibels, splA: Decibels): Loudness {
  if (!(overNoise >= OVER_NOISE.faint)) return 'not heard';
  if (overNoise < OVER_NOISE.quiet || inSilence < IN_SILENCE.quiet) return 'faint';
  if (overNoise < OVER_NOISE.comfortable || inSilence < IN_SILENCE.comfortable) return 'quiet';
  return inSilence >= IN_SILENCE.loud || splA >= LOUD_ANYWHERE ? 'loud' : 'comfortable';
}
