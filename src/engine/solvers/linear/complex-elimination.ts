/**
 * Gaussian elimination with row pivoting on interleaved complex arrays, row by row; `right` becomes the solution.
 * Networks are sparse: only the columns where the pivot's row holds something are worked on.
 * @param n unknowns. @param columns right sides. @param free unknowns before this one may be left at 0 when no equation
 * holds them. @throws RangeError when one of the others is left without an equation.
 */
export function eliminateComplex(m: Float64Array, right: Float64Array, n: number, columns: number, free: number): void {
  for (let k = 0; k < n; k++) {
    const pivot = pivotOf(m, n, k);
    if (pivot < 0) {
      if (k >= free) throw new RangeError('the circuit has no single solution: sources or lossless coils form a loop');
      m[2 * (k * n + k)] = 1;
      continue;
    }
    if (pivot !== k) {
      swapRows(m, 2 * n, k, pivot, 2 * k);
      swapRows(right, 2 * columns, k, pivot, 0);
    }
    clearBelow(m, right, n, columns, k);
  }
  substituteBack(m, right, n, columns);
}

/** The row with the largest entry in column k from row k on; -1 when there is none. */
function pivotOf(m: Float64Array, n: number, k: number): number {
  let pivot = -1;
  let largest = 0;
  for (let i = k; i < n; i++) {
    const at = 2 * (i * n + k);
    const size = Math.abs(m[at]) + Math.abs(m[at + 1]);
    if (size > largest) {
      largest = size;
      pivot = i;
    }
  }
  return pivot;
}

function swapRows(m: Float64Array, width: number, a: number, b: number, from: number): void {
  for (let j = from; j < width; j++) {
    const t = m[a * width + j];
    m[a * width + j] = m[b * width + j];
    m[b * width + j] = t;
  }
}

/** Columns of a pivot's row that hold something; as wide as the widest network met. */
let store = new Int32Array(64);
function columnsHeld(row: Float64Array, start: number, from: number, to: number, into: number): number {
  let count = into;
  for (let j = from; j < to; j++) {
    const at = start + 2 * j;
    if (row[at] !== 0 || row[at + 1] !== 0) store[count++] = 2 * j;
  }
  return count;
}

function clearBelow(m: Float64Array, right: Float64Array, n: number, columns: number, k: number): void {
  if (store.length < n + columns) store = new Int32Array(2 * (n + columns));
  const own = 2 * k * n;
  const ownRight = 2 * k * columns;
  const inMatrix = columnsHeld(m, own, k + 1, n, 0);
  const inAll = columnsHeld(right, ownRight, 0, columns, inMatrix);
  const pr = m[own + 2 * k];
  const pi = m[own + 2 * k + 1];
  const d = pr * pr + pi * pi;
  const ir = pr / d;
  const ii = -pi / d;
  for (let i = k + 1; i < n; i++) {
    const row = 2 * i * n;
    const br = m[row + 2 * k];
    const bi = m[row + 2 * k + 1];
    if (br === 0 && bi === 0) continue;
    const fr = br * ir - bi * ii;
    const fi = br * ii + bi * ir;
    for (let c = 0; c < inMatrix; c++) {
      const s = own + store[c];
      const t = row + store[c];
      m[t] -= fr * m[s] - fi * m[s + 1];
      m[t + 1] -= fr * m[s + 1] + fi * m[s];
    }
    const rowRight = 2 * i * columns;
    for (let c = inMatrix; c < inAll; c++) {
      const s = ownRight + store[c];
      const t = rowRight + store[c];
      right[t] -= fr * right[s] - fi * right[s + 1];
      right[t + 1] -= fr * right[s + 1] + fi * right[s];
    }
  }
}

function substituteBack(m: Float64Array, right: Float64Array, n: number, columns: number): void {
  for (let k = n - 1; k >= 0; k--) {
    const own = 2 * k * columns;
    for (let j = k + 1; j < n; j++) {
      const a = 2 * (k * n + j);
      const re = m[a];
      const im = m[a + 1];
      if (re === 0 && im === 0) continue;
      const other = 2 * j * columns;
      for (let c = 0; c < 2 * columns; c += 2) {
        right[own + c] -= re * right[other + c] - im * right[other + c + 1];
        right[own + c + 1] -= re * right[other + c + 1] + im * right[other + c];
      }
    }
    const pr = m[2 * (k * n + k)];
    const pi = m[2 * (k * n + k) + 1];
    const d = pr * pr + pi * pi;
    for (let c = own; c < own + 2 * columns; c += 2) {
      const re = right[c];
      const im = right[c + 1];
      right[c] = (re * pr + im * pi) / d;
      right[c + 1] = (im * pr - re * pi) / d;
    }
  }
}
