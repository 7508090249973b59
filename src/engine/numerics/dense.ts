/** Small dense matrices, row by row in Float64Array. Sizes are given because a matrix here may have no rows or columns. */

/** A (r×k) · B (k×c). */
export function multiplyDense(A: Float64Array, B: Float64Array, r: number, k: number, c: number): Float64Array {
  const out = new Float64Array(r * c);
  for (let i = 0; i < r; i++) {
    for (let m = 0; m < k; m++) {
      const a = A[i * k + m];
      if (a === 0) continue;
      for (let j = 0; j < c; j++) out[i * c + j] += a * B[m * c + j];
    }
  }
  return out;
}

/** Aᵀ, A being r×c. */
export function transposeDense(A: Float64Array, r: number, c: number): Float64Array {
  const out = new Float64Array(r * c);
  for (let i = 0; i < r; i++) for (let j = 0; j < c; j++) out[j * r + i] = A[i * c + j];
  return out;
}

/** A + k·B, entry by entry. */
export const addDense = (A: Float64Array, B: Float64Array, k = 1): Float64Array => A.map((a, i) => a + k * B[i]);

export const scaleDense = (A: Float64Array, k: number): Float64Array => A.map((a) => a * k);
