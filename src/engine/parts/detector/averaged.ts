import { logI0, ratioI1I0 } from '../../numerics/bessel-modified.ts';
import { wrightOmega } from '../../numerics/lambert.ts';
import { lookUpOmega, OMEGA_HIGHEST, OMEGA_LOWEST, omegaTable } from '../../numerics/omega-table.ts';
import type { Ohms, Volts } from '../../units/quantities.ts';
import type { Detector, DevicePoint, ExponentialLaw } from './detector.ts';
import { boundedExp } from './exponential.ts';

/** Averages over the carrier's cycle, and how they change. Made once by the caller and filled in. */
export interface AveragedCurrents {
  /** Mean current, A. */
  mean: number;
  /** Peak of the current at the carrier's frequency, in phase with the voltage, A. */
  fundamental: number;
  /** d(mean)/dV, S. */
  meanByAmplitude: number;
  /** d(mean)/dv0, S. */
  meanByDirect: number;
  /** d(fundamental)/dV, S. */
  fundamentalByAmplitude: number;
  /** d(fundamental)/dv0, S: twice `meanByAmplitude`, by symmetry. */
  fundamentalByDirect: number;
}

export const averagedCurrents = (): AveragedCurrents => ({
  mean: 0,
  fundamental: 0,
  meanByAmplitude: 0,
  meanByDirect: 0,
  fundamentalByAmplitude: 0,
  fundamentalByDirect: 0,
});

/** A device seen from the carrier's envelope: what flows when V·cos θ + v0 stands across it. */
export interface AveragedDetector {
  readonly detector: Detector;
  /** How many devices the direct voltage stands across in series; default 1. */
  readonly inSeries?: number;
  /** The same with more resistance in series with each device, above 0 Ω; only where the averages have a closed form. */
  readonly withResistance?: (added: Ohms) => AveragedDetector;
  /**
   * @param amplitude V, peak volts, at least 0. @param direct v0, volts. @param out filled in.
   * Finite for every V up to 1 kV; good to 1e-4 or better (closed form: 1e-9).
   */
  readonly at: (amplitude: Volts, direct: Volts, out: AveragedCurrents) => void;
}

/** One for each detector, so that what is found for it can be kept with it. */
const known = new WeakMap<Detector, AveragedDetector>();

/**
 * The averages of a device: closed form for an exponential, else by quadrature over the cycle.
 * @param detector any device
 * @returns mean current (A) and its parts at the carrier under a carrier (V, peak) on a direct voltage (V)
 */
export function averaged(detector: Detector): AveragedDetector {
  let entry = known.get(detector);
  if (!entry) known.set(detector, (entry = averagesOf(detector)));
  return entry;
}

function averagesOf(detector: Detector): AveragedDetector {
  const { law } = detector;
  if (!law) return { detector, at: averagesOfCurve(detector) };
  return {
    detector,
    at: law.seriesResistance > 0 ? overPulse(law) : closedForm(law),
    withResistance: (added) => ({
      detector,
      at: overPulse({ ...law, seriesResistance: law.seriesResistance + added }),
    }),
  };
}

/** mean = Is(I0(x)·e^y - 1), fundamental = 2·Is·I1(x)·e^y with x = V/s, y = v0/s; from ln I0 and I1/I0 alone. */
function closedForm({ saturationCurrent: Is, slopeVoltage: s, leakage: G }: ExponentialLaw): AveragedDetector['at'] {
  return (V, v0, out) => {
    const x = V / s;
    const z = logI0(x) + v0 / s;
    const r = ratioI1I0(x);
    const w = boundedExp(z);
    const g = (Is / s) * (z < 250 ? w : boundedExp(250));
    const rx = x > 1e-8 ? r / x : 0.5;
    out.mean = Is * (z < 1 ? Math.expm1(z) : w - 1) + G * v0;
    out.fundamental = 2 * Is * w * r + G * V;
    out.meanByAmplitude = g * r;
    out.meanByDirect = g + G;
    out.fundamentalByAmplitude = 2 * g * (1 - rx) + G;
    out.fundamentalByDirect = 2 * g * r;
  };
}

/** X up to which a pulse is taken by its Taylor series: what that leaves out is 3e-10 of what is rectified. */
const FAINT_PULSE = 0.02;
/** X from which ω may be looked up: the table's error of 1e-11 of what flows is then below 1e-9 of what is rectified, X²/4 of it. */
const TABLED_PULSE = 0.25;

