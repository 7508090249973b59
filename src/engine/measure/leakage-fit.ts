import { type Warning, warning } from '../facts/warning.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import {
  JUNCTION_FIGURES,
  type JunctionPoint,
  junctionCurrent,
  junctionStart,
  requireJunction,
  seriesResistanceWarnings,
} from './junction.ts';
import { varianceOf } from './known-errors.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface LeakageFit {
  readonly saturationCurrent: Fitted;
  readonly ideality: Fitted;
  readonly seriesResistance: Fitted;
  readonly leakage: Fitted;
  /** Slope resistance of junction and leakage together at 0 V: what weak signals meet. */
  readonly zeroBiasResistance: Fitted;
  readonly scatter: number;
  readonly warnings: readonly Warning[];
  readonly correlations: readonly FigureCorrelation[];
}

export interface LeakageOptions {
  /** Standard error of a current as a share of it. Default 1 %. */
  readonly currentError?: number;
  /** Standard error of a current however small it is, A. Default 5 nA. */
  readonly currentFloor?: number;
}

const CURRENT_ERROR = 0.01;
const CURRENT_FLOOR = 5e-9;
const LEAST_FORWARD = 4;
const LEAST_REVERSE = 2;

/**
 * A junction and the leakage across it from forward and reverse readings: I = Is(exp((V − Ij·Rs)/(n·Vt)) − 1) + V/Rl, each
 * residual divided by the error of its current. The errors give the weights; how large they are the scatter says.
 * @param points at least 4 forward (volts and amperes above 0) and 2 reverse (both below 0)
 * @param temperature K
 * @returns saturation current (A), ideality and resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitLeakage(
  points: readonly JunctionPoint[],
  temperature: number,
  { currentError = CURRENT_ERROR, currentFloor = CURRENT_FLOOR }: LeakageOptions = {},
): LeakageFit {
  const forward = points.filter((p) => p.voltage > 0);
  const reverse = points.filter((p) => p.voltage < 0);
  if (!(forward.length >= LEAST_FORWARD && reverse.length >= LEAST_REVERSE))
    throw new UnfitReadings({
      code: 'detector.both-ways',
      forward: forward.length,
      reverse: reverse.length,
      leastForward: LEAST_FORWARD,
      leastReverse: LEAST_REVERSE,
    });
  const against = points.findIndex((p) => p.voltage * p.current < 0);
  if (against >= 0) throw new UnfitReadings({ code: 'detector.current-against-voltage', index: against });
  requireDifferent(
    forward.map((p) => p.voltage),
    3,
  );
  const Vt = temperatureVoltage(temperature);
  const [low, high] = [...reverse].sort((a, b) => a.voltage - b.voltage);
  const slope = (high.current - low.current) / (high.voltage - low.voltage);
  const leak = slope > 0 ? slope : low.current / low.voltage;
  const rising = forward
    .map((p) => ({ ...p, current: p.current - leak * p.voltage }))
    .filter((p) => p.current > currentFloor);
  if (rising.length < 3) throw new UnfitReadings({ code: 'detector.not-rising' });
  const errorOf = (current: number) => Math.hypot(currentError * current, currentFloor);
  const fit = leastSquares(
    ([lnIs, n, lnRs, lnG]) =>
      points.map(({ voltage, current }) =>
        n > 0
          ? (current - junctionCurrent(voltage, lnIs, n, lnRs, Vt) - Math.exp(lnG) * voltage) / errorOf(current)
          : Number.NaN,
      ),
    [...junctionStart(rising, Vt), Math.log(leak)],
    { scales: [1, 1, 1, 1] },
  );
  const [lnIs, n, lnRs, lnG] = fit.x;
  requireJunction(lnIs);
  const s = (j: number) => Math.sqrt(fit.covariance[5 * j]);
  const reach = reachOf(fit.degreesOfFreedom);
  const [junction, G] = [Math.exp(lnIs) / (n * Vt), Math.exp(lnG)];
  const share = junction / (junction + G);
  const sLnR0 = Math.sqrt(varianceOf([-share, share / n, 0, share - 1], fit.covariance));
  const seriesResistance = fittedLogarithm(lnRs, s(2), reach);
  const leakage = fittedLogarithm(-lnG, s(3), reach);
  return {
    saturationCurrent: fittedLogarithm(lnIs, s(0), reach),
    ideality: fitted(n, s(1), reach),
    seriesResistance,
    leakage,
    zeroBiasResistance: fittedLogarithm(-Math.log(junction + G), sLnR0, reach),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
    warnings: [
      ...seriesResistanceWarnings(seriesResistance),
      ...(leakage.standardError < leakage.value / 2
        ? []
        : [warning('measure.leakage-unseen', { least: leakage.range[0] })]),
    ],
    // The leakage's resistance falls as its conductance rises.
    correlations: correlationsOf([...JUNCTION_FIGURES, 'leakage'], fit.covariance).map((one) =>
      one.between[1] === 'leakage' ? { ...one, correlation: -one.correlation } : one,
    ),
  };
}
