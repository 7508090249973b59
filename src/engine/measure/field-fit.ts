import { type Warning, warning } from '../facts/warning.ts';
import { type Fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

export interface CalibrationPoint {
  /** Of the generator behind the dummy aerial, V. */
  readonly emf: number;
  /** Direct current of the detector, A. */
  readonly current: number;
}

export interface FieldReading {
  /** Direct current of the detector with the station tuned, A. */
  readonly current: number;
  /** Of the aerial, m, and its standard error as a share of it. */
  readonly effectiveHeight: number;
  readonly heightError: number;
  /** Standard error of a current: a share of it, default 2 %, and so much however small it is, A, default 20 nA. */
  readonly currentError?: number;
  readonly currentFloor?: number;
  /** Standard error of the calibration as a share of the emf. Default 5 %. */
  readonly calibrationError?: number;
}

export interface FieldFit {
  readonly fieldStrength: Fitted;
  readonly emf: Fitted;
  readonly warnings: readonly Warning[];
}

const USUAL = { current: 0.02, floor: 2e-8, calibration: 0.05 };
/** A current of fewer floors is mostly the meter's own error. */
const LEAST_FLOORS = 5;

/**
 * Field strength of a station from the detector's direct current in a set calibrated with an unmodulated generator behind
 * a dummy aerial: the emf by interpolation of ln emf over ln current, E = emf/effective height. The height's error is
 * common to all stations: differences between them are known better.
 * @param calibration at least 2 points, current rising with emf
 * @returns field strength (V/m) and emf (V), each with its standard error and range by the errors given
 * @throws UnfitReadings where the calibration does not rise or does not reach the current
 */
export function fitField(
  calibration: readonly CalibrationPoint[],
  {
    current,
    effectiveHeight,
    heightError,
    currentError = USUAL.current,
    currentFloor = USUAL.floor,
    calibrationError = USUAL.calibration,
  }: FieldReading,
): FieldFit {
  const table = [...calibration].sort((a, b) => a.emf - b.emf);
  if (!table.every((p, i) => i === 0 || (p.current > table[i - 1].current && p.emf > table[i - 1].emf)))
    throw new UnfitReadings({ code: 'field.calibration-not-rising' });
  const [lowest, highest] = [table[0].current, table[table.length - 1].current];
  if (!(current >= lowest && current <= highest))
    throw new UnfitReadings({ code: 'field.outside-calibration', current, lowest, highest });
  const at = Math.max(
    1,
    table.findIndex((p) => p.current >= current),
  );
  const [a, b] = [table[at - 1], table[at]];
  const slope = Math.log(b.emf / a.emf) / Math.log(b.current / a.current);
  const lnEmf = Math.log(a.emf) + slope * Math.log(current / a.current);
  const sEmf = Math.hypot((slope * Math.hypot(currentError * current, currentFloor)) / current, calibrationError);
  return {
    fieldStrength: fittedLogarithm(lnEmf - Math.log(effectiveHeight), Math.hypot(sEmf, heightError), reachOf()),
    emf: fittedLogarithm(lnEmf, sEmf, reachOf()),
    warnings: current < LEAST_FLOORS * currentFloor ? [warning('measure.current-near-floor', { current })] : [],
  };
}
