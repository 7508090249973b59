import type { Decibels, Ratio } from '../../units/quantities.ts';
import { THIRD_OCTAVES } from './third-octaves.ts';
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

/** What is otherwise than in the bands given, dB: the programme louder, the threshold higher, the room noisier. */
export interface OtherwiseHeard {
  readonly louder: Decibels;
  readonly threshold: Decibels;
  readonly noise: Decibels;
}

/**
 * Speech intelligibility index, 0 to 1: ANSI S3.5-1997 in one-third octaves without its spread of masking and level
 * distortion. Speech in a band counts from 15 dB below its mean to 15 above. Levels of other programmes in the phones
 * count as noise, of the same spectrum as the wanted one.
 * @param bands by `THIRD_OCTAVES`. @param ratios wanted over unwanted programme, dB, one for each.
 * @returns the index with all bands moved alike, asked for by the draws of ranges again and again.
 */
export function intelligibilityWhen(
  bands: readonly HeardBand[],
  ratios: readonly Decibels[],
): (otherwise: OtherwiseHeard) => Ratio {
  const unwanted = ratios.reduce((sum, ratio) => sum + fromPower(-ratio), 0);
  return ({ louder, threshold, noise }) => {
    let index = 0;
    for (let i = 0; i < IMPORTANCE.length; i++) {
      const band = bands[FIRST + i];
      const level = band.level + louder;
      const quiet = band.noise + noise;
      const together = unwanted > 0 ? decibelsOfPower(fromPower(quiet) + unwanted * fromPower(level)) : quiet;
      const over = level - Math.max(together, band.threshold + threshold + MASKING);
      index += IMPORTANCE[i] * Math.min(1, Math.max(0, (over + 15) / 30));
    }
    return index;
  };
}

const AS_GIVEN: OtherwiseHeard = { louder: 0, threshold: 0, noise: 0 };

/** The same of the bands as they are. */
export const intelligibilityAmong = (bands: readonly HeardBand[], ratios: readonly Decibels[]): Ratio =>
  intelligibilityWhen(bands, ratios)(AS_GIVEN);

const fromPower = (level: Decibels): Ratio => 10 ** (level / 10);
const decibelsOfPower = (power: Ratio): Decibels => 10 * Math.log10(power);
