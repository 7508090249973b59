import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { type MonotoneCurve, monotoneCurve } from '../../numerics/monotone.ts';
import { type Amperes, type Farads, type Kelvins, temperatureVoltage, type Volts } from '../../units/quantities.ts';
import type { Detector, DevicePoint } from './detector.ts';
import { fittedLaw } from './fitted-law.ts';

export interface MeasuredPoint {
  readonly voltage: Volts;
  readonly current: Amperes;
}

export interface MeasuredOptions {
  /** Two points or more, in any order. */
  readonly points: readonly MeasuredPoint[];
  readonly junctionCapacitance?: Farads;
  /** When it was measured; the table is used as it stands. Default 300 K. */
  readonly temperature?: Kelvins;
}

/**
 * A device known by measured points. Through them the law of a junction (or valve) is laid, and the points' ratios to it
 * are carried between them by a monotone curve: the bend near 0 V, which faint signals live on, is then that of the law
 * and not of the few points. Where no law comes within a factor of two of every point, a monotone curve is drawn through
 * ln(1 + i/i0) with the i0 that makes the forward points straightest. Above the points the current goes on in a straight
 * line; below them with the law, or straight.
 * Points taken twice are averaged; where the current falls as the voltage rises, neighbours are levelled (with a warning).
 * @throws RangeError with fewer than two different voltages, or a point that is not finite.
 */
export function measuredDetector(options: MeasuredOptions): Detector {
  const { junctionCapacitance = 0, temperature = 300 } = options;
  const warnings: Warning[] = [];
  const points = merged(options.points);
  if (points.length < 2) throw new ImpossibleValues({ code: 'detector.too-few-voltages', count: points.length });
  const lowest = points[0].v;
  const highest = points[points.length - 1].v;
  if (lowest > 1e-9 || highest < -1e-9) {
    points.push({ v: 0, i: 0, weight: 1 });
    points.sort((a, b) => a.v - b.v);
    warnings.push(warning('detector.measured-without-zero'));
  }
  // A point at 0 V says no more than that the device is cold.
  const count = points.filter(({ v }) => Math.abs(v) > 1e-9).length;
  if (count < ENOUGH) warnings.push(warning('detector.measured-few', { count }));
  if (level(points)) {
    warnings.push(warning('detector.measured-averaged'));
  }
  const v = points.map((p) => p.v);
  const i = points.map((p) => p.i);
  const n = points.length;
  const sizes = i.map(Math.abs).filter((x) => x > 0);
  if (sizes.length === 0) warnings.push(warning('detector.measured-no-current'));
  const guided = lawThroughPoints(v, i);
  const inside = guided?.evaluate ?? throughPoints(v, i, sizes);
  const last = { v: v[n - 1], i: i[n - 1], g: 0 };
  const first = { v: v[0], i: i[0], g: 0 };
  const end: DevicePoint = { current: 0, conductance: 0 };
  for (const e of [first, last]) {
    inside(e.v, end);
    e.g = Math.max(end.conductance, 0);
  }
  if (highest < 0.1) {
    warnings.push(warning('detector.measured-range-short', { highest }));
  }
  if (!guided && sizes.length > 0) warnings.push(warning('detector.measured-no-junction'));
  const evaluate = (at: number, out: DevicePoint) => {
    if (at >= last.v || (!guided && at <= first.v)) {
      const e = at >= last.v ? last : first;
      out.current = e.i + e.g * (at - e.v);
      out.conductance = e.g;
    } else inside(at, out);
  };
  const scratch: DevicePoint = { current: 0, conductance: 0 };
  const read = (at: number) => {
    evaluate(at, scratch);
    return scratch;
  };
  const s = guided?.slopeVoltage ?? 1.2 * temperatureVoltage(temperature);
  return {
    kind: 'measured',
    current: (at) => read(at).current,
    conductance: (at) => read(at).conductance,
    evaluate,
    junctionCapacitance,
    seriesResistance: 0,
    temperature,
    slopeVoltage: s,
    currentScale: Math.max(read(0).conductance * s, 1e-12),
    measured: { apart: apartNear0(v), lowest, highest },
    warnings,
  };
}

/** Figures of a junction with resistance and leakage. */
const ENOUGH = 4;

/** A point further off the law than this factor, and the law is none. */
const FURTHEST = Math.log(2);

