/**
 * Cholesky factor of a symmetric positive definite matrix, A = Rᵀ·R with R upper triangular.
 * @param matrix n×n row by row; left untouched.
 * @param least smallest part of a diagonal entry that may be left after elimination. Default 1e-13.
 * @returns R row by row, or undefined when the matrix is not positive definite to that precision.
 */
export function cholesky(matrix: Float64Array, n: number, least = 1e-13): Float64Array | undefined {
  const R = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    let d = matrix[i * n + i];
    for (let k = 0; k < i; k++) d -= R[k * n + i] ** 2;
    if (!(d > least * matrix[i * n + i])) return undefined;
    const root = Math.sqrt(d);
    R[i * n + i] = root;
    for (let j = i + 1; j < n; j++) {
      let s = matrix[i * n + j];
      for (let k = 0; k < i; k++) s -= R[k * n + i] * R[k * n + j];
      R[i * n + j] = s / root;
    }
  }
  return R;
}

/** Solve Rᵀ·X = B in place for the `columns` columns of B (row by row), R upper triangular. */
export function solveTransposedUpper(R: Float64Array, n: number, B: Float64Array, columns: number): void {
  for (let c = 0; c < columns; c++) {
    for (let i = 0; i < n; i++) {
      let s = B[i * columns + c];
      for (let k = 0; k < i; k++) s -= R[k * n + i] * B[k * columns + c];
      B[i * columns + c] = s / R[i * n + i];
    }
  }
}

/** Solve R·X = B in place for the `columns` columns of B (row by row), R upper triangular. */
export function solveUpper(R: Float64Array, n: number, B: Float64Array, columns: number): void {
  for (let c = 0; c < columns; c++) {
    for (let i = n - 1; i >= 0; i--) {
      let s = B[i * columns + c];
      for (let k = i + 1; k < n; k++) s -= R[i * n + k] * B[k * columns + c];
      B[i * columns + c] = s / R[i * n + i];
    }
  }
}
