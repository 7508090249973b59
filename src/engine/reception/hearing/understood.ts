import type { Decibels } from '../../units/quantities.ts';
import { BANDS } from './bands.ts';

/** ANSI S3.5-1997 Table 3: importance of the one-third octaves from 160 Hz to 8 kHz for understanding speech; sum 1. */
const IMPORTANCE = [
  0.0083, 0.0095, 0.015, 0.0289, 0.044, 0.0578, 0.0653, 0.0711, 0.0818, 0.0844, 0.0882, 0.0898, 0.0868, 0.0844, 0.0771,
  0.0527, 0.0364, 0.0185,
];
const FIRST = BANDS.indexOf(160);

/**
 * How much of speech is there to be understood, 0 to 1: the speech intelligibility index of ANSI S3.5-1997 in one-third
 * octaves without its spread of masking and level distortion. Speech in a band counts from 15 dB below its mean to 15 above.
 * @param levels speech, @param disturbance the greater of noise and what stands for the threshold, by `BANDS`.
 */
export const understood = (levels: readonly Decibels[], disturbance: readonly Decibels[]): number =>
  IMPORTANCE.reduce(
    (sum, weight, i) => sum + weight * Math.min(1, Math.max(0, (levels[FIRST + i] - disturbance[FIRST + i] + 15) / 30)),
    0,
  );

/** In words. Above 0.75 is called good in common use; at 0.15 half of easy words are caught, which fixes the lowest limit. */
export const understoodWords = (index: number): string =>
  index > 0.75
    ? 'every word is understood'
    : index > 0.4
      ? 'most words are understood'
      : index > 0.12
        ? 'some words are understood'
        : 'hardly a word is understood';
