import type { Decibels, Ratio } from '../../units/quantities.ts';
import { powerSum, THIRD_OCTAVES } from './third-octaves.ts';
import type { HeardBand } from './types.ts';

/** ANSI S3.5-1997 Table 3: importance of the one-third octaves from 160 Hz to 8 kHz for understanding speech; sum 1. */
const IMPORTANCE = [
  0.0083, 0.0095, 0.015, 0.0289, 0.044, 0.0578, 0.0653, 0.0711, 0.0818, 0.0844, 0.0882, 0.0898, 0.0868, 0.0844, 0.0771,
  0.0527, 0.0364, 0.0185,
];
const FIRST = THIRD_OCTAVES.indexOf(160);

/**
 * A sound in a band is lost when it is this far below the noise in the same one-third octave. From memory: 2 to 6 dB.
 * The same figure turns a threshold for tones into a noise that would cause it.
 */
export const MASKING: Decibels = 4;

/**
 * Speech intelligibility index, 0 to 1: ANSI S3.5-1997 in one-third octaves without its spread of masking and level
 * distortion. Speech in a band counts from 15 dB below its mean to 15 above.
 * @param levels speech, @param disturbance the greater of noise and what stands for the threshold, by `THIRD_OCTAVES`.
 */
const speechIntelligibility = (levels: readonly Decibels[], disturbance: readonly Decibels[]): Ratio =>
  IMPORTANCE.reduce(
    (sum, weight, i) => sum + weight * Math.min(1, Math.max(0, (levels[FIRST + i] - disturbance[FIRST + i] + 15) / 30)),
    0,
  );

/**
 * The same with other programmes in the phones: their levels count as noise, of the same spectrum as the wanted one.
 * @param ratios wanted over unwanted programme, dB, one for each.
 */
export function intelligibilityAmong(bands: readonly HeardBand[], ratios: readonly Decibels[]): Ratio {
  const unwanted = powerSum(ratios.map((ratio) => -ratio));
  return speechIntelligibility(
    bands.map((band) => band.level),
    bands.map(({ level, noise, threshold }) => {
      const together = ratios.length > 0 ? powerSum([noise, level + unwanted]) : noise;
      return Math.max(together, threshold + MASKING);
    }),
  );
}
