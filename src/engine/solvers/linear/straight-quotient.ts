import type { Farads } from '../../units/quantities.ts';

/**
 * |a + b·Y| / |c + d·Y| as re and im of a, b, c and d: what any one admittance Y joined to a linear network makes of a
 * voltage in it. Numbers in a row and made once, since a dial asks for it thousands of times.
 */
export type StraightQuotient = Float64Array;

export const straightQuotient = (): StraightQuotient => new Float64Array(8);

/** The quotient at an admittance, S. */
export function quotientAt(q: StraightQuotient, yr: number, yi: number): number {
  const vr = q[0] + q[2] * yr - q[3] * yi;
  const vi = q[1] + q[2] * yi + q[3] * yr;
  const wr = q[4] + q[6] * yr - q[7] * yi;
  const wi = q[5] + q[6] * yi + q[7] * yr;
  return Math.sqrt((vr * vr + vi * vi) / (wr * wr + wi * wi));
}

/** A capacitor as it is turned, over a stretch short enough for its loss to run straight. */
export interface TurnedCapacitor {
  /** rad/s. */
  readonly w: number;
  /** Ends of the stretch. */
  readonly low: Farads;
  readonly high: Farads;
  /** Its parallel conductance at these ends, S. */
  readonly lossLow: number;
  readonly lossHigh: number;
}

/**
 * The capacitance within a stretch that makes the quotient greatest.
 *
 * With x = ωC, Y = g + (s + j)·x runs straight in x, so the quotient's square is (n0 + n1·u + n2·u²)/(d0 + d2·u²), u
 * counted from the least of the denominator. Its slope is zero where n1·d2·u² + 2(n0·d2 − n2·d0)·u − n1·d0 = 0; the root
 * on the side of n1 is the top, the other the bottom. With no top on the stretch, the higher end.
 */
export function greatest(q: StraightQuotient, { w, low, high, lossLow, lossHigh }: TurnedCapacitor): Farads {
  const s = high === low ? 0 : (lossHigh - lossLow) / (w * (high - low));
  const g = lossLow - s * w * low;
  const [br, bi] = [q[2] * s - q[3], q[3] * s + q[2]];
  const [dr, di] = [q[6] * s - q[7], q[7] * s + q[6]];
  const d2 = dr * dr + di * di;
  const least = -((q[4] + q[6] * g) * dr + (q[5] + q[7] * g) * di) / d2;
  const nr = q[0] + q[2] * g + br * least;
  const ni = q[1] + q[3] * g + bi * least;
  const er = q[4] + q[6] * g + dr * least;
  const ei = q[5] + q[7] * g + di * least;
  const n0 = nr * nr + ni * ni;
  const n1 = 2 * (nr * br + ni * bi);
  const n2 = br * br + bi * bi;
  const d0 = er * er + ei * ei;
  const p = n0 * d2 - n2 * d0;
  const root = Math.sqrt(p * p + n1 * n1 * d0 * d2);
  const u = n1 === 0 ? 0 : p > 0 ? (n1 * d0) / (p + root) : (root - p) / (n1 * d2);
  const top = (least + u) / w;
  if (top >= low && top <= high && !(n1 === 0 && p < 0)) return top;
  return quotientAt(q, lossHigh, w * high) > quotientAt(q, lossLow, w * low) ? high : low;
}
