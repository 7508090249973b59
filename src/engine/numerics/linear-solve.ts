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
  const pivots = pivotsOf(n);
  const failed = factorise(matrix, n, pivots, 1e-14 * largest);
  if (failed >= 0) throw new SingularEquations(`no pivot in column ${failed + 1} of ${n}`);
  for (const b of rightSides) substitute(matrix, n, pivots, b);
}

/** Room for the rows that stood as pivots, as wide as the widest system met. */
let room = new Int32Array(64);
function pivotsOf(n: number): Int32Array {
  if (room.length < n) room = new Int32Array(2 * n);
  return room;
}

/**
 * Factors of a matrix by elimination with row pivots, for any number of right sides.
 * @param matrix n×n, row by row; it is overwritten @param pivots n of them are written @param least what no pivot may be under
 * @returns the first column without a pivot; -1 where every one has
 */
export function factorise(matrix: Float64Array, n: number, pivots: Int32Array, least: number): number {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(matrix[i * n + k]) > Math.abs(matrix[pivot * n + k])) pivot = i;
    if (!(Math.abs(matrix[pivot * n + k]) > least)) return k;
    pivots[k] = pivot;
    const own = k * n;
    if (pivot !== k) {
      const other = pivot * n;
      for (let j = k; j < n; j++) {
        const swap = matrix[own + j];
        matrix[own + j] = matrix[other + j];
        matrix[other + j] = swap;
      }
    }
    const inverse = 1 / matrix[own + k];
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      const factor = matrix[row + k] * inverse;
      matrix[row + k] = factor;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[row + j] -= factor * matrix[own + j];
    }
  }
  return -1;
}

/** Overwrites a right side with its solution. @param factors, pivots as `factorise` left them */
export function substitute(factors: Float64Array, n: number, pivots: Int32Array, right: Float64Array): void {
  for (let k = 0; k < n; k++) {
    const pivot = pivots[k];
    const value = right[pivot];
    right[pivot] = right[k];
    right[k] = value;
    if (value !== 0) for (let i = k + 1; i < n; i++) right[i] -= factors[i * n + k] * value;
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    let sum = right[i];
    for (let j = i + 1; j < n; j++) sum -= factors[row + j] * right[j];
    right[i] = sum / factors[row + i];
  }
}

/** As `solveInPlace` for one right side, leaving what it is given untouched. @returns x. */
export function solveLinear(matrix: Float64Array, rightSide: Float64Array): Float64Array {
  const x = rightSide.slice();
  solveInPlace(matrix.slice(), x);
  return x;
}
