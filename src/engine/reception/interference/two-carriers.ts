import { type Complex, hypotenuse } from '../../numerics/complex.ts';
import { factorise, substitute } from '../../numerics/linear-solve.ts';
import { type Samples, samples } from '../../parts/detector/audio-cycle.ts';
import { type AveragedCurrents, type AveragedDetector, averagedCurrents } from '../../parts/detector/averaged.ts';
import type { Amperes, Ohms, Volts } from '../../units/quantities.ts';
import type { CarrierLaw } from './carrier-law.ts';

/** Two carriers at a detector, and what the circuit is to each. */
export interface TwoCarriers {
  readonly law: CarrierLaw;
  /** Peak volts open at the detector: of the wanted carrier and of the other. */
  readonly own: Volts;
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
  /** Rows that stood as pivots in the factors of `J`. */
  readonly pivots: Int32Array;
  /** An answer kept, how it moves by either carrier, and what another is off the straight line. */
  readonly kept: {
    readonly middle: Float64Array;
    readonly byOwn: Float64Array;
    readonly byOther: Float64Array;
    readonly off: Float64Array;
  };
  /** The step last taken. */
  readonly step: Float64Array;
  /** Sums over the instants of the current at the carriers, as in `x`, then of the mean current, then of its beat. */
  readonly sums: Float64Array;
  readonly out: AveragedCurrents;
  /** At each instant: the mean current, and the slopes below. */
  readonly instants: {
    readonly mean: Float64Array;
    readonly byVoltage: Float64Array;
    readonly byConjugate: Samples;
    readonly byDirect: Samples;
    readonly meanByVoltage: Samples;
    readonly meanByDirect: Float64Array;
  };
  /**
   * Harmonics of the slopes over the beat: of the carrier's current by its voltage and by the conjugate of that, of it by
   * the direct voltage, of the mean current by the carrier's voltage and by the direct one.
   */
  readonly byVoltage: Float64Array;
  readonly byConjugate: Float64Array;
  readonly byDirect: Float64Array;
  readonly meanByVoltage: Float64Array;
  readonly meanByDirect: Float64Array;
  /** Harmonics of the real and the imaginary part of the slope that is summed. */
  readonly parts: { readonly real: Float64Array; readonly imaginary: Float64Array };
}

const SIZE = 9;
/** The places of the wanted carrier and of the other, each re and im. */
const OWN = 2;
const OTHER = 4;
/** The place of the direct voltage. */
const DIRECT_VOLTAGE = 6;
/** Instants of the beat: the sums of harmonics below are those of eight. */
const N = 8;
const COS = Float64Array.from({ length: N }, (_, i) => Math.cos((2 * Math.PI * i) / N));
const SIN = Float64Array.from({ length: N }, (_, i) => Math.sin((2 * Math.PI * i) / N));
/** Harmonics −2 … 2 of the beat, re and im; where the nth begins. */
const HARMONICS = 10;
const harmonic = (n: number): number => 2 * (n + 2);
const MOST = 60;
/** So many times the current before a step, and it was too long. */
const TOO_MUCH = 50;
/** Movement of the mean current in a step, over itself, after which the balance is struck: a tone may be a millionth of what flows without any station. */
const SETTLED = 1e-8;
/** Of a step over all unknowns: rounding. */
const ROUNDING = 1e-12;
/**
 * A step ε of less than these was the last where the averages have a closed form, over the slope voltage and over the
 * weaker carrier: no current is then out by more than half the square of it. A carrier V makes a tone of about m·V²/2 of
 * the current, which is then out by less than 0.001 dB at a depth of 0.3; a tone of a millionth of it by 0.004 dB.
 */
const [LEAST_LAST, OF_CARRIER] = [3e-5, 0.004];
/** A factor of equations less than this is none. */
const LEAST_PIVOT = 1e-300;

export const carrierBalance = (): CarrierBalance => ({
  x: new Float64Array(SIZE),
  mean: Number.NaN,
  F: new Float64Array(SIZE),
  J: new Float64Array(SIZE * SIZE),
  pivots: new Int32Array(SIZE),
  kept: {
    middle: new Float64Array(SIZE),
    byOwn: new Float64Array(SIZE),
    byOther: new Float64Array(SIZE),
    off: new Float64Array(SIZE),
  },
  step: new Float64Array(SIZE),
  sums: new Float64Array(SIZE),
  out: averagedCurrents(),
  instants: {
    mean: new Float64Array(N),
    byVoltage: new Float64Array(N),
    byConjugate: samples(N),
    byDirect: samples(N),
    meanByVoltage: samples(N),
    meanByDirect: new Float64Array(N),
  },
  byVoltage: new Float64Array(HARMONICS),
  byConjugate: new Float64Array(HARMONICS),
  byDirect: new Float64Array(HARMONICS),
  meanByVoltage: new Float64Array(HARMONICS),
  meanByDirect: new Float64Array(HARMONICS),
  parts: { real: new Float64Array(HARMONICS), imaginary: new Float64Array(HARMONICS) },
});

