import type { Complex } from '../../numerics/complex.ts';
import { type AveragedCurrents, averagedCurrents } from '../../parts/detector/averaged.ts';
import type { Amperes, Ohms, Volts } from '../../units/quantities.ts';
import type { CarrierLaw } from './carrier-law.ts';

/** Two carriers at a detector, and what the circuit is to each. */
export interface TwoCarriers {
  readonly law: CarrierLaw;
  /** Peak volts open at the detector: of the wanted carrier and of the other. */
  readonly wanted: Volts;
  readonly other: Volts;
  /** Impedance at the detector at the image of the other about the wanted, at the wanted and at the other, Ω. */
  readonly source: readonly [Complex, Complex, Complex];
  /** What the direct current flows through, and what the beat does; the beat's conjugated where the other lies below. */
  readonly dcResistance: Ohms;
  readonly beatLoad: Complex;
  readonly bias: Volts;
}

/** Room for a balance, and the voltages where it stands. */
export interface CarrierBalance {
  /** Re and im of the carriers of `source`, then the direct voltage across the device, then re and im of its beat. */
  readonly x: Float64Array;
  /** Mean current of the last balance struck, A. */
  mean: Amperes;
  readonly F: Float64Array;
  readonly J: Float64Array;
  /** The step last taken. */
  readonly step: Float64Array;
  readonly out: AveragedCurrents;
  /** At each instant: slopes of the mean current by re and im of the carrier and by the direct voltage, and itself. */
  readonly slopes: Float64Array;
}

const SIZE = 9;
/** The place of the direct voltage. */
export const DIRECT_VOLTAGE = 6;
/** Instants of the beat. */
const N = 8;
const COS = Float64Array.from({ length: N }, (_, i) => Math.cos((2 * Math.PI * i) / N));
const SIN = Float64Array.from({ length: N }, (_, i) => Math.sin((2 * Math.PI * i) / N));
/** What each unknown adds at each instant: to re and im of the carrier's envelope, and to the direct voltage. */
const TO_RE = table((c, s) => [c, s, 1, 0, c, -s, 0, 0, 0]);
const TO_IM = table((c, s) => [-s, c, 0, 1, s, c, 0, 0, 0]);
const TO_DIRECT = table((c, s) => [0, 0, 0, 0, 0, 0, 1, 2 * c, -2 * s]);
const MOST = 60;
/** So many times the current before a step, and it was too long. */
const TOO_MUCH = 50;
/** Movement of the mean current in a step, over itself, after which the balance is struck: a tone may be a millionth of what flows without any station. */
const SETTLED = 1e-8;
/** Of a step over all unknowns: rounding. */
const ROUNDING = 1e-12;

function table(row: (c: number, s: number) => readonly number[]): Float64Array {
  return Float64Array.from(Array.from(COS, (c, i) => row(c, SIN[i])).flat());
}

export const carrierBalance = (): CarrierBalance => ({
  x: new Float64Array(SIZE),
  mean: Number.NaN,
  F: new Float64Array(SIZE),
  J: new Float64Array(SIZE * SIZE),
  step: new Float64Array(SIZE),
  out: averagedCurrents(),
  slopes: new Float64Array(4 * N),
});

/**
 * Balance of the beat's cycle between the averaged device, the circuit at both carriers and the image, and the load at
 * direct current and at the beat: Newton from where `balance.x` stands. Carriers further out are left out.
 * @returns whether it was struck; `balance.x` and `balance.mean` are then the answer
 */
