import { type Warning, warning } from '../facts/warning.ts';
import { wrightOmega } from '../numerics/lambert.ts';
import { type LeastSquaresFit, leastSquares } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface DetectorPoint {
  /** Across the whole detector, V; above 0. */
  readonly voltage: number;
  /** A; above 0. */
  readonly current: number;
}

export interface DetectorFit {
  readonly saturationCurrent: Fitted;
  readonly ideality: Fitted;
  readonly seriesResistance: Fitted;
  /** Slope resistance at 0 V, n·kT/(e·Is): what weak signals meet. */
  readonly zeroBiasResistance: Fitted;
  /** Relative scatter of the currents about the fit (one standard deviation). */
  readonly scatter: number;
  readonly warnings: readonly Warning[];
}

/**
 * ln of the current through a junction of ln Is, n and ln Rs at V, I = Is(exp((V − I·Rs)/(n·Vt)) − 1): closed form by
 * Wright's omega, so that no voltage overflows.
 */
function logCurrent(V: number, lnIs: number, n: number, lnRs: number, Vt: number): number {
  const s = n * Vt;
  const lnDrop = lnRs + lnIs - Math.log(s); // Rs·Is in units of n·Vt
  const z = V / s + Math.exp(lnDrop);
  const w = z - wrightOmega(z + lnDrop);
  return lnIs + (w > 30 ? w : Math.log(Math.expm1(w)));
}

/** A start for the fit: n and Rs follow linearly from each of a row of saturation currents; the best one. */
function startOf(points: readonly DetectorPoint[], Vt: number): readonly [number, number, number] {
  let best: readonly [number, number, number] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let lnIs = Math.log(1e-16); lnIs < Math.log(1e-2); lnIs += 0.5) {
    const { x } = linearLeastSquares(
      points.flatMap(({ current }) => [Vt * Math.log1p(current / Math.exp(lnIs)), current]),
      points.map((p) => p.voltage),
      2,
    );
    const [n, Rs] = [x[0], Math.max(x[1], 1e-3)];
    if (!(n > 0)) continue;
    const lnRs = Math.log(Rs);
    const sum = points.reduce((s, p) => s + (Math.log(p.current) - logCurrent(p.voltage, lnIs, n, lnRs, Vt)) ** 2, 0);
    if (sum < least) {
      least = sum;
      best = [lnIs, n, lnRs];
    }
  }
  if (!best) throw new UnfitReadings({ code: 'detector.not-rising' });
  return best;
}

/** The figures of a junction from a fit of ln Is, n, ln Rs. */
function junctionFigures(fit: LeastSquaresFit, Vt: number): DetectorFit {
  const [lnIs, n, lnRs] = fit.x;
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
    warnings:
      seriesResistance.standardError < seriesResistance.value ? [] : [warning('measure.series-resistance-unseen')],
  };
}

/**
 * Saturation current, ideality and series resistance from forward volts and amperes: ln I is compared.
 * @param points at least 4, of at least 3 different voltages
 * @param temperature K
 * @returns saturation current (A), ideality and resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitDetector(points: readonly DetectorPoint[], temperature: number): DetectorFit {
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
    startOf(points, Vt),
    { scales: [1, 1, 1] },
  );
  return junctionFigures(fit, Vt);
}