/**
 * Balance of the beat's cycle between the averaged device, the circuit at both carriers and the image, and the load at
 * direct current and at the beat: Newton from where `balance.x` stands. Carriers further out are left out.
 * @returns whether it was struck; `balance.x` and `balance.mean` are then the answer
 */
export function strikeBalance(c: TwoCarriers, balance: CarrierBalance): boolean {
  const { x, F, J, pivots } = balance;
  let before = Number.NaN;
  const { step } = balance;
  const { currentScale, slopeVoltage, law } = c.law.averaged.detector;
  let movedBefore = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < MOST; turn++) {
    answersOf(c.law.averaged, balance);
    leftOver(c, balance);
    const { mean } = balance;
    // Where the device was shut no slope showed how much a step would open it.
    if (mean > TOO_MUCH * (Math.abs(before) + currentScale)) {
      for (let k = 0; k < SIZE; k++) x[k] -= step[k] /= 2;
      movedBefore = Number.POSITIVE_INFINITY;
      continue;
    }
    const weaker = Math.min(hypotenuse(x[OWN], x[OWN + 1]), hypotenuse(x[OTHER], x[OTHER + 1]));
    const last = law
      ? slopeVoltage * Math.min(Math.max((OF_CARRIER * weaker) / slopeVoltage, LEAST_LAST), OF_CARRIER)
      : 0;
    // The slopes before a step ε are out by ε over the slope voltage, and so is the step after it, of about half ε² over it.
    const isOnOldSlopes = movedBefore ** 3 <= last * last * slopeVoltage;
    if (!isOnOldSlopes) {
      slopesOf(c, balance);
      if (factorise(J, SIZE, pivots, LEAST_PIVOT) >= 0) return false;
    }
    substitute(J, SIZE, pivots, F);
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
    const isLast = (isOnOldSlopes ? 2 * moved * movedBefore : moved * moved) <= last * last || moved <= ROUNDING * size;
    const isStill = !isOnOldSlopes && Math.abs(mean - before) <= SETTLED * Math.abs(mean);
    if (share === 1 && (isLast || isStill)) {
      // The step just taken is the most exact.
      const R = c.dcResistance + c.law.directResistance;
      balance.mean = R > 1 ? (c.bias - x[DIRECT_VOLTAGE]) / R : mean + movedMean(balance);
      return true;
    }
    before = mean;
    movedBefore = share === 1 && !isOnOldSlopes ? moved : Number.POSITIVE_INFINITY;
  }
  return false;
}

/**
 * How every unknown moves with the size of the wanted carrier and with that of the other, per volt open, where `balance.x`
 * stands as the answer: the straight line to the answers beside it.
 * @returns whether there is one
 */
export function slopesByCarriers(
  c: TwoCarriers,
  b: CarrierBalance,
  byOwn: Float64Array,
  byOther: Float64Array,
): boolean {
  const { J, pivots } = b;
  answersOf(c.law.averaged, b);
  slopesOf(c, b);
  if (factorise(J, SIZE, pivots, LEAST_PIVOT) >= 0) return false;
  for (const [place, by] of [
    [OWN, byOwn],
    [OTHER, byOther],
  ] as const) {
    by.fill(0);
    by[place] = 1;
    substitute(J, SIZE, pivots, by);
  }
  return true;
}

/** Left over of every equation into F, by the currents of `answersOf`. */
function leftOver({ law, own, other, source, dcResistance, beatLoad, bias }: TwoCarriers, b: CarrierBalance): void {
  const { x, F, sums } = b;
  b.mean = sums[DIRECT_VOLTAGE] / N;
  carrierLeft(b, 0, source[0], law.carrierResistance, 0);
  carrierLeft(b, OWN, source[1], law.carrierResistance, own);
  carrierLeft(b, OTHER, source[2], law.carrierResistance, other);
  const R = (dcResistance + law.directResistance) / N;
  F[DIRECT_VOLTAGE] = bias - x[DIRECT_VOLTAGE] - R * sums[DIRECT_VOLTAGE];
  const lr = (beatLoad.re + law.directResistance) / N;
  const li = beatLoad.im / N;
  F[7] = -x[7] - (lr * sums[7] - li * sums[8]);
  F[8] = -x[8] - (lr * sums[8] + li * sums[7]);
}

