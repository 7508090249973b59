/** Equations that do not settle their unknowns. */
export class SingularEquations extends RangeError {}

/**
 * Solve the real system A·x = b by Gaussian elimination with partial pivoting.
 * @param matrix n×n, row by row; it is overwritten with its factors.
 * @param rightSides one or more vectors of n; each is overwritten with its solution.
 * @throws SingularEquations when the matrix is singular to working precision; RangeError when the sizes disagree.
 */
export function solveInPlace(matrix: Float64Array, ...rightSides: readonly Float64Array[]): void {
  const n = Math.round(Math.sqrt(matrix.length));
  if (!(n * n === matrix.length && rightSides.every((b) => b.length === n))) {
    throw new RangeError(
      `a matrix of ${matrix.length} numbers does not fit right sides of ${rightSides.map((b) => b.length)}`,
    );
  }
  let largest = 0;
  for (let i = 0; i < matrix.length; i++) largest = Math.max(largest, Math.abs(matrix[i]));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(matrix[i * n + k]) > Math.abs(matrix[pivot * n + k])) pivot = i;
    if (!(Math.abs(matrix[pivot * n + k]) > 1e-14 * largest)) {
      throw new SingularEquations(`no pivot in column ${k + 1} of ${n}`);
    }
    if (pivot !== k) {
      for (let j = k; j < n; j++) {
        const swap = matrix[k * n + j];
        matrix[k * n + j] = matrix[pivot * n + j];
        matrix[pivot * n + j] = swap;
      }
      for (const b of rightSides) {
        const swap = b[k];
        b[k] = b[pivot];
        b[pivot] = swap;
      }
    }
    const inverse = 1 / matrix[k * n + k];
    const own = k * n;
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      const factor = matrix[row + k] * inverse;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[row + j] -= factor * matrix[own + j];
      for (let r = 0; r < rightSides.length; r++) rightSides[r][i] -= factor * rightSides[r][k];
    }
  }
  for (const b of rightSides) {
    for (let i = n - 1; i >= 0; i--) {
      let sum = b[i];
      for (let j = i + 1; j < n; j++) sum -= matrix[i * n + j] * b[j];
      b[i] = sum / matrix[i * n + i];
    }
  }
}

/** As `solveInPlace` for one right side, leaving what it is given untouched. @returns x. */
export function solveLinear(matrix: Float64Array, rightSide: Float64Array): Float64Array {
  const x = rightSide.slice();
  solveInPlace(matrix.slice(), x);
  return x;
}
