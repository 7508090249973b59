import { type Warning, warning } from '../facts/warning.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

export interface DoubleHump {
  /** Of the two peaks, Hz. */
  readonly lower: number;
  readonly upper: number;
  /** Of each circuit alone; both equal. */
  readonly q?: number;
  /** Standard error of Q as a share of it. Default 5 %. */
  readonly qError?: number;
  /** Standard error of each frequency, Hz. Default 2 % of their distance. */
  readonly frequencyError?: number;
}

export interface DoubleHumpFit {
  readonly couplingCoefficient: Fitted;
  readonly warnings: readonly Warning[];
}

const Q_ERROR = 0.05;
const FREQUENCY_ERROR = 0.02;

/**
 * Coupling coefficient of two equal circuits, each tuned with the other open, from the two peaks of their curve:
 * k = √(((f2² − f1²)/(f2² + f1²))² + 1/Q²). Without Q its share is left out.
 * @returns the coefficient with its standard error and range by the errors given
 * @throws UnfitReadings unless lower < upper
 */
export function fitDoubleHump({
  lower,
  upper,
  q,
  qError = Q_ERROR,
  frequencyError = FREQUENCY_ERROR * (upper - lower),
}: DoubleHump): DoubleHumpFit {
  if (!(upper > lower)) throw new UnfitReadings({ code: 'upper-not-above-lower' });
  const [f1, f2] = [lower ** 2, upper ** 2];
  const raw = (f2 - f1) / (f2 + f1);
  const sRaw = ((4 * lower * upper) / (f1 + f2) ** 2) * frequencyError * Math.hypot(lower, upper);
  if (q === undefined)
    return { couplingCoefficient: fitted(raw, sRaw, reachOf()), warnings: [warning('measure.coupling-without-q')] };
  const k = Math.hypot(raw, 1 / q);
  return {
    couplingCoefficient: fitted(k, Math.hypot((sRaw * raw) / k, qError / (q ** 2 * k)), reachOf()),
    warnings: [],
  };
}
