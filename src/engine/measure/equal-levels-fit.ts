import { type Warning, warning } from '../facts/warning.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

export interface EqualLevels {
  /** Where the level has fallen by the ratio, below and above the resonance, Hz. */
  readonly lower: number;
  readonly upper: number;
  /** Voltage at the peak over that at both frequencies, above 1. Default √2, which is 3 dB. */
  readonly ratio?: number;
  /** Standard error of each frequency, Hz. Default 2 % of their distance. */
  readonly frequencyError?: number;
  /** Standard error of the ratio as a share of it. Default 2 %. */
  readonly ratioError?: number;
}

export interface EqualLevelsFit {
  readonly resonance: Fitted;
  readonly q: Fitted;
  readonly warnings: readonly Warning[];
}

const FREQUENCY_ERROR = 0.02;
const RATIO_ERROR = 0.02;
/** Nearer to the peak the error of the ratio is most of it. */
const LEAST_RATIO = 1.3;

/** How the error of a level ratio enters ln √(r² − 1). */
export const ratioShare = (ratio: number, ratioError: number): number => (ratioError * ratio ** 2) / (ratio ** 2 - 1);

/** What a ratio too near 1 is warned of. */
export const ratioWarnings = (ratio: number): readonly Warning[] =>
  ratio < LEAST_RATIO ? [warning('measure.level-ratio-small', { ratio, least: LEAST_RATIO })] : [];

/**
 * Resonance and Q from two frequencies of equal level: f0 = √(f1f2), Q = √(r² − 1)·√(f1f2)/(f2 − f1), exact at every Q
 * for a single tuned circuit.
 * @returns resonance (Hz) and Q, each with its standard error and range by the errors given
 * @throws UnfitReadings unless lower < upper and ratio > 1
 */
export function fitEqualLevels({
  lower,
  upper,
  ratio = Math.SQRT2,
  frequencyError = FREQUENCY_ERROR * (upper - lower),
  ratioError = RATIO_ERROR,
}: EqualLevels): EqualLevelsFit {
  if (!(upper > lower)) throw new UnfitReadings({ code: 'upper-not-above-lower' });
  if (!(ratio > 1)) throw new UnfitReadings({ code: 'ratio-not-above-one' });
  const resonance = Math.sqrt(lower * upper);
  const apart = upper - lower;
  const sLnQ = Math.hypot(
    frequencyError * (1 / (2 * lower) + 1 / apart),
    frequencyError * (1 / (2 * upper) - 1 / apart),
    ratioShare(ratio, ratioError),
  );
  const sResonance = (resonance / 2) * frequencyError * Math.hypot(1 / lower, 1 / upper);
  return {
    resonance: fitted(resonance, sResonance, reachOf()),
    q: fittedLogarithm(Math.log((Math.sqrt(ratio ** 2 - 1) * resonance) / apart), sLnQ, reachOf()),
    warnings: ratioWarnings(ratio),
  };
}
