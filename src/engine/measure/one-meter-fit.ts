import type { Warning } from '../facts/warning.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { JUNCTION_FIGURES, junctionStart, logCurrent, logSlope, seriesResistanceWarnings } from './junction.ts';
import { knownErrorsOf, varianceOf } from './known-errors.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

/** A junction as one voltmeter sees it; ranges by the errors of the instruments. */
export interface OneMeterFit {
  readonly saturationCurrent: Fitted;
  readonly ideality: Fitted;
  readonly seriesResistance: Fitted;
  /** Slope resistance at 0 V, n·kT/(e·Is). */
  readonly zeroBiasResistance: Fitted;
  readonly warnings: readonly Warning[];
  readonly correlations: readonly FigureCorrelation[];
}

export interface VoltmeterReading {
  /** In series with the detector, Ω. */
  readonly resistor: number;
  /** Across the detector, V. */
  readonly voltage: number;
}

export interface VoltmeterBench {
  /** Of the battery, V. */
  readonly source: number;
  /** K. */
  readonly temperature: number;
  /** Standard error of the source as a share of it, common to all readings. Default 1 %. */
  readonly sourceError?: number;
  /** Of the voltmeter, Ω. Default 10 MΩ. */
  readonly meterResistance?: number;
  /** Standard error of each resistor as a share of it. Default 1 %. */
  readonly resistorError?: number;
  /** Standard error of a voltage: a share of it, default 0.5 %, and so much however small it is, default 0.1 mV. */
  readonly voltageError?: number;
  readonly voltageFloor?: number;
}

export interface BridgeReading {
  /** V. */
  readonly source: number;
  /** From the source to the detector; in the other arm from the source to the middle, and from there to the end. Ω. */
  readonly upper: number;
  readonly otherUpper: number;
  readonly otherLower: number;
}

export interface BridgeBench {
  /** K. */
  readonly temperature: number;
  /** Standard error of each of the three resistors as a share of it, the same in all readings. Default 1 %. */
  readonly resistorError?: number;
  /** How far from balance a null may be, as a share of the detector's voltage. Default 0.5 %. */
  readonly nullError?: number;
  /** Standard error of each source voltage as a share of it. Default 0.5 %. */
  readonly sourceError?: number;
}

const USUAL = { resistor: 0.01, source: 0.01, voltage: 0.005, floor: 1e-4, meter: 1e7, null: 0.005 };

/** ln Is, n, ln Rs first, then what else is unknown. */
type Unknowns = Float64Array;

/** Weights by the errors at the start, then once more by those at the minimum. */
function fitTwice(
  residuals: (x: Unknowns, errors: readonly number[]) => number[],
  errorsAt: (x: Unknowns) => readonly number[],
  start: readonly number[],
) {
  let x: Unknowns = Float64Array.from(start);
  for (let turn = 0; ; turn++) {
    const errors = errorsAt(x);
    const fit = leastSquares((at) => residuals(at, errors), x, { scales: start.map(() => 1) });
    if (turn === 2) return fit;
    x = fit.x;
  }
}

function figuresOf(fit: ReturnType<typeof fitTwice>, Vt: number): OneMeterFit {
  const { covariance, errors, warnings } = knownErrorsOf(fit);
  const [lnIs, n, lnRs] = fit.x;
  const others = Array.from({ length: fit.x.length - 3 }, () => 0);
  const seriesResistance = fittedLogarithm(lnRs, errors[2], reachOf());
  return {
    saturationCurrent: fittedLogarithm(lnIs, errors[0], reachOf()),
    ideality: fitted(n, errors[1], reachOf()),
    seriesResistance,
    zeroBiasResistance: fittedLogarithm(
      Math.log(n * Vt) - lnIs,
      Math.sqrt(varianceOf([-1, 1 / n, 0, ...others], covariance)),
      reachOf(),
    ),
    warnings: [...warnings, ...seriesResistanceWarnings(seriesResistance)],
    correlations: correlationsOf(JUNCTION_FIGURES, covariance, fit.x.length),
  };
}

function requireCurrents(currents: readonly number[]): void {
  const index = currents.findIndex((current) => !(current > 0));
  if (index >= 0) throw new UnfitReadings({ code: 'detector.no-current', index });
}

