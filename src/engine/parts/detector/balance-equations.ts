import type { Complex } from '../../numerics/complex.ts';
import { realSpectrum, spectrum } from './audio-cycle.ts';
import type { Balance, BalanceWork } from './balance-work.ts';

/** What is left over of every equation, and its slopes by the unknowns, from the currents on the slopes; into F and J. */
export function setEquations(b: Balance, work: BalanceWork): void {
  const { K, C1, C0, a, bb, h, e, i1, i0, A, B, G, E, J, F, size } = work;
  const H = 2 * K;
  spectrum(C1.re, C1.im, K, i1);
  realSpectrum(C0, K, i0);
  realSpectrum(a, H, A);
  spectrum(bb.re, bb.im, H, B);
  spectrum(h.re, h.im, H, G);
  realSpectrum(e, H, E);
  for (let k = -K; k <= K; k++) carrierRow(b, work, k);
  for (let k = 0; k <= K; k++) directRow(b, work, k);
  for (let k = 0; k < size; k++) J[k * size + k] += 1;
  evenRows(J, F, size);
}

/** At the carrier and its sideband k: emf − V − Z·I1 = 0. */
function carrierRow({ emf, source }: Balance, work: BalanceWork, k: number): void {
  const { K, direct: D, x, F, i1, A, B, G } = work;
  const H = 2 * K;
  const z = source[k + K];
  const row = 2 * (k + K);
  const p = i1.re[k + K];
  const q = i1.im[k + K];
  F[row] = emf[k + K].re - x[row] - (z.re * p - z.im * q);
  F[row + 1] = emf[k + K].im - x[row + 1] - (z.re * q + z.im * p);
  for (let l = -K; l <= K; l++) {
    block(work, row, 2 * (l + K), z, A.re[k - l + H], A.im[k - l + H], B.re[k + l + H], B.im[k + l + H], 2, 2);
  }
  block(work, row, D, z, 2 * G.re[k + H], 2 * G.im[k + H], 0, 0, 2, 1);
  for (let l = 1; l <= K; l++) {
    const near = k - l + H;
    const far = k + l + H;
    block(work, row, D + 2 * l - 1, z, 2 * G.re[near], 2 * G.im[near], 2 * G.re[far], 2 * G.im[far], 2, 2);
  }
}

/** At harmonic k of the tone, 0 being direct current: bias − v − Z·I0 = 0. */
function directRow({ load, bias }: Balance, work: BalanceWork, k: number): void {
  const { K, direct: D, x, F, i0, G, E } = work;
  const H = 2 * K;
  const z = load[k];
  const row = k === 0 ? D : D + 2 * k - 1;
  const rows = k === 0 ? 1 : 2;
  const p = i0.re[k + K];
  const q = i0.im[k + K];
  F[row] = (k === 0 ? bias : 0) - x[row] - (z.re * p - z.im * q);
  if (k > 0) F[row + 1] = -x[row + 1] - (z.re * q + z.im * p);
  for (let l = -K; l <= K; l++) {
    // Re(h*·δV): half of h* δV and half of h δV*.
    const near = l - k + H;
    const far = k + l + H;
    block(work, row, 2 * (l + K), z, G.re[near] / 2, -G.im[near] / 2, G.re[far] / 2, G.im[far] / 2, rows, 2);
  }
  block(work, row, D, z, E.re[k + H], E.im[k + H], 0, 0, rows, 1);
  for (let l = 1; l <= K; l++) {
    block(work, row, D + 2 * l - 1, z, E.re[k - l + H], E.im[k - l + H], E.re[k + l + H], E.im[k + l + H], rows, 2);
  }
}

/** One 2×2 (or 1-wide) block: z·(p·δ + q·δ*); δ's own diagonal is added in the end. */
function block(
  { J, size }: BalanceWork,
  row: number,
  column: number,
  z: Complex,
  pr: number,
  pi: number,
  qr: number,
  qi: number,
  rows: number,
  columns: number,
): void {
  const rr = pr + qr;
  const ri = pi + qi;
  const ir = qi - pi;
  const ii = pr - qr;
  const at = row * size + column;
  J[at] = z.re * rr - z.im * ri;
  if (columns > 1) J[at + 1] = z.re * ir - z.im * ii;
  if (rows > 1) {
    J[at + size] = z.re * ri + z.im * rr;
    if (columns > 1) J[at + size + 1] = z.re * ii + z.im * ir;
  }
}

/** Each equation over its largest factor: with loads from ohms to insulators they differ by many powers of ten. */
function evenRows(J: Float64Array, F: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    let largest = 0;
    for (let j = 0; j < size; j++) largest = Math.max(largest, Math.abs(J[i * size + j]));
    if (!(largest > 2)) continue;
    for (let j = 0; j < size; j++) J[i * size + j] /= largest;
    F[i] /= largest;
  }
}