/** The fitted law times what the points make of it, between them and on to both sides. */
function lawThroughPoints(
  v: readonly number[],
  i: readonly number[],
): { evaluate: Detector['evaluate']; slopeVoltage: Volts } | undefined {
  // Rounding about nothing at 0 V is nothing.
  const least = Math.min(...i.filter((x, k) => x !== 0 && Math.abs(v[k]) > 1e-9).map(Math.abs));
  const isNothing = i.map((x, k) => x === 0 || (Math.abs(v[k]) <= 1e-9 && Math.abs(x) < 0.02 * least));
  const law = fittedLaw(
    v,
    i.map((x, k) => (isNothing[k] ? 0 : x)),
  );
  if (!law) return undefined;
  const out: DevicePoint = { current: 0, conductance: 0 };
  const at: number[] = [];
  const ratio: number[] = [];
  for (let k = 0; k < v.length; k++) {
    law.evaluate(v[k], out);
    if (isNothing[k] && Math.abs(out.current) < 0.02 * least) continue;
    const r = Math.log(i[k] / out.current);
    if (!(Math.abs(r) < FURTHEST)) return undefined;
    at.push(v[k]);
    ratio.push(r);
  }
  if (at.length < 2) return undefined;
  // The law of a cold device has no current at 0 V, whether that was measured or not.
  const { rho, slope } = ratioCurve(at, ratio, law.slopeVoltage, !law.isHot);
  const evaluate = (x: number, to: DevicePoint) => {
    law.evaluate(x, to);
    const k = Math.exp(rho(x));
    to.conductance = k * (to.conductance + to.current * slope(x));
    to.current *= k;
  };
  // Noise where next to nothing flows may make the product fall: there a plain rising cubic runs from point to point.
  const plain = v.map(() => false);
  for (let k = 1; k < v.length; k++) {
    for (let j = 0; j <= 24 && !plain[k]; j++) {
      evaluate(v[k - 1] + ((v[k] - v[k - 1]) * j) / 24, out);
      plain[k] = !(out.conductance >= 0);
    }
  }
  if (plain.includes(true)) return { evaluate: patched(v, i, plain, evaluate), slopeVoltage: law.slopeVoltage };
  return { evaluate, slopeVoltage: law.slopeVoltage };
}

/** ln(1 + i/i0), straight for an exponential, run on as a straight line of i where the junction blocks. */
function throughPoints(v: readonly number[], i: readonly number[], sizes: readonly number[]): Detector['evaluate'] {
  const i0 = straightening(v, i, sizes);
  const knee = -i0 / 2;
  const up = (x: number) => (x > knee ? Math.log1p(x / i0) : -Math.LN2 + (2 * (x - knee)) / i0);
  const curve = monotoneCurve(v, i.map(up));
  const down = (y: number) => (y > -Math.LN2 ? i0 * Math.expm1(y) : knee + ((y + Math.LN2) * i0) / 2);
  const downSlope = (y: number) => (y > -Math.LN2 ? i0 * Math.exp(y) : i0 / 2);
  return (at, out) => {
    const y = curve.at(at);
    out.current = down(y);
    out.conductance = Math.max(curve.slopeAt(at), 0) * downSlope(y);
  };
}

/**
 * The points' ratio to the law, as a logarithm, all along. Where nothing flows at 0 V the ratio keeps still about it, and
 * goes over into that of the first point below as the junction shuts: as the square of τ = 1 − exp(v/s), so that the
 * current, some −Is·τ·exp(Δ·τ²), rises throughout and the bend at 0 V stays the law's.
 */
function ratioCurve(
  at: readonly number[],
  ratio: readonly number[],
  s: Volts,
  parted: boolean,
): { rho: (x: number) => number; slope: (x: number) => number } {
  const first = at.findIndex((x) => x > 0);
  if (!parted || first < 1) {
    const curve = curveOf(at, ratio);
    return { rho: curve.at, slope: curve.slopeAt };
  }
  const up = curveOf(at.slice(first), ratio.slice(first));
  const down = curveOf(at.slice(0, first), ratio.slice(0, first));
  const shut = at[first - 1];
  const change = ratio[first - 1] - ratio[first];
  const whole = 1 / Math.expm1(shut / s) ** 2;
  return {
    rho: (x) => (x >= 0 ? up.at(x) : x <= shut ? down.at(x) : ratio[first] + change * whole * Math.expm1(x / s) ** 2),
    slope: (x) =>
      x >= 0
        ? up.slopeAt(x)
        : x <= shut
          ? down.slopeAt(x)
          : (2 * change * whole * Math.expm1(x / s) * Math.exp(x / s)) / s,
  };
}

const curveOf = (xs: readonly number[], ys: readonly number[]): Pick<MonotoneCurve, 'at' | 'slopeAt'> =>
  xs.length === 1 ? { at: () => ys[0], slopeAt: () => 0 } : monotoneCurve(xs, ys);

