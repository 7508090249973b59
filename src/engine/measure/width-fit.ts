import { leastSquaresOfThree } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface LevelReading {
  /** Hz. */
  readonly frequency: number;
  /** Voltage, in any unit that stays the same; above 0. */
  readonly level: number;
}

export interface WidthFit {
  readonly resonance: Fitted;
  readonly q: Fitted;
  /** Relative scatter of the levels about the curve (one standard deviation). */
  readonly scatter: number;
}

/** Starts for resonance and Q: the parabola (peak/level)² of frequency, or, where it has no vertex, a few guesses. */
function startsOf(points: readonly LevelReading[]): (readonly [number, number])[] {
  const top = points.reduce((a, b) => (b.level > a.level ? b : a));
  const span = Math.max(...points.map((p) => Math.abs(p.frequency - top.frequency)));
  const weights = points.map(({ level }) => (level / top.level) ** 2);
  const { x } = linearLeastSquares(
    points.flatMap(({ frequency }, i) => {
      const u = (frequency - top.frequency) / span;
      return [weights[i], weights[i] * u, weights[i] * u * u];
    }),
    points.map(({ level }, i) => weights[i] * (top.level / level) ** 2),
    3,
  );
  const vertex = -x[1] / (2 * x[2]);
  const height = x[0] - x[1] ** 2 / (4 * x[2]);
  const f0 = top.frequency + vertex * span;
  if (x[2] > 0 && height > 0 && f0 > 0) return [[f0, (f0 / (2 * span)) * Math.sqrt(x[2] / height)]];
  return [0.5, 2, 8, 32].map((widths) => [top.frequency, (widths * top.frequency) / span] as const);
}

/**
 * Resonance and Q from levels around the resonance: ln level against ln(h/√(1 + Q²(f/f0 − f0/f)²)).
 * @param points at least 4, of at least 3 different frequencies
 * @returns resonance (Hz) and Q, each with its standard error and range
 * @throws UnfitReadings
 */
export function fitWidth(points: readonly LevelReading[]): WidthFit {
  requireDifferent(
    points.map((p) => p.frequency),
    3,
  );
  const lnTop = Math.log(Math.max(...points.map((p) => p.level)));
  const fits = startsOf(points).map(([f0, Q]) => {
    const resonanceAt = (detuning: number) => f0 * (1 + detuning / Q);
    const fit = leastSquaresOfThree(
      ([lnHeight, detuning, lnQ]) => {
        const resonance = resonanceAt(detuning);
        if (!(resonance > 0)) return points.map(() => Number.NaN);
        const Q2 = Math.exp(2 * lnQ);
        return points.map(
          ({ frequency, level }) =>
            Math.log(level) - lnHeight + 0.5 * Math.log1p(Q2 * (frequency / resonance - resonance / frequency) ** 2),
        );
      },
      [lnTop, 0, Math.log(Q)],
      { scales: [1, 1, 1] },
    );
    return { fit, resonance: resonanceAt(fit.x[1]), perDetuning: f0 / Q };
  });
  const { fit, resonance, perDetuning } = fits.reduce((a, b) => (b.fit.sumOfSquares < a.fit.sumOfSquares ? b : a));
  const q = Math.exp(fit.x[2]);
  // A peak far outside the readings, or none: the fit follows the slope of one side only.
  const frequencies = points.map((p) => p.frequency);
  const [low, high] = [Math.min(...frequencies), Math.max(...frequencies)];
  if (!(q > 1e-3) || !(resonance > low - (high - low)) || !(resonance < high + (high - low)))
    throw new UnfitReadings({ code: 'width.no-peak' });
  const reach = reachOf(fit.degreesOfFreedom);
  return {
    resonance: fitted(resonance, perDetuning * Math.sqrt(fit.covariance[4]), reach),
    q: fittedLogarithm(fit.x[2], Math.sqrt(fit.covariance[8]), reach),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
  };
}
