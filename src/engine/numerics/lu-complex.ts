/** A square complex matrix or a set of columns, row by row, real and imaginary parts apart. */
export interface ComplexMatrix {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export const complexMatrix = (length: number): ComplexMatrix => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});

/**
 * Solve A·X = B in place by elimination with partial pivoting; A is overwritten.
 * @param columns number of right sides in B (n × columns, row by row).
 * @returns false when a pivot vanishes altogether; B is then not a solution.
 */
export function solveComplexInPlace(A: ComplexMatrix, n: number, B: ComplexMatrix, columns: number): boolean {
  const { re: ar, im: ai } = A;
  const { re: br, im: bi } = B;
  const swap = (m: Float64Array, i: number, j: number) => {
    const swap = m[i];
    m[i] = m[j];
    m[j] = swap;
  };
  for (let k = 0; k < n; k++) {
    let pivot = k;
    let best = -1;
    for (let i = k; i < n; i++) {
      const size = Math.abs(ar[i * n + k]) + Math.abs(ai[i * n + k]);
      if (size > best) {
        best = size;
        pivot = i;
      }
    }
    if (!(best > 0)) return false;
    if (pivot !== k) {
      for (let j = 0; j < n; j++) {
        swap(ar, k * n + j, pivot * n + j);
        swap(ai, k * n + j, pivot * n + j);
      }
      for (let j = 0; j < columns; j++) {
        swap(br, k * columns + j, pivot * columns + j);
        swap(bi, k * columns + j, pivot * columns + j);
      }
    }
    const pr = ar[k * n + k];
    const pi = ai[k * n + k];
    const d = 1 / (pr * pr + pi * pi);
    for (let i = k + 1; i < n; i++) {
      const xr = ar[i * n + k];
      const xi = ai[i * n + k];
      if (xr === 0 && xi === 0) continue;
      const fr = (xr * pr + xi * pi) * d;
      const fi = (xi * pr - xr * pi) * d;
      for (let j = k + 1; j < n; j++) {
        const yr = ar[k * n + j];
        const yi = ai[k * n + j];
        ar[i * n + j] -= fr * yr - fi * yi;
        ai[i * n + j] -= fr * yi + fi * yr;
      }
      for (let j = 0; j < columns; j++) {
        const yr = br[k * columns + j];
        const yi = bi[k * columns + j];
        br[i * columns + j] -= fr * yr - fi * yi;
        bi[i * columns + j] -= fr * yi + fi * yr;
      }
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const pr = ar[k * n + k];
    const pi = ai[k * n + k];
    const d = 1 / (pr * pr + pi * pi);
    for (let j = 0; j < columns; j++) {
      let sr = br[k * columns + j];
      let si = bi[k * columns + j];
      for (let m = k + 1; m < n; m++) {
        const yr = br[m * columns + j];
        const yi = bi[m * columns + j];
        sr -= ar[k * n + m] * yr - ai[k * n + m] * yi;
        si -= ar[k * n + m] * yi + ai[k * n + m] * yr;
      }
      br[k * columns + j] = (sr * pr + si * pi) * d;
      bi[k * columns + j] = (si * pr - sr * pi) * d;
    }
  }
  return true;
}
