import { list, number, object, words } from '../fields/fields.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import { placeOf, placeText } from './assumed.ts';

const MOST_CORRELATIONS = 500;

const place = words('correlation.figure', 120);

/**
 * How errors of measured values go together that come from the same readings: of capacitances and levels as they are, of
 * all else of its logarithm.
 */
export const correlations = list(
  'set.correlations',
  'correlations',
  object({ first: place, second: place, correlation: number('correlation.value', -1, 1) }),
  { max: MOST_CORRELATIONS },
);

/** How the errors of two measured values go together, −1 to 1. */
export interface MeasuredCorrelation {
  /** Where the measured values stand. */
  readonly first: Path;
  readonly second: Path;
  readonly correlation: number;
}

/**
 * How the errors of two measured values go together.
 * @param all that are known
 * @param a where the one stands
 * @param b where the other stands; which is first does not matter
 * @returns −1 to 1: 1 for one value with itself, 0 where nothing is known of the two
 */
export const correlationBetween = (all: readonly MeasuredCorrelation[], a: Path, b: Path): number =>
  samePath(a, b) ? 1 : (all.find((one) => isOf(one, a, b))?.correlation ?? 0);

const isOf = ({ first, second }: MeasuredCorrelation, a: Path, b: Path): boolean =>
  (samePath(first, a) && samePath(second, b)) || (samePath(first, b) && samePath(second, a));

const MEASURED = 'measured';

/** Such as "coils[0].inductance" for the measured inductance of the first coil. */
const figureText = (path: Path): string => placeText(path.filter((key) => key !== MEASURED));
/** Where the measured value stands that an entry names. @param text such as "coils[0].inductance" */
export const measuredPath = (text: string): Path => {
  const path = placeOf(text);
  return [...path.slice(0, -1), MEASURED, ...path.slice(-1)];
};

/**
 * As a description has them.
 * @param all correlations
 * @returns one entry for each
 */
export const writtenCorrelations = (all: readonly MeasuredCorrelation[]) =>
  all.map(({ first, second, correlation }) => ({
    first: figureText(first),
    second: figureText(second),
    correlation: Number(correlation.toFixed(4)),
  }));

/**
 * The same as read.
 * @param entries of a description
 * @returns with the places where the measured values stand
 */
export const readCorrelations = (
  entries: readonly { readonly first: string; readonly second: string; readonly correlation: number }[] = [],
): readonly MeasuredCorrelation[] =>
  entries.map(({ first, second, correlation }) => ({
    first: measuredPath(first),
    second: measuredPath(second),
    correlation,
  }));
