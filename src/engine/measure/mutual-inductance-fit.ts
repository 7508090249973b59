import { type Warning, warning } from '../facts/warning.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { knownErrorsOf, varianceOf } from './known-errors.ts';
import { UnfitReadings } from './unfit.ts';

export interface SeriesInductances {
  /** Both coils in series, their fields in the same and in opposite directions, H. */
  readonly aiding: number;
  readonly opposing: number;
  /** Each coil alone, the other open, H. */
  readonly first?: number;
  readonly second?: number;
  /** Standard error of each reading as a share of it. Default 1 %. */
  readonly error?: number;
}

export interface MutualInductanceFit {
  readonly mutualInductance: Fitted;
  /** Only where both coils were measured alone. */
  readonly couplingCoefficient?: Fitted;
  readonly warnings: readonly Warning[];
}

const ERROR = 0.01;

/**
 * Mutual inductance of two coils from their inductance in series: M = (La − Lo)/4; with each coil measured alone all four
 * readings are fitted, and the coupling coefficient follows.
 * @returns mutual inductance (H) and coupling coefficient, each with its standard error and range by the error given
 * @throws UnfitReadings where aiding is not above opposing, or no such coils could be
 */
export function fitMutualInductance({
  aiding,
  opposing,
  first,
  second,
  error = ERROR,
}: SeriesInductances): MutualInductanceFit {
  if (!(aiding > opposing)) throw new UnfitReadings({ code: 'aiding-not-above-opposing' });
  const unseen = (M: Fitted) => (M.range[0] > 0 ? [] : [warning('measure.coupling-unseen', { most: M.range[1] })]);
  if (first === undefined || second === undefined) {
    const M = fitted((aiding - opposing) / 4, (error * Math.hypot(aiding, opposing)) / 4, reachOf());
    return { mutualInductance: M, warnings: unseen(M) };
  }
  const whole = (aiding + opposing) / 2;
  const fit = leastSquares(
    ([lnFirst, lnSecond, share]) => {
      const [L1, L2, M] = [Math.exp(lnFirst), Math.exp(lnSecond), share * whole];
      return [
        Math.log(first) - lnFirst,
        Math.log(second) - lnSecond,
        Math.log(aiding / (L1 + L2 + 2 * M)),
        Math.log(opposing / (L1 + L2 - 2 * M)),
      ].map((residual) => residual / error);
    },
    [Math.log(first), Math.log(second), Math.min((aiding - opposing) / 4 / whole, (0.4 * (first + second)) / whole)],
    { scales: [1, 1, 1] },
  );
  const { covariance, errors, warnings } = knownErrorsOf(fit);
  const [lnFirst, lnSecond, share] = fit.x;
  const k = (share * whole) / Math.exp((lnFirst + lnSecond) / 2);
  if (!(k < 1)) throw new UnfitReadings({ code: 'coupling-above-one' });
  const mutualInductance = fitted(share * whole, errors[2] * whole, reachOf());
  return {
    mutualInductance,
    couplingCoefficient: fitted(k, Math.sqrt(varianceOf([-k / 2, -k / 2, k / share], covariance)), reachOf()),
    warnings: [...warnings, ...unseen(mutualInductance)],
  };
}
