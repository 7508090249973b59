/** A tall matrix as orthogonal times triangular: what least squares need of it. */
export interface Triangle {
  /** n×n, upper triangular, row by row. */
  readonly R: Float64Array;
  /** The first n of Qᵀ·b. */
  readonly target: Float64Array;
  readonly n: number;
}

/**
 * Householder's reduction of A·x ≈ b. Works in place.
 * @param A m×n row by row, m ≥ n; overwritten. @param b m values; overwritten.
 * Source: Golub and Van Loan, Matrix Computations, 5.2.
 */
export function reduceToTriangle(A: Float64Array, b: Float64Array, n: number): Triangle {
  const m = b.length;
  if (!(m >= n)) throw new RangeError(`${m} equations cannot settle ${n} unknowns`);
  for (let k = 0; k < n; k++) {
    let norm = 0;
    for (let i = k; i < m; i++) norm = Math.hypot(norm, A[i * n + k]);
    if (norm === 0) continue;
    const alpha = A[k * n + k] > 0 ? -norm : norm;
    // v = column − alpha·e, scaled by its first entry; it takes the place of the column.
    const first = A[k * n + k] - alpha;
    for (let i = k + 1; i < m; i++) A[i * n + k] /= first;
    const beta = -first / alpha;
    for (let j = k + 1; j <= n; j++) {
      const at = (i: number) => (j < n ? A[i * n + j] : b[i]);
      let s = at(k);
      for (let i = k + 1; i < m; i++) s += A[i * n + k] * at(i);
      s *= beta;
      if (j < n) {
        A[k * n + j] -= s;
        for (let i = k + 1; i < m; i++) A[i * n + j] -= s * A[i * n + k];
      } else {
        b[k] -= s;
        for (let i = k + 1; i < m; i++) b[i] -= s * A[i * n + k];
      }
    }
    A[k * n + k] = alpha;
  }
  const R = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = i; j < n; j++) R[i * n + j] = A[i * n + j];
  return { R, target: b.slice(0, n), n };
}

/** x of R·x = target; infinite or NaN where R is singular. */
export function solveTriangle({ R, target, n }: Triangle): Float64Array {
  const x = target.slice();
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) x[i] -= R[i * n + j] * x[j];
    x[i] /= R[i * n + i];
  }
  return x;
}

/** (RᵀR)⁻¹, n×n row by row: the covariance of a fit for unit variance of its readings. */
export function inverseGram({ R, n }: Triangle): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    for (let i = column; i >= 0; i--) {
      let s = i === column ? 1 : 0;
      for (let j = i + 1; j <= column; j++) s -= R[i * n + j] * inverse[j * n + column];
      inverse[i * n + column] = s / R[i * n + i];
    }
  }
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      for (let k = Math.max(i, j); k < n; k++) gram[i * n + j] += inverse[i * n + k] * inverse[j * n + k];
  return gram;
}

/**
 * Linear least squares by QR, columns scaled to unit length (they may be many decades apart).
 * @param rows m×n row by row. @param target m values.
 * @returns the n unknowns, their covariance for unit variance of the target (n×n), and target − rows·x.
 */
export function linearLeastSquares(
  rows: ArrayLike<number>,
  target: ArrayLike<number>,
  n: number,
): {
  x: Float64Array;
  gram: Float64Array;
  residuals: Float64Array;
} {
  const m = target.length;
  const size = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < m; i++) size[j] = Math.hypot(size[j], rows[i * n + j]);
    size[j] ||= 1;
  }
  const triangle = reduceToTriangle(
    Float64Array.from(rows, (value, at) => value / size[at % n]),
    Float64Array.from(target),
    n,
  );
  const x = solveTriangle(triangle).map((value, j) => value / size[j]);
  const gram = inverseGram(triangle).map((value, at) => value / (size[Math.floor(at / n)] * size[at % n]));
  const residuals = Float64Array.from(target, (value, i) => {
    for (let j = 0; j < n; j++) value -= rows[i * n + j] * x[j];
    return value;
  });
  return { x, gram, residuals };
}
