import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface ResonancePoint {
  /** Known capacitance added across the coil, F. */
  readonly capacitance: number;
  /** Hz. */
  readonly frequency: number;
}

export interface ResonanceFit {
  readonly inductance: Fitted;
  /** Of the coil with whatever else was across it in every reading, F. */
  readonly selfCapacitance: Fitted;
  /** Relative scatter of the frequencies about the fit (one standard deviation). */
  readonly scatter: number;
  readonly correlations: readonly FigureCorrelation[];
}

const PICO = 1e-12;

/**
 * Inductance and self-capacitance from resonances with known capacitances: ln f against ln(1/(2π√(L(C + C0)))).
 * @param points at least 3, with at least 2 different capacitances
 * @returns inductance (H) and self-capacitance (F), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitResonance(points: readonly ResonancePoint[]): ResonanceFit {
  requireDifferent(
    points.map((p) => p.capacitance),
    2,
  );
  // The classical line 1/(2πf)² = L·C + L·C0, in pF and weighted for equal relative errors of f.
  const { x: line } = linearLeastSquares(
    points.flatMap(({ capacitance, frequency }) => {
      const weight = (2 * Math.PI * frequency) ** 2;
      return [weight * capacitance, weight * PICO];
    }),
    points.map(() => 1),
    2,
  );
  const [L, LC0] = line;
  if (!(L > 0)) throw new UnfitReadings({ code: 'resonance.not-falling' });
  const least = Math.min(...points.map((p) => p.capacitance)) / PICO;
  const start = [Math.log(L), Math.max(LC0 / L, 1e-3 - least)];
  const fit = leastSquares(
    ([lnL, C0]) =>
      points.map(
        ({ capacitance, frequency }) =>
          Math.log(2 * Math.PI * frequency) + 0.5 * lnL + 0.5 * Math.log(capacitance + C0 * PICO),
      ),
    start,
    { scales: [1, 10] },
  );
  const reach = reachOf(fit.degreesOfFreedom);
  return {
    inductance: fittedLogarithm(fit.x[0], Math.sqrt(fit.covariance[0]), reach),
    selfCapacitance: fitted(fit.x[1] * PICO, Math.sqrt(fit.covariance[3]) * PICO, reach),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
    correlations: correlationsOf(['inductance', 'selfCapacitance'], fit.covariance),
  };
}