/** E − V − Z·I of one carrier, its current by the sums over the instants. */
function carrierLeft({ x, F, sums }: CarrierBalance, at: number, z: Complex, more: Ohms, E: Volts): void {
  const zr = (z.re + more) / N;
  const zi = z.im / N;
  F[at] = E - x[at] - (zr * sums[at] - zi * sums[at + 1]);
  F[at + 1] = -x[at + 1] - (zr * sums[at + 1] + zi * sums[at]);
}

/** By how much every unknown moves what is left over of every equation, into J, from the slopes of `answersOf`. */
function slopesOf({ law, source, dcResistance, beatLoad }: TwoCarriers, b: CarrierBalance): void {
  const { J, instants, byVoltage: P, byConjugate: Q, byDirect: D, meanByVoltage: M, meanByDirect: E } = b;
  realHarmonics(instants.byVoltage, P);
  complexHarmonics(instants.byConjugate, Q, b.parts);
  complexHarmonics(instants.byDirect, D, b.parts);
  complexHarmonics(instants.meanByVoltage, M, b.parts);
  realHarmonics(instants.meanByDirect, E);
  carrierRows(b, 0, source[0], law.carrierResistance);
  carrierRows(b, OWN, source[1], law.carrierResistance);
  carrierRows(b, OTHER, source[2], law.carrierResistance);
  const R = (dcResistance + law.directResistance) / N;
  const lr = (beatLoad.re + law.directResistance) / N;
  const li = beatLoad.im / N;
  for (let turns = 1; turns >= -1; turns--) {
    const m = harmonic(turns);
    const column = 2 * (1 - turns);
    // Re(m*·δV): half of m*·δV and half of m·δV*.
    J[DIRECT_VOLTAGE * SIZE + column] = R * M[m];
    J[DIRECT_VOLTAGE * SIZE + column + 1] = R * M[m + 1];
    block(J, 7, column, lr, li, M[m + 2] / 2, -M[m + 3] / 2, M[m - 2] / 2, M[m - 1] / 2);
  }
  const none = harmonic(0);
  const once = harmonic(1);
  const twice = harmonic(2);
  J[DIRECT_VOLTAGE * SIZE + 6] = R * E[none];
  J[DIRECT_VOLTAGE * SIZE + 7] = R * 2 * E[once];
  J[DIRECT_VOLTAGE * SIZE + 8] = -R * 2 * E[once + 1];
  J[7 * SIZE + 6] = lr * E[once] + li * E[once + 1];
  J[8 * SIZE + 6] = li * E[once] - lr * E[once + 1];
  block(J, 7, 7, lr, li, E[none], 0, E[twice], -E[twice + 1]);
  for (let k = 0; k < SIZE; k++) J[k * SIZE + k] += 1;
}

/** What the device answers at each instant of the beat where `x` stands, and the sums of its currents. */
function answersOf({ at }: AveragedDetector, { x, sums, out, instants }: CarrierBalance): void {
  const { byConjugate, byDirect, meanByVoltage } = instants;
  sums.fill(0);
  for (let i = 0; i < N; i++) {
    const c = COS[i];
    const s = SIN[i];
    const Vr = x[2] + (x[0] + x[4]) * c + (x[1] - x[5]) * s;
    const Vi = x[3] + (x[1] + x[5]) * c + (x[4] - x[0]) * s;
    const size = Math.sqrt(Vr * Vr + Vi * Vi);
    at(size, x[DIRECT_VOLTAGE] + 2 * (x[7] * c - x[8] * s), out);
    const ur = size > 0 ? Vr / size : 1;
    const ui = size > 0 ? Vi / size : 0;
    const across = size > 1e-9 ? out.fundamental / size : out.fundamentalByAmplitude;
    const half = (out.fundamentalByAmplitude - across) / 2;
    instants.mean[i] = out.mean;
    instants.byVoltage[i] = across + half;
    byConjugate.re[i] = half * (ur * ur - ui * ui);
    byConjugate.im[i] = 2 * half * ur * ui;
    byDirect.re[i] = out.fundamentalByDirect * ur;
    byDirect.im[i] = out.fundamentalByDirect * ui;
    meanByVoltage.re[i] = out.meanByAmplitude * ur;
    meanByVoltage.im[i] = out.meanByAmplitude * ui;
    instants.meanByDirect[i] = out.meanByDirect;
    const Ir = across * Vr;
    const Ii = across * Vi;
    sums[0] += Ir * c - Ii * s;
    sums[1] += Ir * s + Ii * c;
    sums[OWN] += Ir;
    sums[OWN + 1] += Ii;
    sums[OTHER] += Ir * c + Ii * s;
    sums[OTHER + 1] += Ii * c - Ir * s;
    sums[DIRECT_VOLTAGE] += out.mean;
    sums[7] += out.mean * c;
    sums[8] -= out.mean * s;
  }
}

