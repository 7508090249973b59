import { type Warning, warning } from '../facts/warning.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { type Fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { knownErrorsOf } from './known-errors.ts';
import { UnfitReadings } from './unfit.ts';

/** What the aerial adds to a tuned circuit at one frequency. */
export interface AerialReading {
  /** Hz. */
  readonly frequency: number;
  /** Capacitance that takes the aerial's place at this frequency, its series capacitor included, F. */
  readonly equivalent: number;
  /** Standard error of it, F. */
  readonly error: number;
  /** Capacitor between aerial and tuned circuit, F; left out without one. */
  readonly series?: number;
}

export interface AerialCapacitanceFit {
  /** Far below the natural frequency, F. */
  readonly capacitance: Fitted;
  /** Where aerial and earth are in series resonance by themselves, Hz. */
  readonly naturalFrequency: Fitted;
  readonly warnings: readonly Warning[];
}

/** Natural frequency of a wire aerial before anything was read: Hz, and the standard deviation of its logarithm. */
const USUAL = { frequency: 4e6, deviation: 0.5 };
/** With more of the deviation left the readings have said little. */
const UNSEEN = 0.4;

/** tan θ/θ, what the aerial's capacitance appears larger by. Above its natural frequency it is no capacitance. */
function apparentFactor(frequency: number, natural: number): number {
  const theta = (Math.PI * frequency) / (2 * natural);
  return theta < Math.PI / 2 ? Math.tan(theta) / theta : Number.NaN;
}

const behind = (C: number, series?: number): number => (series === undefined ? C : (C * series) / (C + series));

/**
 * Capacitance and natural frequency of an aerial from what takes its place at several frequencies or behind several known
 * capacitors: C(f) = Ca·tan θ/θ, θ = πf/2fn, as of a wire open at its far end. ln fn has a prior, 4 MHz within a factor
 * of e^0.5.
 * @param readings at least 1
 * @returns capacitance (F) and natural frequency (Hz), each with its standard error and range by the errors given
 * @throws UnfitReadings
 */
export function fitAerialCapacitance(readings: readonly AerialReading[]): AerialCapacitanceFit {
  const free = readings.map(({ equivalent, series }, index) => {
    if (!(equivalent > 0)) throw new UnfitReadings({ code: 'aerial.adds-nothing', index });
    if (series !== undefined && !(equivalent < series))
      throw new UnfitReadings({ code: 'aerial.more-than-series', index });
    return series === undefined ? equivalent : (equivalent * series) / (series - equivalent);
  });
  const highest = Math.max(...readings.map((r) => r.frequency));
  const lowest = readings.findIndex((r) => r.frequency === Math.min(...readings.map((one) => one.frequency)));
  const natural = Math.max(USUAL.frequency, 1.5 * highest);
  const fit = leastSquares(
    ([lnC, lnNatural]) => [
      ...readings.map(
        ({ frequency, equivalent, error, series }) =>
          (equivalent - behind(Math.exp(lnC) * apparentFactor(frequency, Math.exp(lnNatural)), series)) / error,
      ),
      (lnNatural - Math.log(USUAL.frequency)) / USUAL.deviation,
    ],
    [Math.log(free[lowest] / apparentFactor(readings[lowest].frequency, natural)), Math.log(natural)],
    { scales: [1, 1] },
  );
  const { errors, warnings } = knownErrorsOf(fit);
  return {
    capacitance: fittedLogarithm(fit.x[0], errors[0], reachOf()),
    naturalFrequency: fittedLogarithm(fit.x[1], errors[1], reachOf()),
    warnings: errors[1] > UNSEEN ? [...warnings, warning('measure.natural-frequency-unseen')] : warnings,
  };
}
