import { hypotenuse } from '../../numerics/complex.ts';
import type { AveragedDetector } from './averaged.ts';
import type { BalanceWork } from './balance-work.ts';

/** Less mean than this share of the current at the carrier: currents both ways cancel in it. */
const CANCELS = 0.05;
/** A current falls to no less than this share in one step. */
const LEAST_SHARE = 0.03;
/** Cosine of the angle between two carriers up to which they are taken to point the same way. */
const SAME_WAY = 0.9;

/** The averages at instant i, at its voltages, into `work.out`. */
function averagesAt(averaged: AveragedDetector, { V, v0, out }: BalanceWork, i: number): void {
  averaged.at(Math.sqrt(V.re[i] * V.re[i] + V.im[i] * V.im[i]), v0[i], out);
}

/** Slopes and currents at instant i, from the averages found last. */
function slopesAt({ V, I1, I0, a, bb, h, e, out }: BalanceWork, i: number): void {
  const m = Math.sqrt(V.re[i] * V.re[i] + V.im[i] * V.im[i]);
  const g = m > 0 ? out.fundamental / m : out.meanByDirect;
  const ur = m > 0 ? V.re[i] / m : 1;
  const ui = m > 0 ? V.im[i] / m : 0;
  const half = m > 0 ? (out.fundamentalByAmplitude - g) / 2 : 0;
  I1.re[i] = g * V.re[i];
  I1.im[i] = g * V.im[i];
  I0[i] = out.mean;
  a[i] = g + half;
  bb.re[i] = half * (ur * ur - ui * ui);
  bb.im[i] = half * 2 * ur * ui;
  h.re[i] = out.meanByAmplitude * ur;
  h.im[i] = out.meanByAmplitude * ui;
  e[i] = out.meanByDirect;
}

/** So far on the straight way to the voltages of the harmonics that no more than `most` flows. */
function partWay(
  averaged: AveragedDetector,
  work: BalanceWork,
  i: number,
  re: number,
  im: number,
  direct: number,
  most: number,
): void {
  const { V, v0, T, t0, out } = work;
  let low = 0;
  let high = 1;
  const at = (share: number) => {
    V.re[i] = re + share * (T.re[i] - re);
    V.im[i] = im + share * (T.im[i] - im);
    v0[i] = direct + share * (t0[i] - direct);
    averagesAt(averaged, work, i);
  };
  for (let k = 0; k < 24 && !(out.mean <= most && out.mean >= most / 2); k++) {
    const middle = (low + high) / 2;
    at(middle);
    if (out.mean <= most) low = middle;
    else high = middle;
  }
  if (!(out.mean <= most)) at(low);
}

/** The carrier of the harmonics, at a direct voltage so much lower that about `target` flows. */
function lowered(averaged: AveragedDetector, work: BalanceWork, i: number, target: number): void {
  const { v0, out } = work;
  const { currentScale: scale, slopeVoltage: s } = averaged.detector;
  let low = Number.NEGATIVE_INFINITY;
  let high = v0[i];
  for (let k = 0; k < 40 && !(out.mean <= 1.5 * target && out.mean >= 0.7 * target); k++) {
    if (out.mean > target) high = v0[i];
    else low = v0[i];
    // From above, neither Newton's step nor that of an exponential goes too far.
    const step =
      out.mean > target
        ? Math.max((out.mean - target) / out.meanByDirect, s * Math.log((out.mean + scale) / (target + scale)))
        : Number.NaN;
    v0[i] = high - step > low ? high - step : (low + high) / 2;
    averagesAt(averaged, work, i);
  }
}

/**
 * Renews the slopes at instant i at the voltages of the harmonics; where far more would flow there than the last
 * slopes gave, short of them, where about as much flows. @returns whether at the voltages of the harmonics.
 */
export function follow(averaged: AveragedDetector, work: BalanceWork, i: number): boolean {
  const { V, v0, T, t0, I1, I0, h, e, out } = work;
  const scale = averaged.detector.currentScale;
  const re = V.re[i];
  const im = V.im[i];
  const direct = v0[i];
  const before = I0[i];
  const predicted = before + h.re[i] * (T.re[i] - re) + h.im[i] * (T.im[i] - im) + e[i] * (t0[i] - direct);
  V.re[i] = T.re[i];
  V.im[i] = T.im[i];
  v0[i] = t0[i];
  averagesAt(averaged, work, i);
  // A device nearly as good one way as the other: its currents cancel in the mean, which then measures nothing.
  const carried = Math.sqrt(I1.re[i] * I1.re[i] + I1.im[i] * I1.im[i]);
  const oneWay = Math.abs(predicted) + scale;
  const slack = Math.max(Math.abs(before), oneWay) < CANCELS * carried ? carried : oneWay;
  let isThere = !(out.mean > predicted + slack);
  if (!isThere) {
    // A carrier that turns round passes through nothing: there only the way itself is safe.
    const along = T.re[i] * re + T.im[i] * im;
    const isSameWay = along > SAME_WAY * hypotenuse(T.re[i], T.im[i]) * hypotenuse(re, im);
    const most = Math.max(before, predicted + slack);
    if (isSameWay) lowered(averaged, work, i, Math.max(predicted, LEAST_SHARE * before, scale));
    else if (out.mean <= most) isThere = true;
    else partWay(averaged, work, i, re, im, direct, most);
  }
  slopesAt(work, i);
  return isThere;
}

/** The currents that the slopes of instant i give at the voltages of the harmonics. */
export function onSlopes(work: BalanceWork, i: number, isThere: boolean): void {
  const { V, v0, T, t0, I1, I0, C1, C0, a, bb, h, e } = work;
  const re = isThere ? 0 : T.re[i] - V.re[i];
  const im = isThere ? 0 : T.im[i] - V.im[i];
  const direct = isThere ? 0 : t0[i] - v0[i];
  C1.re[i] = I1.re[i] + a[i] * re + bb.re[i] * re + bb.im[i] * im + 2 * h.re[i] * direct;
  C1.im[i] = I1.im[i] + a[i] * im + bb.im[i] * re - bb.re[i] * im + 2 * h.im[i] * direct;
  C0[i] = I0[i] + h.re[i] * re + h.im[i] * im + e[i] * direct;
}

/** The slopes of every instant where `V` and `v0` stand, and the currents there. */
export function beginAt(averaged: AveragedDetector, work: BalanceWork): void {
  for (let i = 0; i < work.N; i++) {
    averagesAt(averaged, work, i);
    slopesAt(work, i);
    onSlopes(work, i, true);
  }
}
