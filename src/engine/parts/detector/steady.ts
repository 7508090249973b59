import type { Warned } from '../../facts/warning.ts';
import { logI0 } from '../../numerics/bessel-modified.ts';
import { type Complex, complex, divide, ONE } from '../../numerics/complex.ts';
import { wrightOmega } from '../../numerics/lambert.ts';
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
  readonly warnings: readonly Warned[];
}

const LIMIT = 60;

/**
 * Steady carrier through a detector into a direct load, consistent with the linear network it hangs on:
 *   |V + Zs·I1(V, v0)| = E,   v0 = bias - R·I0(V, v0).
 * Newton in V and the direct voltage. A step that would multiply the current is shortened to its logarithm, which
 * keeps the exponential from being overshot; should that ever fail, the equations are nested and bisected, which
 * cannot (I0 rises with v0; and I1 rises with V along the direct load line, by Schwarz's inequality).
 * @throws RangeError when an input is outside its range.
 */
export function steadyDetector(options: SteadyOptions): SteadyDetection {
  const { averaged, openCircuit: E, sourceImpedance, dcResistance: R, bias = 0 } = options;
  if (!(E >= 0 && E <= 1e7)) throw new RangeError(`open-circuit voltage must be from 0 to 1e7 V, got ${E}`);
  if (!(R >= 0 && R <= 1e15)) throw new RangeError(`direct load must be from 0 to 1e15 Ω, got ${R}`);
  if (!(Math.abs(bias) <= 1e3)) throw new RangeError(`bias must be within ±1000 V, got ${bias}`);
  if (!(sourceImpedance.re >= 0 && Math.abs(sourceImpedance.im) < 1e15 && sourceImpedance.re < 1e15)) {
    throw new RangeError(`source resistance must be at least 0 and finite, got ${sourceImpedance.re}`);
  }
  const out = averagedCurrents();
  const solution =
    newton(averaged, E, sourceImpedance, R, bias, out) ?? nested(averaged, E, sourceImpedance, R, bias, out);
  const { V, D, iterations } = solution;
  averaged.at(V, bias - D, out);
  const I1 = out.fundamental;
  const g = V > 0 ? I1 / V : out.meanByDirect;
  const { reverseLimit } = averaged.detector;
  const warnings: Warned[] = [];
  if (reverseLimit !== undefined && V + D - bias > reverseLimit) {
    warnings.push(
      `The detector is driven ${(V + D - bias).toPrecision(2)} V in reverse, beyond the ${reverseLimit} V it bears: it will conduct backwards and give less than shown.`,
    );
  }
  const { measured, slopeVoltage } = averaged.detector;
  if (measured) {
    const mean = bias - D;
    if (V < measured.apart && measured.apart > 1.5 * slopeVoltage && Math.abs(mean) < measured.apart)
      warnings.push(
        `The carrier across it, ${volts(V)} peak, is smaller than the ${volts(measured.apart)} between the points measured about 0 V: what it detects rests on the law laid through all of them.`,
      );
    if (mean + V > measured.highest + 1e-3 || mean < measured.lowest - slopeVoltage)
      warnings.push(
        `It works from ${volts(mean - V)} to ${volts(mean + V)}, beyond what was measured (${volts(measured.lowest)} to ${volts(measured.highest)}).`,
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

const volts = (v: Volts): string => `${Number((v * 1000).toPrecision(2))} mV`;

interface Solution {
  V: number;
  D: number;
  iterations: number;
}

/** Direct voltage a plain exponential of this slope and scale would give: exact for one, a good start for the rest. */
function guessDirect({ detector }: AveragedDetector, V: number, R: number, bias: number): number {
  const s = detector.slopeVoltage;
  const a = (R * detector.currentScale) / s;
  if (!(a > 1e-12)) return R * detector.current(bias);
  return s * (wrightOmega(a + bias / s + Math.log(a) + logI0(V / s)) - a);
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
  const scale = averaged.detector.currentScale;
  const noSource = Rs === 0 && Xs === 0;
  // Small-signal loading to start with, or the heavy-signal one if that is lighter.
  averaged.at(0, bias, out);
  const g = Math.min(
    out.meanByDirect,
    E > 4 * averaged.detector.slopeVoltage && R > 0 ? 3 / R : Number.POSITIVE_INFINITY,
  );
  let V = noSource ? E : E / Math.hypot(1 + g * Rs, g * Xs);
  let D = guessDirect(averaged, V, R, bias);
  for (let k = 1; k <= LIMIT; k++) {
    averaged.at(V, bias - D, out);
    const I1 = out.fundamental;
    const a = V + Rs * I1;
    const b = Xs * I1;
    const m = Math.hypot(a, b);
    const F1 = noSource ? 0 : m - E;
    const F2 = R * out.mean - D;
    const along = m > 0 ? (a * Rs + b * Xs) / m : Rs;
    const J11 = noSource ? 1 : (m > 0 ? a / m : 1) + along * out.fundamentalByAmplitude;
    const J12 = noSource ? 0 : -along * out.fundamentalByDirect;
    const J21 = R * out.meanByAmplitude;
    const J22 = -1 - R * out.meanByDirect;
    const det = J11 * J22 - J12 * J21;
    let dV = (J12 * F2 - J22 * F1) / det;
    let dD = (J21 * F1 - J11 * F2) / det;
    if (!Number.isFinite(dV) || !Number.isFinite(dD)) return undefined;
    // How many times the current would grow, were the curve straight; e-fold by e-fold it grows by the logarithm.
    const growth = (out.meanByAmplitude * dV - out.meanByDirect * dD) / (Math.abs(out.mean) + scale);
    if (growth > 0.3) {
      const shorter = Math.log1p(growth) / growth;
      dV *= shorter;
      dD *= shorter;
    }
    const next = Math.min(Math.max(V + dV, 0.1 * V), E);
    const moved = Math.abs(next - V);
    V = next;
    D += dD;
    if (moved <= 1e-9 * V && Math.abs(dD) <= 1e-9 * Math.abs(D) + 1e-15 * (Math.abs(bias) + V)) {
      return { V, D, iterations: k };
    }
  }
  return undefined;
}

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
    // F(D) = R·I0(V, bias - D) - D falls; its root lies between these.
    averaged.at(V, bias, out);
    const forward = R * out.mean;
    let low = Math.min(0, forward);
    let high = Math.max(0, Math.min(forward, V + Math.abs(bias)));
    for (let k = 0; k < 100 && high - low > 1e-13 * (Math.abs(low) + Math.abs(high)); k++) {
      const mid = (low + high) / 2;
      averaged.at(V, bias - mid, out);
      iterations++;
      if (R * out.mean > mid) low = mid;
      else high = mid;
    }
    return (low + high) / 2;
  };
  let low = 0;
  let high = E;
  for (let k = 0; k < 100 && high - low > 1e-13 * high; k++) {
    const mid = (low + high) / 2;
    averaged.at(mid, bias - direct(mid), out);
    iterations++;
    if (Math.hypot(mid + Zs.re * out.fundamental, Zs.im * out.fundamental) < E) low = mid;
    else high = mid;
  }
  const V = (low + high) / 2;
  return { V, D: direct(V), iterations };
}