export function strikeBalance(c: TwoCarriers, balance: CarrierBalance): boolean {
  const { x, F, J } = balance;
  let before = Number.NaN;
  const { step } = balance;
  const { currentScale } = c.law.averaged.detector;
  for (let turn = 0; turn < MOST; turn++) {
    equations(c, balance);
    const { mean } = balance;
    // Where the device was shut no slope told how much a step would open it.
    if (mean > TOO_MUCH * (Math.abs(before) + currentScale)) {
      for (let k = 0; k < SIZE; k++) x[k] -= step[k] /= 2;
      continue;
    }
    if (!solve(J, F)) return false;
    // A step that would multiply the current is shortened to its logarithm.
    const most = growthOf(c, balance);
    const share = most > 0.5 ? Math.log1p(most) / most : 1;
    let [moved, size] = [0, 0];
    for (let k = 0; k < SIZE; k++) {
      step[k] = share * F[k];
      x[k] += step[k];
      moved += Math.abs(step[k]);
      size += Math.abs(x[k]);
    }
    if (!Number.isFinite(size)) return false;
    if (share === 1 && (Math.abs(mean - before) <= SETTLED * Math.abs(mean) || moved <= ROUNDING * size)) {
      // The step just taken is the most exact.
      const R = c.dcResistance + c.law.directResistance;
      if (R > 1) balance.mean = (c.bias - x[DIRECT_VOLTAGE]) / R;
      return true;
    }
    before = mean;
  }
  return false;
}

/** Left over of every equation into F, its slopes into J. */
function equations({ law, wanted, other, source, dcResistance, beatLoad, bias }: TwoCarriers, b: CarrierBalance): void {
  const { x, F, J, out } = b;
  J.fill(0);
  F.fill(0);
  let [re0, im0, re1, im1, re2, im2] = [0, 0, 0, 0, 0, 0];
  let [mean, beatRe, beatIm] = [0, 0, 0];
  for (let i = 0; i < N; i++) {
    const c = COS[i];
    const s = SIN[i];
    const Vr = x[2] + (x[0] + x[4]) * c + (x[1] - x[5]) * s;
    const Vi = x[3] + (x[1] + x[5]) * c + (x[4] - x[0]) * s;
    const size = Math.hypot(Vr, Vi);
    law.averaged.at(size, x[DIRECT_VOLTAGE] + 2 * (x[7] * c - x[8] * s), out);
    const ur = size > 0 ? Vr / size : 1;
    const ui = size > 0 ? Vi / size : 0;
    const across = size > 1e-9 ? out.fundamental / size : out.fundamentalByAmplitude;
    const along = out.fundamentalByAmplitude - across;
    const Ir = across * Vr;
    const Ii = across * Vi;
    mean += out.mean;
    beatRe += out.mean * c;
    beatIm -= out.mean * s;
    // Slopes of the carrier's current (re, im) and of the mean current by Vr, Vi and the direct voltage.
    const rr = across + along * ur * ur;
    const ri = along * ur * ui;
    const ii = across + along * ui * ui;
    const dr = out.fundamentalByDirect * ur;
    const di = out.fundamentalByDirect * ui;
    const mr = out.meanByAmplitude * ur;
    const mi = out.meanByAmplitude * ui;
    const e = out.meanByDirect;
    b.slopes[4 * i] = mr;
    b.slopes[4 * i + 1] = mi;
    b.slopes[4 * i + 2] = e;
    b.slopes[4 * i + 3] = out.mean;
    for (let k = 0; k < SIZE; k++) {
      const j = i * SIZE + k;
      const a = TO_RE[j];
      const bb = TO_IM[j];
      const d = TO_DIRECT[j];
      const cr = rr * a + ri * bb + dr * d;
      const ci = ri * a + ii * bb + di * d;
      const m = mr * a + mi * bb + e * d;
      // Of the image e^(jθ)*, of the wanted, of the other e^(−jθ)*.
      J[k] += cr * c - ci * s;
      J[SIZE + k] += cr * s + ci * c;
      J[2 * SIZE + k] += cr;
      J[3 * SIZE + k] += ci;
      J[4 * SIZE + k] += cr * c + ci * s;
      J[5 * SIZE + k] += ci * c - cr * s;
      J[6 * SIZE + k] += m;
      J[7 * SIZE + k] += m * c;
      J[8 * SIZE + k] -= m * s;
    }
    re0 += Ir * c - Ii * s;
    im0 += Ir * s + Ii * c;
    re1 += Ir;
    im1 += Ii;
    re2 += Ir * c + Ii * s;
    im2 += Ii * c - Ir * s;
  }
  b.mean = mean / N;
  carrierRows(b, 0, source[0], law.carrierResistance, 0, re0, im0);
  carrierRows(b, 2, source[1], law.carrierResistance, wanted, re1, im1);
  carrierRows(b, 4, source[2], law.carrierResistance, other, re2, im2);
  const R = (dcResistance + law.directResistance) / N;
  for (let k = 0; k < SIZE; k++) J[DIRECT_VOLTAGE * SIZE + k] *= R;
  F[DIRECT_VOLTAGE] = bias - x[DIRECT_VOLTAGE] - R * mean;
  const lr = (beatLoad.re + law.directResistance) / N;
  const li = beatLoad.im / N;
  turn(J, 7 * SIZE, lr, li);
  F[7] = -x[7] - (lr * beatRe - li * beatIm);
  F[8] = -x[8] - (lr * beatIm + li * beatRe);
  for (let k = 0; k < SIZE; k++) J[k * SIZE + k] += 1;
}

