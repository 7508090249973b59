import { type ComplexMatrix, complexMatrix } from './lu-complex.ts';

/** λ and the matrix whose columns are the eigenvectors, each of unit length. */
export interface Eigen {
  readonly values: ComplexMatrix;
  readonly vectors: ComplexMatrix;
}

/**
 * Eigenvalues and eigenvectors of a real square matrix, by the complex shifted QR algorithm on its Hessenberg form
 * (Golub and Van Loan, Matrix Computations, 4th ed., 7.4-7.6).
 * @param matrix n×n row by row, left untouched. Balance it first when its entries span many decades.
 * @throws RangeError when the matrix holds something that is not a finite number, or the iteration does not settle.
 */
export function eigen(matrix: Float64Array, n: number): Eigen {
  if (!matrix.every(Number.isFinite)) throw new RangeError('eigenvalues need a matrix of finite numbers');
  const H = complexMatrix(n * n);
  H.re.set(matrix.subarray(0, n * n));
  const U = complexMatrix(n * n);
  for (let i = 0; i < n; i++) U.re[i * n + i] = 1;
  toHessenberg(H, U, n);
  toSchur(H, U, n);
  return { values: diagonal(H, n), vectors: schurVectors(H, U, n) };
}

function diagonal(H: ComplexMatrix, n: number): ComplexMatrix {
  const values = complexMatrix(n);
  for (let i = 0; i < n; i++) {
    values.re[i] = H.re[i * n + i];
    values.im[i] = H.im[i * n + i];
  }
  return values;
}

/** Rotate rows i, k of M (from column `from`): [c s; −s̄ c], c real. */
function rotateRows(
  M: ComplexMatrix,
  n: number,
  i: number,
  k: number,
  c: number,
  sr: number,
  si: number,
  from: number,
) {
  for (let j = from; j < n; j++) {
    const a = i * n + j;
    const b = k * n + j;
    const xr = M.re[a];
    const xi = M.im[a];
    const yr = M.re[b];
    const yi = M.im[b];
    M.re[a] = c * xr + sr * yr - si * yi;
    M.im[a] = c * xi + sr * yi + si * yr;
    M.re[b] = c * yr - (sr * xr + si * xi);
    M.im[b] = c * yi - (sr * xi - si * xr);
  }
}

/** The matching rotation of columns i, k of rows 0…to−1, by the conjugate transpose. */
function rotateColumns(
  M: ComplexMatrix,
  n: number,
  i: number,
  k: number,
  c: number,
  sr: number,
  si: number,
  to: number,
) {
  for (let j = 0; j < to; j++) {
    const a = j * n + i;
    const b = j * n + k;
    const xr = M.re[a];
    const xi = M.im[a];
    const yr = M.re[b];
    const yi = M.im[b];
    M.re[a] = c * xr + sr * yr + si * yi;
    M.im[a] = c * xi + sr * yi - si * yr;
    M.re[b] = c * yr - (sr * xr - si * xi);
    M.im[b] = c * yi - (sr * xi + si * xr);
  }
}

/** c (real) and s with [c s; −s̄ c]·[x; y] = [r; 0]. Written into `out`: c, Re s, Im s. */
function givens(xr: number, xi: number, yr: number, yi: number, out: Float64Array): void {
  const x = Math.hypot(xr, xi);
  const y = Math.hypot(yr, yi);
  const r = Math.hypot(x, y);
  if (r === 0 || y === 0) {
    out[0] = 1;
    out[1] = out[2] = 0;
    return;
  }
  if (x === 0) {
    out[0] = 0;
    out[1] = yr / y;
    out[2] = -yi / y;
    return;
  }
  out[0] = x / r;
  // s = x/|x|·ȳ/r
  const ur = xr / x;
  const ui = xi / x;
  out[1] = (ur * yr + ui * yi) / r;
  out[2] = (ui * yr - ur * yi) / r;
}

function toHessenberg(H: ComplexMatrix, U: ComplexMatrix, n: number): void {
  const g = new Float64Array(3);
  for (let k = 0; k < n - 2; k++) {
    for (let i = n - 1; i > k + 1; i--) {
      const a = (i - 1) * n + k;
      const b = i * n + k;
      if (H.re[b] === 0 && H.im[b] === 0) continue;
      givens(H.re[a], H.im[a], H.re[b], H.im[b], g);
      rotateRows(H, n, i - 1, i, g[0], g[1], g[2], k);
      rotateColumns(H, n, i - 1, i, g[0], g[1], g[2], n);
      rotateColumns(U, n, i - 1, i, g[0], g[1], g[2], n);
      H.re[b] = H.im[b] = 0;
    }
  }
}

