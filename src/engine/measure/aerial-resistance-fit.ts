import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface AddedResistance {
  /** Known resistance added in the aerial's lead, Ω; 0 for none. */
  readonly added: number;
  /** Voltage on the tuned circuit, retuned, in any unit that stays the same; above 0. */
  readonly level: number;
}

export interface AerialResistanceFit {
  /** Of the whole circuit: aerial, earth, and the coil as it is reflected, Ω. */
  readonly circuitResistance: Fitted;
  /** Of aerial and earth, once the circuit's own is taken off. */
  readonly resistance?: Fitted;
  readonly scatter: number;
}

/**
 * Resistance of an aerial's circuit from levels with known resistors added to it: ln level against ln(A/(R + added)).
 * @param readings at least 3, of at least 2 different resistances
 * @param own the same measured with a dummy capacitor in the aerial's place, and its standard error, Ω
 * @returns resistances (Ω), each with its standard error and range
 * @throws UnfitReadings
 */
export function fitAerialResistance(
  readings: readonly AddedResistance[],
  own?: { readonly value: number; readonly error: number },
): AerialResistanceFit {
  requireDifferent(
    readings.map((r) => r.added),
    2,
  );
  const { x: line } = linearLeastSquares(
    readings.flatMap(({ added, level }) => [level, level * added]),
    readings.map(() => 1),
    2,
  );
  const [offset, slope] = line;
  if (!(slope > 0 && offset > 0)) throw new UnfitReadings({ code: 'aerial.level-not-falling' });
  const fit = leastSquares(
    ([lnA, lnR]) => readings.map(({ added, level }) => Math.log(level) - lnA + Math.log(Math.exp(lnR) + added)),
    [-Math.log(slope), Math.log(offset / slope)],
    { scales: [1, 1] },
  );
  const reach = reachOf(fit.degreesOfFreedom);
  const circuitResistance = fittedLogarithm(fit.x[1], Math.sqrt(fit.covariance[3]), reach);
  return {
    circuitResistance,
    ...(own && {
      resistance: fitted(
        circuitResistance.value - own.value,
        Math.hypot(circuitResistance.standardError, own.error),
        reach,
      ),
    }),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
  };
}
