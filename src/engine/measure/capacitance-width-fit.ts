import type { Warning } from '../facts/warning.ts';
import { ratioShare, ratioWarnings } from './equal-levels-fit.ts';
import { type Fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

export interface CapacitanceWidth {
  /** Of the generator, Hz. */
  readonly frequency: number;
  /** Of the variable capacitor where the level has fallen by the ratio, to both sides of the peak, F. */
  readonly lower: number;
  readonly upper: number;
  /** Whatever else is across the coil, its self-capacitance included, F. */
  readonly stray: number;
  /** Voltage at the peak over that at both settings, above 1. Default √2. */
  readonly ratio?: number;
  /** Standard error of each setting, F. Default 2.5 % of their distance. */
  readonly settingError?: number;
  /** Standard error of the strays, F. Default 3 % of the whole capacitance. */
  readonly strayError?: number;
  /** Standard error of the ratio as a share of it. Default 2 %. */
  readonly ratioError?: number;
}

export interface CapacitanceWidthFit {
  readonly q: Fitted;
  /** Of the tuned circuit at this frequency, S; it needs no strays. */
  readonly parallelConductance: Fitted;
  readonly warnings: readonly Warning[];
}

const SETTING_ERROR = 0.025;
const STRAY_ERROR = 0.03;
const RATIO_ERROR = 0.02;

/**
 * Q and parallel conductance from two settings of the capacitor with equal level at one frequency:
 * Q = √(r² − 1)·(C1 + C2)/(C2 − C1) with the whole capacitances, G = ω(C2 − C1)/(2√(r² − 1)).
 * @returns Q and conductance (S), each with its standard error and range by the errors given
 * @throws UnfitReadings unless lower < upper and ratio > 1
 */
export function fitCapacitanceWidth({
  frequency,
  lower,
  upper,
  stray,
  ratio = Math.SQRT2,
  settingError = SETTING_ERROR * (upper - lower),
  strayError = STRAY_ERROR * ((lower + upper) / 2 + stray),
  ratioError = RATIO_ERROR,
}: CapacitanceWidth): CapacitanceWidthFit {
  if (!(upper > lower)) throw new UnfitReadings({ code: 'upper-not-above-lower' });
  if (!(ratio > 1)) throw new UnfitReadings({ code: 'ratio-not-above-one' });
  const factor = Math.sqrt(ratio ** 2 - 1);
  const [sum, apart] = [lower + upper + 2 * stray, upper - lower];
  const sRatio = ratioShare(ratio, ratioError);
  const sLnQ = Math.hypot(
    settingError * (1 / sum + 1 / apart),
    settingError * (1 / sum - 1 / apart),
    (2 * strayError) / sum,
    sRatio,
  );
  const sLnG = Math.hypot((Math.SQRT2 * settingError) / apart, sRatio);
  return {
    q: fittedLogarithm(Math.log((factor * sum) / apart), sLnQ, reachOf()),
    parallelConductance: fittedLogarithm(Math.log((2 * Math.PI * frequency * apart) / (2 * factor)), sLnG, reachOf()),
    warnings: ratioWarnings(ratio),
  };
}