/** E − V − Z·I of one carrier, sums of its current over the instants given. */
function carrierRows(
  { x, F, J }: CarrierBalance,
  at: number,
  z: Complex,
  more: Ohms,
  E: Volts,
  re: number,
  im: number,
): void {
  const zr = (z.re + more) / N;
  const zi = z.im / N;
  turn(J, at * SIZE, zr, zi);
  F[at] = E - x[at] - (zr * re - zi * im);
  F[at + 1] = -x[at + 1] - (zr * im + zi * re);
}

/** Two rows, re and im, times a complex number. */
function turn(J: Float64Array, row: number, zr: number, zi: number): void {
  for (let k = row; k < row + SIZE; k++) {
    const re = J[k];
    const im = J[k + SIZE];
    J[k] = zr * re - zi * im;
    J[k + SIZE] = zr * im + zi * re;
  }
}

/** How many times the mean current would at most grow at an instant in a step, were it straight. */
function growthOf({ law }: TwoCarriers, { F, slopes }: CarrierBalance): number {
  const scale = law.averaged.detector.currentScale;
  let most = 0;
  for (let i = 0; i < N; i++) {
    const c = COS[i];
    const s = SIN[i];
    const dr = F[2] + (F[0] + F[4]) * c + (F[1] - F[5]) * s;
    const di = F[3] + (F[1] + F[5]) * c + (F[4] - F[0]) * s;
    const d = F[DIRECT_VOLTAGE] + 2 * (F[7] * c - F[8] * s);
    const j = 4 * i;
    const grown = slopes[j] * dr + slopes[j + 1] * di + slopes[j + 2] * d;
    most = Math.max(most, grown / (Math.abs(slopes[j + 3]) + scale));
  }
  return most;
}

/** J·y = F into F, by elimination with row pivots; false where J has no inverse. */
function solve(J: Float64Array, F: Float64Array): boolean {
  for (let k = 0; k < SIZE; k++) {
    let p = k;
    for (let i = k + 1; i < SIZE; i++) if (Math.abs(J[i * SIZE + k]) > Math.abs(J[p * SIZE + k])) p = i;
    const pivot = J[p * SIZE + k];
    if (!(Math.abs(pivot) > 1e-300)) return false;
    if (p !== k) {
      for (let j = k; j < SIZE; j++) {
        const held = J[k * SIZE + j];
        J[k * SIZE + j] = J[p * SIZE + j];
        J[p * SIZE + j] = held;
      }
      const held = F[k];
      F[k] = F[p];
      F[p] = held;
    }
    for (let i = k + 1; i < SIZE; i++) {
      const factor = J[i * SIZE + k] / pivot;
      if (factor === 0) continue;
      for (let j = k + 1; j < SIZE; j++) J[i * SIZE + j] -= factor * J[k * SIZE + j];
      F[i] -= factor * F[k];
    }
  }
  for (let k = SIZE - 1; k >= 0; k--) {
    let sum = F[k];
    for (let j = k + 1; j < SIZE; j++) sum -= J[k * SIZE + j] * F[j];
    F[k] = sum / J[k * SIZE + k];
  }
  return true;
}
