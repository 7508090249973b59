import type { Decibels, Hertz } from '../../units/quantities.ts';
import { bandWidth, powerSum, THIRD_OCTAVES } from './third-octaves.ts';

export type Programme = 'speech' | 'music' | 'mixed' | 'tone';

/** ANSI S3.5-1997 Table 3, normal vocal effort, dB re 20 µPa in 1 Hz, 160 Hz to 8 kHz. */
const SPEECH_160_UP = [
  32.41, 34.48, 34.75, 33.98, 34.59, 34.27, 32.06, 28.3, 25.01, 23, 20.15, 17.32, 13.18, 11.55, 9.33, 5.31, 2.59, 1.13,
];
/** Below the standard's range: of the total, dB, at 100 and 125 Hz (from memory of Byrne and others, 1994). */
const SPEECH_BELOW = [-15.6, -12.3];
/** IEC 60268-1:1985 Table II, 100 Hz to 8 kHz: the mean of many kinds of programme, which stands for music here. */
const MUSIC = [-0.9, -0.5, -0.2, -0.1, 0, 0, 0, 0, 0, 0, -0.1, -0.3, -0.6, -1, -1.6, -2.5, -3.7, -5.1, -7, -9.4];

const shares = (levels: readonly Decibels[]): readonly Decibels[] => {
  const total = powerSum(levels);
  return levels.map((level) => level - total);
};
const speechBands = SPEECH_160_UP.map((level, i) => level + 10 * Math.log10(bandWidth(THIRD_OCTAVES[i + 2])));
const speechTotal = powerSum(speechBands);
const SPEECH = shares([...SPEECH_BELOW.map((level) => speechTotal + level), ...speechBands]);

const SHARES: Record<Programme, readonly Decibels[]> = {
  speech: SPEECH,
  music: shares(MUSIC),
  mixed: shares(shares(MUSIC).map((level, i) => powerSum([level, SPEECH[i]]))),
  tone: THIRD_OCTAVES.map((f) => (f === 1000 ? 0 : Number.NEGATIVE_INFINITY)),
};

/** Share of each one-third octave of `THIRD_OCTAVES` in the power of the programme, dB of the whole; they sum to 0 dB. */
export const programmeShares = (programme: Programme): readonly Decibels[] => SHARES[programme];

/** How far the loud moments (an eighth of a second) stand above the long-term mean. From memory: 8 to 12 dB for speech. */
export const PEAKS: Record<Programme, Decibels> = { speech: 10, music: 8, mixed: 9, tone: 0 };

/** Highest audio frequency usual transmitters send on 9 kHz channels. Common practice, no source. */
export const USUAL_BANDWIDTH: Hertz = 4500;