/** Sums over the instants of a real signal times e^(jnθ), for each harmonic n. */
function realHarmonics(signal: Float64Array, sums: Float64Array): void {
  const s0 = signal[0] + signal[4];
  const s1 = signal[1] + signal[5];
  const s2 = signal[2] + signal[6];
  const s3 = signal[3] + signal[7];
  const t1 = Math.SQRT1_2 * (signal[1] - signal[5]);
  const t3 = Math.SQRT1_2 * (signal[3] - signal[7]);
  sums[4] = s0 + s1 + s2 + s3;
  sums[6] = signal[0] - signal[4] + t1 - t3;
  sums[7] = signal[2] - signal[6] + t1 + t3;
  sums[8] = s0 - s2;
  sums[9] = s1 - s3;
  sums[2] = sums[6];
  sums[3] = -sums[7];
  sums[0] = sums[8];
  sums[1] = -sums[9];
}

/** The same of a complex one: that of its real part and j times that of its imaginary part. */
function complexHarmonics({ re, im }: Samples, sums: Float64Array, { real, imaginary }: CarrierBalance['parts']): void {
  realHarmonics(re, real);
  realHarmonics(im, imaginary);
  for (let k = 0; k < HARMONICS; k += 2) {
    sums[k] = real[k] - imaginary[k + 1];
    sums[k + 1] = real[k + 1] + imaginary[k];
  }
}

/** Two rows and columns: z·(p·δ + q·δ*). */
function block(
  J: Float64Array,
  row: number,
  column: number,
  zr: number,
  zi: number,
  pr: number,
  pi: number,
  qr: number,
  qi: number,
): void {
  const at = row * SIZE + column;
  const rr = pr + qr;
  const ri = pi + qi;
  const ir = qi - pi;
  const ii = pr - qr;
  J[at] = zr * rr - zi * ri;
  J[at + 1] = zr * ir - zi * ii;
  J[at + SIZE] = zr * ri + zi * rr;
  J[at + SIZE + 1] = zr * ii + zi * ir;
}

/**
 * How much of Z·I of one carrier each voltage makes. The image turns with e^(−jθ) about the wanted one, the other with
 * e^(jθ): a slope acts by the harmonic of both turns.
 */
function carrierRows(
  { J, byVoltage: P, byConjugate: Q, byDirect: D }: CarrierBalance,
  at: number,
  z: Complex,
  more: Ohms,
): void {
  const zr = (z.re + more) / N;
  const zi = z.im / N;
  const turns = 1 - at / 2;
  for (let other = 1; other >= -1; other--) {
    const p = harmonic(turns - other);
    const q = harmonic(turns + other);
    block(J, at, 2 * (1 - other), zr, zi, P[p], P[p + 1], Q[q], Q[q + 1]);
  }
  const d = harmonic(turns);
  J[at * SIZE + DIRECT_VOLTAGE] = zr * D[d] - zi * D[d + 1];
  J[(at + 1) * SIZE + DIRECT_VOLTAGE] = zr * D[d + 1] + zi * D[d];
  block(J, at, 7, zr, zi, D[d + 2], D[d + 3], D[d - 2], D[d - 1]);
}

/** By how much the step last taken moves the mean current, A. */
function movedMean({ step, instants: { meanByVoltage, meanByDirect } }: CarrierBalance): Amperes {
  let sum = 0;
  for (let i = 0; i < N; i++) {
    const c = COS[i];
    const s = SIN[i];
    const dr = step[2] + (step[0] + step[4]) * c + (step[1] - step[5]) * s;
    const di = step[3] + (step[1] + step[5]) * c + (step[4] - step[0]) * s;
    const d = step[DIRECT_VOLTAGE] + 2 * (step[7] * c - step[8] * s);
    sum += meanByVoltage.re[i] * dr + meanByVoltage.im[i] * di + meanByDirect[i] * d;
  }
  return sum / N;
}

/** How many times the mean current would at most grow at an instant in a step, were it straight. */
function growthOf({ law }: TwoCarriers, { F, instants }: CarrierBalance): number {
  const { mean, meanByVoltage, meanByDirect } = instants;
  const scale = law.averaged.detector.currentScale;
  let most = 0;
  for (let i = 0; i < N; i++) {
    const c = COS[i];
    const s = SIN[i];
    const dr = F[2] + (F[0] + F[4]) * c + (F[1] - F[5]) * s;
    const di = F[3] + (F[1] + F[5]) * c + (F[4] - F[0]) * s;
    const d = F[DIRECT_VOLTAGE] + 2 * (F[7] * c - F[8] * s);
    const grown = meanByVoltage.re[i] * dr + meanByVoltage.im[i] * di + meanByDirect[i] * d;
    most = Math.max(most, grown / (Math.abs(mean[i]) + scale));
  }
  return most;
}