/**
 * Exponential with series resistance. The current is the reverse line -Is + G(v + Rs·Is)/k plus a pulse
 * s·ω(z)/Rs, z = (v + Rs·Is)/(k·s) + ln A, k = 1 + Rs·G, A = Rs·Is/(k·s), ω Wright's omega. Only the pulse needs
 * quadrature: the trapezium rule where it is not negligible, which for such a bell converges as fast as Gauss's.
 */
function overPulse(law: ExponentialLaw): AveragedDetector['at'] {
  const { saturationCurrent: Is, slopeVoltage: s, seriesResistance: Rs, leakage: G } = law;
  const k = 1 + Rs * G;
  const atRest = (Rs * Is) / (k * s);
  const logA = Math.log(atRest);
  const line = G / k;
  const table = omegaTable();
  return (V, v0, out) => {
    const X = V / (k * s);
    const middle = (v0 + Rs * Is) / (k * s) + logA;
    if (X < FAINT_PULSE) {
      faintPulse(law, atRest, X, v0, middle, out);
      return;
    }
    const peak = middle + X;
    const isTabled = X >= TABLED_PULSE && middle - X >= OMEGA_LOWEST && peak < OMEGA_HIGHEST;
    const top = peak < -30 ? peak : Math.log(isTabled ? lookUpOmega(peak, table) : wrightOmega(peak));
    // Where the pulse has fallen to 1e-10 of its height.
    const edge = top - 23;
    const cosEdge = (edge - middle) / X;
    const to = X > 0 && cosEdge > -1 ? Math.acos(Math.min(cosEdge, 1 - 1e-12)) : Math.PI;
    // Steps short against the bell's width and against the corner where the resistance takes over (z near -1).
    let step = 0.9 / Math.sqrt(X + 0.05);
    if (peak > -2) {
      const c = Math.max(-1, Math.min(1, (-1 - middle) / X));
      step = Math.min(step, 1.7 / (X * Math.sqrt(1 - c * c) + 0.05));
    }
    // 240 points put even a sharp corner within 1e-5.
    const N = Math.max(12, Math.min(240, Math.ceil(to / step)));
    const h = to / N;
    // cos(j·h) by recurrence: two multiplications a point.
    const twoCos = 2 * Math.cos(h);
    let c1 = Math.cos(h);
    let c = 1;
    let p0 = 0;
    let p1 = 0;
    let d0 = 0;
    let d1 = 0;
    let d2 = 0;
    for (let j = 0; j <= N; j++) {
      const w = isTabled ? lookUpOmega(middle + X * c, table) : wrightOmega(middle + X * c);
      const end = j === 0 || j === N ? 0.5 : 1;
      const p = end * w;
      const d = p / (1 + w);
      p0 += p;
      p1 += p * c;
      d0 += d;
      d1 += d * c;
      d2 += d * c * c;
      const next = twoCos * c - c1;
      c1 = c;
      c = next;
    }
    const share = h / Math.PI;
    const current = (share * s) / Rs;
    const slope = share / (k * Rs);
    out.mean = current * p0 - Is + line * (v0 + Rs * Is);
    out.fundamental = 2 * current * p1 + line * V;
    out.meanByAmplitude = slope * d1;
    out.meanByDirect = slope * d0 + line;
    out.fundamentalByAmplitude = 2 * slope * d2 + line;
    out.fundamentalByDirect = 2 * slope * d1;
  };
}

/**
 * The same for a faint carrier, from the derivatives of ω = ω(z) at the middle: summed over the cycle, what it rectifies
 * would drown in the rounding of what flows. @param a ω with no voltage at all.
 */
