import type { Warning } from '../facts/warning.ts';
import { type LeastSquaresFit, leastSquares } from '../numerics/levenberg-marquardt.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import {
  JUNCTION_FIGURES,
  type JunctionPoint,
  junctionStart,
  logCurrent,
  requireJunction,
  seriesResistanceWarnings,
} from './junction.ts';
import { requireDifferent } from './unfit.ts';

export interface DetectorFit {
  readonly saturationCurrent: Fitted;
  readonly ideality: Fitted;
  readonly seriesResistance: Fitted;
  /** Slope resistance at 0 V, n·kT/(e·Is): what weak signals meet. */
  readonly zeroBiasResistance: Fitted;
  /** Relative scatter of the currents about the fit (one standard deviation). */
  readonly scatter: number;
  readonly warnings: readonly Warning[];
  readonly correlations: readonly FigureCorrelation[];
}

/** The figures of a junction from a fit of ln Is, n, ln Rs. */
function junctionFigures(fit: LeastSquaresFit, Vt: number): DetectorFit {
  const [lnIs, n, lnRs] = fit.x;
  requireJunction(lnIs);
  const covariance = (i: number, j: number) => fit.covariance[i * 3 + j];
  const reach = reachOf(fit.degreesOfFreedom);
  const logR0 = covariance(0, 0) + covariance(1, 1) / n ** 2 - (2 * covariance(0, 1)) / n;
  const seriesResistance = fittedLogarithm(lnRs, Math.sqrt(covariance(2, 2)), reach);
  return {
    saturationCurrent: fittedLogarithm(lnIs, Math.sqrt(covariance(0, 0)), reach),
    ideality: fitted(n, Math.sqrt(covariance(1, 1)), reach),
    seriesResistance,
    zeroBiasResistance: fittedLogarithm(Math.log(n * Vt) - lnIs, Math.sqrt(logR0), reach),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
    warnings: seriesResistanceWarnings(seriesResistance),
    correlations: correlationsOf(JUNCTION_FIGURES, fit.covariance),
  };
}

/**
 * Saturation current, ideality and series resistance from forward volts and amperes: ln I is compared.
 * @param points at least 4, of at least 3 different voltages; volts and amperes above 0
 * @param temperature K
 * @returns saturation current (A), ideality and resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitDetector(points: readonly JunctionPoint[], temperature: number): DetectorFit {
  requireDifferent(
    points.map((p) => p.voltage),
    3,
  );
  const Vt = temperatureVoltage(temperature);
  const fit = leastSquares(
    ([lnIs, n, lnRs]) =>
      points.map(({ voltage, current }) =>
        n > 0 ? Math.log(current) - logCurrent(voltage, lnIs, n, lnRs, Vt) : Number.NaN,
      ),
    junctionStart(points, Vt),
    { scales: [1, 1, 1] },
  );
  return junctionFigures(fit, Vt);
}
