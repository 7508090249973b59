import { normalQuantile } from '../numerics/normal.ts';
import { studentQuantile } from '../numerics/student-t.ts';

/** A measured figure, SI. */
export interface Fitted {
  readonly value: number;
  /** One standard deviation. */
  readonly standardError: number;
  /** 90 %; an end may be infinite where the readings set none. */
  readonly range: readonly [number, number];
}

const ONE_SIDED = 0.95;

/**
 * How many standard errors a 90 % range reaches to each side.
 * @param degrees degrees of freedom that the standard error rests on; left out where it is known beforehand.
 */
export const reachOf = (degrees?: number): number =>
  degrees === undefined ? normalQuantile(ONE_SIDED) : studentQuantile(ONE_SIDED, degrees);

/** NaN where a matrix was singular: nothing is known. */
const known = (standardError: number): number => (standardError >= 0 ? standardError : Number.POSITIVE_INFINITY);

/** A figure fitted as it is. */
export function fitted(value: number, standardError: number, reach: number): Fitted {
  const s = known(standardError);
  return { value, standardError: s, range: [value - reach * s, value + reach * s] };
}

/** A positive figure fitted as its logarithm: its range is a factor each way. */
export function fittedLogarithm(logarithm: number, standardError: number, reach: number): Fitted {
  const [value, s] = [Math.exp(logarithm), known(standardError)];
  return { value, standardError: value * s, range: [value * Math.exp(-reach * s), value * Math.exp(reach * s)] };
}

/**
 * The standard error that would give the same range were it known beforehand: few readings do not settle their scatter.
 * @param fitted of which the range is 90 %
 * @returns in its own unit
 */
export function asKnown({ value, standardError, range: [low, high] }: Fitted): number {
  const reach = low > 0 ? Math.log(high / low) / (2 * reachOf()) : (high - low) / (2 * reachOf() * value);
  const wider = (reach * value) / standardError;
  return Number.isFinite(wider) && wider > 1 ? wider * standardError : standardError;
}
