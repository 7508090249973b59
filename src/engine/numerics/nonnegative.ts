import { solveInPlace } from './linear-solve.ts';

/**
 * Least squares with every coefficient zero or positive, by the active-set method
 * (Lawson and Hanson, Solving Least Squares Problems, chapter 23).
 * @param rows m×n, row by row. @param target m values.
 * @returns n coefficients, none negative.
 */
export function nonNegativeLeastSquares(rows: Float64Array, target: Float64Array, n: number): Float64Array {
  const m = target.length;
  // Columns to unit length: the coefficients may span many decades.
  const size = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < m; i++) size[j] += rows[i * n + j] ** 2;
    size[j] = Math.sqrt(size[j]) || 1;
  }
  const gram = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < n; j++) {
      const a = rows[i * n + j] / size[j];
      right[j] += a * target[i];
      for (let k = 0; k < n; k++) gram[j * n + k] += (a * rows[i * n + k]) / size[k];
    }
  }
  for (let j = 0; j < n; j++) gram[j * n + j] *= 1 + 1e-12;
  const x = new Float64Array(n);
  const free = new Set<number>();
  const within = 1e-12 * Math.max(...right.map(Math.abs), 1e-300);
  for (let turn = 0; turn < 10 * n; turn++) {
    let enter = -1;
    let steepest = within;
    for (let j = 0; j < n; j++) {
      if (free.has(j)) continue;
      let g = right[j];
      for (let k = 0; k < n; k++) g -= gram[j * n + k] * x[k];
      if (g > steepest) {
        steepest = g;
        enter = j;
      }
    }
    if (enter < 0) break;
    free.add(enter);
    while (free.size > 0) {
      const trial = solveFree(gram, right, n, [...free]);
      if (!trial) {
        free.delete(enter);
        break;
      }
      let step = 1;
      let blocker = -1;
      for (const j of free) {
        if (trial[j] > 0) continue;
        const reach = x[j] > trial[j] ? x[j] / (x[j] - trial[j]) : 0;
        if (blocker < 0 || reach < step) {
          step = reach;
          blocker = j;
        }
      }
      if (blocker < 0) step = 1;
      for (const j of free) x[j] = Math.max(0, x[j] + step * (trial[j] - x[j]));
      if (blocker < 0) break;
      x[blocker] = 0;
      free.delete(blocker);
    }
  }
  return x.map((v, j) => v / size[j]);
}

function solveFree(gram: Float64Array, right: Float64Array, n: number, free: number[]): Float64Array | undefined {
  const k = free.length;
  const a = new Float64Array(k * k);
  const b = new Float64Array(k);
  free.forEach((j, i) => {
    b[i] = right[j];
    free.forEach((l, c) => {
      a[i * k + c] = gram[j * n + l];
    });
  });
  try {
    solveInPlace(a, b);
  } catch {
    return undefined;
  }
  const x = new Float64Array(n);
  free.forEach((j, i) => {
    x[j] = b[i];
  });
  return x;
}
