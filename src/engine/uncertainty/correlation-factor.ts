import { cholesky } from '../numerics/cholesky.ts';

/**
 * The factor of correlations by which deviates that go together are drawn from independent ones: R with RᵀR the matrix.
 * Correlations rounded in a file may contradict each other a little: they are weakened until they do not.
 * @param matrix row by row, 1 along its diagonal
 * @param n rows
 * @returns R, upper, row by row: column j has the shares of deviate j in the independent ones
 */
export function correlationFactor(matrix: Float64Array, n: number): Float64Array {
  for (let weaker = 1; ; weaker *= 0.98) {
    const R = cholesky(
      matrix.map((c, k) => (Math.floor(k / n) === k % n ? c : weaker * c)),
      n,
      1e-6,
    );
    if (R) return R;
  }
}
