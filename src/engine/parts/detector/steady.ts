import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { logI0 } from '../../numerics/bessel-modified.ts';
import { type Complex, complex, divide, hypotenuse, ONE } from '../../numerics/complex.ts';
import { wrightOmega } from '../../numerics/lambert.ts';
import { root } from '../../numerics/roots.ts';
import type { Amperes, Ohms, Volts, Watts } from '../../units/quantities.ts';
import { type AveragedCurrents, type AveragedDetector, averagedCurrents } from './averaged.ts';

export interface SteadyOptions {
  readonly averaged: AveragedDetector;
  /** Peak volts at the device's terminals with the device taken out; at least 0. */
  readonly openCircuit: Volts;
  /**
   * What the device looks into at the carrier's frequency: the tuned circuit through its tap, in series with the load's
   * impedance at that frequency. Real part at least 0.
   */
  readonly sourceImpedance: Complex;
  /** What its mean current flows through, at least 0; 1e12 stands for an open load. */
  readonly dcResistance: Ohms;
  /** Of a bias cell in series, positive when it drives the device forward; default 0. */
  readonly bias?: Volts;
}

export interface SteadyDetection {
  /** Carrier across the device, peak volts. */
  readonly junctionVoltage: Volts;
  /** The same over the open-circuit voltage, with its phase. */
  readonly ratio: Complex;
  /** Mean voltage across `dcResistance`; with a bias, its standing current's share is included. */
  readonly directVoltage: Volts;
  readonly directCurrent: Amperes;
  /** Mean voltage across the device itself: bias - directVoltage. */
  readonly deviceVoltage: Volts;
  /** Peak current at the carrier's frequency. */
  readonly fundamentalCurrent: Amperes;
  /** What the device offers the carrier, V/I1. */
  readonly inputResistance: Ohms;
  /** Carrier power taken by the device and its direct load, V·I1/2. */
  readonly inputPower: Watts;
  readonly outputPower: Watts;
  readonly iterations: number;
  readonly warnings: readonly Warning[];
}

const BOUNDS = {
  openVoltage: { min: 0, max: 1e7 },
  directLoad: { min: 0, max: 1e15 },
  bias: { min: -1e3, max: 1e3 },
  sourceResistance: { min: 0, below: 1e15 },
  sourceReactance: { above: -1e15, below: 1e15 },
} as const;
const LIMIT = 60;
/** Less mean than this share of the fundamental: currents both ways cancel in it. */
const CANCELS = 0.05;
/** Averages summed over the cycle are good to 1e-4 and jump by this share where more points are taken; after so many steps that is enough. */
const QUADRATURE = 2e-5;
const SETTLING = 20;

/**
 * Steady carrier through a detector into a direct load, consistent with the linear network it hangs on:
 *   |V + Zs·I1(V, v0)| = E,   v0 = bias - R·I0(V, v0).
 * Newton in V and the direct voltage. A step that would multiply the current is shortened to its logarithm, which
 * keeps the exponential from being overshot; should that ever fail, the equations are nested and bisected, which
 * cannot (I0 rises with v0; and I1 rises with V along the direct load line, by Schwarz's inequality).
 * @param options open voltage of the carrier (V, peak), source impedance (Ω), direct load (Ω), bias (V), device
 * @returns direct voltage (V) and current (A), the carrier left (V, peak), and what the source sees (Ω)
 * @throws RangeError when an input is outside its range.
 */
