/** Two figures of one fit by their names, and the correlation of their errors, −1 to 1. */
export interface FigureCorrelation {
  readonly between: readonly [string, string];
  readonly correlation: number;
}

/**
 * How the errors of a fit's unknowns go together.
 * @param names of the unknowns, in their order: all, or the first of them
 * @param covariance row by row
 * @param n unknowns in all
 * @returns one for each two of them
 */
export function correlationsOf(
  names: readonly string[],
  covariance: ArrayLike<number>,
  n = names.length,
): readonly FigureCorrelation[] {
  return names.flatMap((first, i) =>
    names.slice(i + 1).flatMap((second, k): FigureCorrelation[] => {
      const j = i + 1 + k;
      const correlation = covariance[i * n + j] / Math.sqrt(covariance[i * n + i] * covariance[j * n + j]);
      return Number.isFinite(correlation) ? [{ between: [first, second], correlation }] : [];
    }),
  );
}
