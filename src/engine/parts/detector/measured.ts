import { monotoneCurve } from '../../numerics/monotone.ts';
import { type Amperes, type Farads, type Kelvins, temperatureVoltage, type Volts } from '../../units/quantities.ts';
import type { Detector, DevicePoint } from './detector.ts';

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
  readonly label?: string;
}

const millivolts = (v: number) => `${(v * 1000).toPrecision(3)} mV`;

/**
 * A device known by measured points. Between them a monotone curve is drawn through ln(1 + i/i0), with the i0 that makes
 * the forward points straightest (for a junction, its saturation current); beyond them the current goes on in a
 * straight line.
 * Points taken twice are averaged; where the current falls as the voltage rises, neighbours are levelled (with a warning).
 * @throws RangeError with fewer than two different voltages, or a point that is not finite.
 */
export function measuredDetector(options: MeasuredOptions): Detector {
  const { junctionCapacitance = 0, temperature = 300, label = 'Measured detector' } = options;
  const warnings: string[] = [];
  const points = merged(options.points);
  if (points.length < 2) throw new RangeError(`a measured curve needs two different voltages, got ${points.length}`);
  const lowest = points[0].v;
  const highest = points[points.length - 1].v;
  if (lowest > 0 || highest < 0) {
    points.push({ v: 0, i: 0, weight: 1 });
    points.sort((a, b) => a.v - b.v);
    warnings.push('No point at or on both sides of 0 V was measured: no current at 0 V is assumed.');
  }
  if (level(points)) {
    warnings.push('Some measured currents fall as the voltage rises; neighbouring points were levelled.');
  }
  const v = points.map((p) => p.v);
  const i = points.map((p) => p.i);
  const n = points.length;
  const sizes = i.map(Math.abs).filter((x) => x > 0);
  if (sizes.length === 0) warnings.push('No current flows at any measured point: nothing will be heard through this.');
  const i0 = straightening(v, i, sizes);
  // ln(1 + i/i0), straight for an exponential, run on as a straight line of i where the junction blocks.
  const knee = -i0 / 2;
  const up = (x: number) => (x > knee ? Math.log1p(x / i0) : -Math.LN2 + (2 * (x - knee)) / i0);
  const curve = monotoneCurve(v, i.map(up));
  const down = (y: number) => (y > -Math.LN2 ? i0 * Math.expm1(y) : knee + ((y + Math.LN2) * i0) / 2);
  const downSlope = (y: number) => (y > -Math.LN2 ? i0 * Math.exp(y) : i0 / 2);
  const slopeAt = (x: number) => curve.slopeAt(x) * downSlope(curve.at(x));
  const first = { v: v[0], i: i[0], g: Math.max(slopeAt(v[0]), 0) };
  const last = { v: v[n - 1], i: i[n - 1], g: Math.max(slopeAt(v[n - 1]), 0) };
  if (highest < 0.1) {
    warnings.push(
      `The curve was measured to ${millivolts(highest)} only; stronger swings run on along a straight line.`,
    );
  }
  const evaluate = (at: number, out: DevicePoint) => {
    if (at <= first.v || at >= last.v) {
      const end = at <= first.v ? first : last;
      out.current = end.i + end.g * (at - end.v);
      out.conductance = end.g;
      return;
    }
    const y = curve.at(at);
    out.current = down(y);
    out.conductance = Math.max(curve.slopeAt(at), 0) * downSlope(y);
  };
  const scratch: DevicePoint = { current: 0, conductance: 0 };
  const read = (at: number) => {
    evaluate(at, scratch);
    return scratch;
  };
  const s = 1.2 * temperatureVoltage(temperature);
  return {
    kind: 'measured',
    label,
    current: (at) => read(at).current,
    conductance: (at) => read(at).conductance,
    evaluate,
    junctionCapacitance,
    seriesResistance: 0,
    temperature,
    slopeVoltage: s,
    currentScale: Math.max(read(0).conductance * s, 1e-12),
    warnings,
  };
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
      throw new RangeError(`measured point ${index} must be finite, got ${voltage} V, ${current} A`);
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