export function steadyDetector(options: SteadyOptions): SteadyDetection {
  const { averaged, openCircuit: E, sourceImpedance, dcResistance: R, bias = 0 } = options;
  demandWithin('detector.open-voltage', E, BOUNDS.openVoltage);
  demandWithin('detector.direct-load', R, BOUNDS.directLoad);
  demandWithin('detector.bias', bias, BOUNDS.bias);
  demandWithin('detector.source-resistance', sourceImpedance.re, BOUNDS.sourceResistance);
  demandWithin('detector.source-reactance', sourceImpedance.im, BOUNDS.sourceReactance);
  const out = averagedCurrents();
  const solution =
    newton(averaged, E, sourceImpedance, R, bias, out) ?? nested(averaged, E, sourceImpedance, R, bias, out);
  const { V, D, iterations } = solution;
  averaged.at(V, bias - D, out);
  const I1 = out.fundamental;
  const g = V > 0 ? I1 / V : out.meanByDirect;
  const { reverseLimit } = averaged.detector;
  const warnings: Warning[] = [];
  if (reverseLimit !== undefined && V + D - bias > reverseLimit) {
    warnings.push(warning('detector.reverse-voltage', { reverse: V + D - bias, limit: reverseLimit }));
  }
  const { measured, slopeVoltage } = averaged.detector;
  if (measured) {
    const mean = bias - D;
    if (V < measured.apart && measured.apart > 1.5 * slopeVoltage && Math.abs(mean) < measured.apart)
      warnings.push(warning('detector.measured-points-apart', { carrier: V, gap: measured.apart }));
    if (mean + V > measured.highest + 1e-3 || mean < measured.lowest - slopeVoltage)
      warnings.push(
        warning('detector.outside-measured-range', {
          from: mean - V,
          to: mean + V,
          lowest: measured.lowest,
          highest: measured.highest,
        }),
      );
  }
  return {
    junctionVoltage: V,
    ratio: divide(ONE, complex(1 + g * sourceImpedance.re, g * sourceImpedance.im)),
    directVoltage: D,
    directCurrent: R > 0 ? D / R : out.mean,
    deviceVoltage: bias - D,
    fundamentalCurrent: I1,
    inputResistance: g > 0 ? 1 / g : Number.POSITIVE_INFINITY,
    inputPower: (V * I1) / 2,
    outputPower: R > 0 ? (D * D) / R : 0,
    iterations,
    warnings,
  };
}

interface Solution {
  V: number;
  D: number;
  iterations: number;
}

/** Direct voltage a plain exponential of this slope and scale would give: exact for one, a good start for the rest. */
function guessDirect({ detector, inSeries = 1 }: AveragedDetector, V: number, R: number, bias: number): number {
  const s = detector.slopeVoltage;
  const slope = inSeries * s;
  const a = (R * detector.currentScale) / slope;
  if (!(a > 1e-12)) return R * detector.current(bias / inSeries);
  return slope * (wrightOmega(a + bias / slope + Math.log(a) + logI0(V / s)) - a);
}

/** So many times what a load takes of the voltages before it, or a source gives when shorted, is no answer's current: e⁵. */
const TOO_MUCH = 150;

/**
 * Direct voltage at which the load takes what flows, or below, the carrier left as it is: neither Newton's step nor that
 * of an exponential, which has its answer by Wright's omega, goes too far.
 * @param slope volts in which the current at most multiplies by e.
 */
function lessByDirect(
  { mean, meanByDirect }: AveragedCurrents,
  R: number,
  D: number,
  scale: number,
  slope: number,
): number {
  const straight = D + (R * mean - D) / (1 + R * meanByDirect);
  const z = Math.log((R * (mean + scale)) / slope) + (D + R * scale) / slope;
  return Math.max(straight, slope * wrightOmega(z) - R * scale);
}

/** The carrier at which the source gives what flows, or above, the direct voltage left as it is; in the same way. */
function lessByAmplitude(
  { fundamental, fundamentalByAmplitude }: AveragedCurrents,
  size: number,
  E: number,
  V: number,
  slope: number,
): number {
  const straight = V - (V + size * fundamental - E) / (1 + size * fundamentalByAmplitude);
  const s = Math.min(slope, V);
  const drop = s * wrightOmega(Math.log((size * fundamental) / s) + (E - V) / s);
  return Math.max(Math.min(straight, E - drop), 0.1 * V);
}