/**
 * A junction from one voltmeter: through known resistors from a source of known voltage, I = (V0 − V)/R − V/Rm. The
 * source's error is one more unknown, common to all readings.
 * @param readings at least 4, of at least 3 different voltages
 * @returns saturation current (A), ideality and resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitVoltmeter(
  readings: readonly VoltmeterReading[],
  {
    source,
    temperature,
    sourceError = USUAL.source,
    meterResistance = USUAL.meter,
    resistorError = USUAL.resistor,
    voltageError = USUAL.voltage,
    voltageFloor = USUAL.floor,
  }: VoltmeterBench,
): OneMeterFit {
  requireDifferent(
    readings.map((r) => r.voltage),
    3,
  );
  const Vt = temperatureVoltage(temperature);
  const currentOf = ({ resistor, voltage }: VoltmeterReading, factor = 1) =>
    (source * factor - voltage) / resistor - voltage / meterResistance;
  requireCurrents(readings.map((r) => currentOf(r)));
  const points = readings.map((r) => ({ voltage: r.voltage, current: currentOf(r) }));
  const fit = fitTwice(
    ([lnIs, n, lnRs, off], errors) => {
      if (!(n > 0)) return [Number.NaN];
      const rows = readings.map(
        (r, i) =>
          (Math.log(currentOf(r, 1 + off * sourceError)) - logCurrent(r.voltage, lnIs, n, lnRs, Vt)) / errors[i],
      );
      return [...rows, off];
    },
    ([lnIs, n, lnRs]) =>
      readings.map((r, i) => {
        const { voltage, current } = points[i];
        const sVoltage = Math.hypot(voltageError * voltage, voltageFloor);
        const perVolt =
          logSlope(voltage, lnIs, n, lnRs, Vt) / voltage + (1 / r.resistor + 1 / meterResistance) / current;
        return Math.hypot(sVoltage * perVolt, (resistorError * (source - voltage)) / r.resistor / current);
      }),
    [...junctionStart(points, Vt), 0],
  );
  return figuresOf(fit, Vt);
}

/**
 * A junction from a bridge of resistors on one source, balanced with a meter as indicator: at balance V = V0·R3/(R2 + R3)
 * and V/I = R1·R3/R2, R1 above the detector, R2 above R3 in the other arm. The resistors' errors are unknowns common to
 * all readings.
 * @param readings at least 4, of at least 3 different source voltages or resistors
 * @returns saturation current (A), ideality and resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitBridge(
  readings: readonly BridgeReading[],
  { temperature, resistorError = USUAL.resistor, nullError = USUAL.null, sourceError = USUAL.voltage }: BridgeBench,
): OneMeterFit {
  const Vt = temperatureVoltage(temperature);
  /** Factors of the three resistors. */
  const pointOf = ({ source, upper, otherUpper, otherLower }: BridgeReading, a = 1, b = 1, c = 1) => {
    const voltage = (source * otherLower * c) / (otherUpper * b + otherLower * c);
    return { voltage, current: (voltage * otherUpper * b) / (upper * a * otherLower * c) };
  };
  const points = readings.map((r) => pointOf(r));
  requireDifferent(
    points.map((p) => p.voltage),
    3,
  );
  const fit = fitTwice(
    ([lnIs, n, lnRs, ...off], errors) => {
      if (!(n > 0)) return [Number.NaN];
      const [a, b, c] = off.map((deviate) => Math.exp(resistorError * deviate));
      const rows = readings.map((r, i) => {
        const { voltage, current } = pointOf(r, a, b, c);
        return (Math.log(current) - logCurrent(voltage, lnIs, n, lnRs, Vt)) / errors[i];
      });
      return [...rows, ...off];
    },
    ([lnIs, n, lnRs]) =>
      readings.map((r, i) => {
        const slope = logSlope(points[i].voltage, lnIs, n, lnRs, Vt);
        return Math.hypot(nullError * (slope + r.otherLower / r.otherUpper), sourceError * (slope - 1));
      }),
    [...junctionStart(points, Vt), 0, 0, 0],
  );
  return figuresOf(fit, Vt);
}
