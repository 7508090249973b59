import { type Warning, warning } from '../facts/warning.ts';
import type { LeastSquaresFit } from '../numerics/levenberg-marquardt.ts';
import { normalQuantile } from '../numerics/normal.ts';

/**
 * The 95 % point of χ² for ν degrees of freedom, infinite without any. Wilson and Hilferty, The distribution of
 * chi-square, PNAS 17 (1931).
 */
export function chiSquarePoint(degrees: number): number {
  if (!(degrees > 0)) return Number.POSITIVE_INFINITY;
  const spread = 2 / (9 * degrees);
  return degrees * (1 - spread + normalQuantile(0.95) * Math.sqrt(spread)) ** 3;
}

/**
 * The covariance of a fit whose residuals were divided by known standard errors. Readings that scatter more than these
 * say so and widen it; it never becomes narrower.
 * @returns standard error of each unknown, the covariance row by row, and what is to be warned of
 */
export function knownErrorsOf({ gram, sumOfSquares, degreesOfFreedom, x }: LeastSquaresFit): {
  covariance: Float64Array;
  errors: Float64Array;
  warnings: readonly Warning[];
} {
  const excess = sumOfSquares > chiSquarePoint(degreesOfFreedom);
  const scale = excess ? sumOfSquares / degreesOfFreedom : 1;
  const covariance = gram.map((value) => value * scale);
  const warnings: readonly Warning[] = excess
    ? [warning('measure.scatter-above-errors', { times: Math.sqrt(scale) })]
    : [];
  return {
    covariance,
    errors: Float64Array.from(x, (_, j) => Math.sqrt(covariance[j * x.length + j])),
    warnings,
  };
}

/** Variance of Σ gradient·unknown. */
export function varianceOf(gradient: readonly number[], covariance: ArrayLike<number>): number {
  const n = gradient.length;
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += gradient[i] * gradient[j] * covariance[i * n + j];
  return sum;
}