function newton(
  averaged: AveragedDetector,
  E: number,
  Zs: Complex,
  R: number,
  bias: number,
  out: AveragedCurrents,
): Solution | undefined {
  const { re: Rs, im: Xs } = Zs;
  const { currentScale: scale, slopeVoltage: slope } = averaged.detector;
  const leakage = averaged.detector.law?.leakage ?? 0;
  const size = hypotenuse(Rs, Xs);
  const noSource = Rs === 0 && Xs === 0;
  // Small-signal loading to start with, or the heavy-signal one if that is lighter.
  averaged.at(0, bias, out);
  const g = Math.min(out.meanByDirect, E > 4 * slope && R > 0 ? 3 / R : Number.POSITIVE_INFINITY);
  let V = noSource ? E : E / hypotenuse(1 + g * Rs, g * Xs);
  let D = guessDirect(averaged, V, R, bias);
  let [dV, dD] = [0, 0];
  let most = Number.POSITIVE_INFINITY;
  for (let k = 1; k <= LIMIT; k++) {
    averaged.at(V, bias - D, out);
    const I1 = out.fundamental;
    // Currents beyond what any of the equations' answers has: down to where they may be, in one go.
    const across = V + Math.abs(bias) + slope;
    if (out.mean > TOO_MUCH * (across / R + scale + leakage * across)) {
      D = lessByDirect(out, R, D, scale, slope * (averaged.inSeries ?? 1));
      most = Number.POSITIVE_INFINITY;
      continue;
    }
    if (I1 > TOO_MUCH * (E / size + scale + leakage * E)) {
      V = lessByAmplitude(out, size, E, V, slope);
      most = Number.POSITIVE_INFINITY;
      continue;
    }
    // Where currents both ways cancel in the mean, only the step itself shows whether it went too far.
    if (I1 > most) {
      V -= dV / 2;
      D -= dD / 2;
      dV /= 2;
      dD /= 2;
      continue;
    }
    const a = V + Rs * I1;
    const b = Xs * I1;
    const m = hypotenuse(a, b);
    const F1 = noSource ? 0 : m - E;
    const F2 = R * out.mean - D;
    const along = m > 0 ? (a * Rs + b * Xs) / m : Rs;
    const J11 = noSource ? 1 : (m > 0 ? a / m : 1) + along * out.fundamentalByAmplitude;
    const J12 = noSource ? 0 : -along * out.fundamentalByDirect;
    const J21 = R * out.meanByAmplitude;
    const J22 = -1 - R * out.meanByDirect;
    const det = J11 * J22 - J12 * J21;
    dV = (J12 * F2 - J22 * F1) / det;
    dD = (J21 * F1 - J11 * F2) / det;
    if (!Number.isFinite(dV) || !Number.isFinite(dD)) return undefined;
    // How many times the current would grow, were the curve straight; e-fold by e-fold it grows by the logarithm.
    const oneWay = Math.abs(out.mean) + scale;
    const cancels = oneWay < CANCELS * I1;
    const growth = (out.meanByAmplitude * dV - out.meanByDirect * dD) / (cancels ? I1 : oneWay);
    if (growth > 0.3) {
      const shorter = Math.log1p(growth) / growth;
      dV *= shorter;
      dD *= shorter;
    }
    most = cancels
      ? 3 * (I1 + Math.max(0, out.fundamentalByAmplitude * dV - out.fundamentalByDirect * dD))
      : Number.POSITIVE_INFINITY;
    dV = Math.min(Math.max(V + dV, 0.1 * V), E) - V;
    V += dV;
    D += dD;
    const near = k <= SETTLING || averaged.detector.law ? 1e-9 : QUADRATURE;
    const nothing = 1e-15 * (Math.abs(bias) + V) + (near > 1e-9 ? (1e-9 * R * I1) / -J22 : 0);
    if (Math.abs(dV) <= near * V && Math.abs(dD) <= near * Math.abs(D) + nothing) {
      return { V, D, iterations: k };
    }
  }
  return undefined;
}

/** Both equations by bracketed roots, one inside the other: some 200 averages, a few thousand at the very most. */
function nested(
  averaged: AveragedDetector,
  E: number,
  Zs: Complex,
  R: number,
  bias: number,
  out: AveragedCurrents,
): Solution {
  let iterations = LIMIT;
  const direct = (V: number): number => {
    // F(D) = R·I0(V, bias - D) - D falls; its root lies between 0 and what flows with no voltage behind the load.
    const excess = (D: number): number => {
      averaged.at(V, bias - D, out);
      iterations++;
      return R * out.mean - D;
    };
    const forward = excess(0);
    if (forward === 0) return 0;
    // Near the carrier's peak, twice that for a doubler: what flows at no voltage may be an exponential beyond all numbers.
    let far = V + Math.abs(bias) || forward;
    while (far < forward && excess(far) > 0) far *= 2;
    return root(excess, 0, Math.min(far, forward));
  };
  const excess = (V: number): number => {
    averaged.at(V, bias - direct(V), out);
    iterations++;
    return hypotenuse(V + Zs.re * out.fundamental, Zs.im * out.fundamental) - E;
  };
  const V = E > 0 && excess(E) > 0 ? root(excess, 0, E, 1e-12 * E) : E;
  return { V, D: direct(V), iterations };
}