/** `inside`, but for the intervals ending at points marked: a cubic between their ends that rises throughout. */
function patched(
  v: readonly number[],
  i: readonly number[],
  marked: readonly boolean[],
  inside: Detector['evaluate'],
): Detector['evaluate'] {
  const end: DevicePoint = { current: 0, conductance: 0 };
  const pieces = v.map((_, k) => {
    if (!marked[k]) return undefined;
    const h = v[k] - v[k - 1];
    const secant = (i[k] - i[k - 1]) / h;
    // Up to three times the secant a cubic does not turn (Fritsch and Carlson 1980).
    const slope = (at: number) => {
      inside(at, end);
      return Math.min(Math.max(end.conductance, 0), 3 * secant);
    };
    return { h, secant, left: slope(v[k - 1]), right: slope(v[k]) };
  });
  return (x, out) => {
    let k = 1;
    for (let high = v.length; k < high; ) {
      const middle = (k + high) >> 1;
      if (x > v[middle]) k = middle + 1;
      else high = middle;
    }
    const piece = x >= v[0] && k < v.length ? pieces[k] : undefined;
    if (!piece) {
      inside(x, out);
      return;
    }
    const { h, secant, left, right } = piece;
    const t = (x - v[k - 1]) / h;
    const [c, e] = [left - secant, right - secant];
    out.current = i[k - 1] + h * t * (secant + (1 - t) * ((1 - t) * c - t * e));
    out.conductance = Math.max(0, secant + (1 - t) * (1 - 3 * t) * c - t * (2 - 3 * t) * e);
  };
}

/** How far apart the points about 0 V stand, on the wider side. */
function apartNear0(v: readonly number[]): Volts {
  const below = v.filter((x) => x < -1e-9);
  const above = v.filter((x) => x > 1e-9);
  return Math.max(below.length > 0 ? -below[below.length - 1] : 0, above.length > 0 ? above[0] : 0);
}

/** The i0 of 60 tried for which ln(1 + i/i0) of the points from 0 V up bends least. */
function straightening(v: readonly number[], i: readonly number[], sizes: readonly number[]): Amperes {
  if (sizes.length === 0) return 1e-9;
  const largest = Math.max(...sizes);
  const low = Math.max(Math.min(...sizes) / 20, largest * 1e-9);
  let best = low;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 60; k++) {
    const i0 = low * (largest / low) ** (k / 59);
    let before = 0;
    let total = 0;
    let bend = 0;
    let count = 0;
    for (let j = 1; j < v.length; j++) {
      if (v[j - 1] < 0 || !(i[j] > 0)) continue;
      const secant = (Math.log1p(i[j] / i0) - Math.log1p(i[j - 1] / i0)) / (v[j] - v[j - 1]);
      if (count > 0) bend += (secant - before) ** 2;
      total += secant;
      count++;
      before = secant;
    }
    const roughness = count > 1 ? (bend / total ** 2) * count ** 2 : Number.POSITIVE_INFINITY;
    if (roughness < least) {
      least = roughness;
      best = i0;
    }
  }
  return best;
}

interface Point {
  v: number;
  i: number;
  weight: number;
}

function merged(points: readonly MeasuredPoint[]): Point[] {
  const sorted = points.map(({ voltage, current }, index) => {
    if (!Number.isFinite(voltage) || !Number.isFinite(current)) {
      throw new ImpossibleValues({ code: 'detector.point-not-finite', index });
    }
    return { v: voltage, i: current, weight: 1 };
  });
  sorted.sort((a, b) => a.v - b.v);
  const out: Point[] = [];
  for (const p of sorted) {
    const before = out[out.length - 1];
    if (before && p.v - before.v <= 1e-9) {
      before.i = (before.i * before.weight + p.i) / (before.weight + 1);
      before.weight++;
    } else out.push(p);
  }
  return out;
}

/** Pool adjacent violators: the nearest never-falling currents. @returns whether anything was changed. */
function level(points: Point[]): boolean {
  const blocks: { i: number; weight: number; count: number }[] = [];
  for (const p of points) {
    blocks.push({ i: p.i, weight: p.weight, count: 1 });
    while (blocks.length > 1 && blocks[blocks.length - 1].i < blocks[blocks.length - 2].i) {
      const b = blocks.pop()!;
      const a = blocks.pop()!;
      const weight = a.weight + b.weight;
      blocks.push({ i: (a.i * a.weight + b.i * b.weight) / weight, weight, count: a.count + b.count });
    }
  }
  let at = 0;
  for (const block of blocks) for (let k = 0; k < block.count; k++) points[at++].i = block.i;
  return blocks.length < points.length;
}