function faintPulse(
  { seriesResistance: Rs, slopeVoltage: s, leakage: G }: ExponentialLaw,
  a: number,
  X: number,
  v0: Volts,
  middle: number,
  out: AveragedCurrents,
): void {
  const k = 1 + Rs * G;
  const line = G / k;
  const w = wrightOmega(middle);
  const q = 1 / (1 + w);
  const w1 = w * q;
  const w2 = w * q ** 3;
  const w3 = w * (1 - 2 * w) * q ** 5;
  const w4 = w * (1 + w * (6 * w - 8)) * q ** 7;
  const w5 = w * (1 + w * (-22 + w * (58 - 24 * w))) * q ** 9;
  const XX = X * X;
  const perVolt = 1 / (k * Rs);
  out.mean = (s / Rs) * (a * overRest(w, a, v0 / (k * s)) + XX * (w2 / 4 + (XX * w4) / 64)) + line * v0;
  out.fundamental = X * ((s / Rs) * (w1 + XX * (w3 / 8 + (XX * w5) / 192)) + line * k * s);
  out.meanByAmplitude = perVolt * X * (w2 / 2 + (XX * w4) / 16);
  out.meanByDirect = perVolt * (w1 + XX * (w3 / 4 + (XX * w5) / 64)) + line;
  out.fundamentalByAmplitude = perVolt * (w1 + XX * ((3 * w3) / 8 + (5 * XX * w5) / 192)) + line;
  out.fundamentalByDirect = perVolt * X * (w2 + (XX * w4) / 8);
}

/** ω/a − 1 for ω + ln ω = a + ln a + d, to the last digits however small d is. */
function overRest(w: number, a: number, d: number): number {
  const e = w / a - 1;
  return Math.abs(d) < 1 ? e + (d - a * e - Math.log1p(e)) / (a + 1 / (1 + e)) : e;
}

const FEWEST = 16;
const MOST = 2048;
/** Of a curve's slope voltage: a fainter carrier is taken by what so strong a one does, in proportion. */
const FAINT_CARRIER = 0.003;
const cosines = Float64Array.from({ length: MOST + 1 }, (_, i) => Math.cos((Math.PI * i) / MOST));

/**
 * Any curve: its cycle summed; for a faint carrier, where what is rectified would drown in the rounding of what flows,
 * that of a stronger one in proportion to V² (to V for the current at the carrier): good to 1.2e-6.
 */
function averagesOfCurve(detector: Detector): AveragedDetector['at'] {
  const sum = overWholeCycle(detector);
  const least = FAINT_CARRIER * detector.slopeVoltage;
  const point: DevicePoint = { current: 0, conductance: 0 };
  return (V, v0, out) => {
    if (!(V < least)) {
      sum(V, v0, out);
      return;
    }
    sum(least, v0, out);
    detector.evaluate(v0, point);
    const share = V / least;
    out.mean = point.current + share * share * (out.mean - point.current);
    out.meanByDirect = point.conductance + share * share * (out.meanByDirect - point.conductance);
    out.meanByAmplitude *= share;
    out.fundamentalByDirect *= share;
    out.fundamentalByAmplitude = out.fundamental / least;
    out.fundamental *= share;
  };
}

/** The trapezium rule over half a cycle, doubled until it no longer changes. */
function overWholeCycle(detector: Detector): AveragedDetector['at'] {
  const point: DevicePoint = { current: 0, conductance: 0 };
  const { evaluate, currentScale } = detector;
  return (V, v0, out) => {
    let p0 = 0;
    let p1 = 0;
    let d0 = 0;
    let d1 = 0;
    let d2 = 0;
    // Adds every `stride`-th angle from `first`; the ends of the half cycle count half.
    const add = (first: number, stride: number) => {
      for (let j = first; j <= MOST; j += stride) {
        const c = cosines[j];
        evaluate(v0 + V * c, point);
        const end = j === 0 || j === MOST ? 0.5 : 1;
        const p = end * point.current;
        const d = end * point.conductance;
        p0 += p;
        p1 += p * c;
        d0 += d;
        d1 += d * c;
        d2 += d * c * c;
      }
    };
    add(0, MOST / FEWEST);
    let N = FEWEST;
    let mean = p0 / N;
    let fundamental = (2 * p1) / N;
    while (N < MOST) {
      add(MOST / (2 * N), MOST / N);
      N *= 2;
      const was0 = mean;
      const was1 = fundamental;
      mean = p0 / N;
      fundamental = (2 * p1) / N;
      if (
        Math.abs(mean - was0) <= 2e-5 * Math.abs(mean) + 1e-13 * currentScale &&
        Math.abs(fundamental - was1) <= 2e-5 * Math.abs(fundamental) + 1e-13 * currentScale
      ) {
        break;
      }
    }
    out.mean = mean;
    out.fundamental = fundamental;
    out.meanByAmplitude = d1 / N;
    out.meanByDirect = d0 / N;
    out.fundamentalByAmplitude = (2 * d2) / N;
    out.fundamentalByDirect = (2 * d1) / N;
  };
}