function toSchur(H: ComplexMatrix, U: ComplexMatrix, n: number): void {
  const g = new Float64Array(3 * n);
  const size = (i: number, j: number) => Math.abs(H.re[i * n + j]) + Math.abs(H.im[i * n + j]);
  let norm = 0;
  for (let i = 0; i < n * n; i++) norm = Math.max(norm, Math.abs(H.re[i]) + Math.abs(H.im[i]));
  let high = n - 1;
  let turns = 0;
  while (high > 0) {
    let low = high;
    while (low > 0) {
      const scale = size(low, low) + size(low - 1, low - 1);
      if (size(low, low - 1) <= 2.3e-16 * scale || size(low, low - 1) <= 1e-22 * norm) {
        H.re[low * n + low - 1] = H.im[low * n + low - 1] = 0;
        break;
      }
      low--;
    }
    if (low === high) {
      high--;
      turns = 0;
      continue;
    }
    if (++turns > 200) throw new RangeError('the eigenvalues of this network could not be found');
    const [sr, si] = turns % 20 === 0 ? [H.re[high * n + high] + size(high, high - 1), 0] : wilkinsonShift(H, n, high);
    for (let i = 0; i <= high; i++) {
      H.re[i * n + i] -= sr;
      H.im[i * n + i] -= si;
    }
    for (let i = low; i < high; i++) {
      const a = i * n + i;
      const b = (i + 1) * n + i;
      const turn = g.subarray(3 * i, 3 * i + 3);
      givens(H.re[a], H.im[a], H.re[b], H.im[b], turn);
      rotateRows(H, n, i, i + 1, turn[0], turn[1], turn[2], i);
      H.re[b] = H.im[b] = 0;
    }
    for (let i = low; i < high; i++) {
      rotateColumns(H, n, i, i + 1, g[3 * i], g[3 * i + 1], g[3 * i + 2], Math.min(i + 2, high + 1));
      rotateColumns(U, n, i, i + 1, g[3 * i], g[3 * i + 1], g[3 * i + 2], n);
    }
    for (let i = 0; i <= high; i++) {
      H.re[i * n + i] += sr;
      H.im[i * n + i] += si;
    }
  }
}

/** The eigenvalue of the last 2×2 block that is nearer to its last entry. */
function wilkinsonShift(H: ComplexMatrix, n: number, k: number): [number, number] {
  const at = (i: number, j: number): [number, number] => [H.re[i * n + j], H.im[i * n + j]];
  const [ar, ai] = at(k - 1, k - 1);
  const [br, bi] = at(k - 1, k);
  const [cr, ci] = at(k, k - 1);
  const [dr, di] = at(k, k);
  const hr = (ar - dr) / 2;
  const hi = (ai - di) / 2;
  const scale = Math.max(
    Math.abs(hr) + Math.abs(hi),
    Math.sqrt((Math.abs(br) + Math.abs(bi)) * (Math.abs(cr) + Math.abs(ci))),
  );
  if (scale === 0) return [dr, di];
  const qr = (hr / scale) ** 2 - (hi / scale) ** 2 + ((br / scale) * cr - (bi / scale) * ci) / scale;
  const qi = (2 * (hr / scale) * hi) / scale + ((br / scale) * ci + (bi / scale) * cr) / scale;
  const m = Math.hypot(qr, qi);
  let rr = Math.sqrt((m + Math.abs(qr)) / 2);
  let ri = rr === 0 ? 0 : Math.abs(qi) / (2 * rr);
  if (qr < 0) [rr, ri] = [ri, rr];
  if (qi < 0) ri = -ri;
  // d − bc/(h ± √(h² + bc)), the sign that makes the denominator large
  const sign = hr * rr + hi * ri >= 0 ? 1 : -1;
  const er = hr + sign * rr * scale;
  const ei = hi + sign * ri * scale;
  const den = er * er + ei * ei;
  if (!(den > 0)) return [dr, di];
  const pr = br * cr - bi * ci;
  const pi = br * ci + bi * cr;
  return [dr - (pr * er + pi * ei) / den, di - (pi * er - pr * ei) / den];
}

/** Back-substitution in the triangular factor, then back to the original coordinates. */
function schurVectors(T: ComplexMatrix, U: ComplexMatrix, n: number): ComplexMatrix {
  const V = complexMatrix(n * n);
  const yr = new Float64Array(n);
  const yi = new Float64Array(n);
  let norm = 0;
  for (let i = 0; i < n * n; i++) norm = Math.max(norm, Math.abs(T.re[i]) + Math.abs(T.im[i]));
  const least = Math.max(1e-140, 1e-18 * norm);
  for (let k = 0; k < n; k++) {
    yr.fill(0);
    yi.fill(0);
    yr[k] = 1;
    for (let i = k - 1; i >= 0; i--) {
      let sr = 0;
      let si = 0;
      for (let j = i + 1; j <= k; j++) {
        sr -= T.re[i * n + j] * yr[j] - T.im[i * n + j] * yi[j];
        si -= T.re[i * n + j] * yi[j] + T.im[i * n + j] * yr[j];
      }
      let dr = T.re[i * n + i] - T.re[k * n + k];
      const di = T.im[i * n + i] - T.im[k * n + k];
      if (Math.abs(dr) + Math.abs(di) < least) dr = least;
      const d = dr * dr + di * di;
      yr[i] = (sr * dr + si * di) / d;
      yi[i] = (si * dr - sr * di) / d;
    }
    let length = 0;
    for (let i = 0; i < n; i++) {
      let vr = 0;
      let vi = 0;
      for (let j = 0; j <= k; j++) {
        vr += U.re[i * n + j] * yr[j] - U.im[i * n + j] * yi[j];
        vi += U.re[i * n + j] * yi[j] + U.im[i * n + j] * yr[j];
      }
      V.re[i * n + k] = vr;
      V.im[i * n + k] = vi;
      length = Math.hypot(length, vr, vi);
    }
    for (let i = 0; i < n; i++) {
      V.re[i * n + k] /= length;
      V.im[i * n + k] /= length;
    }
  }
  return V;
}
