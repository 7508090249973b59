import { nonNegativeLeastSquares } from '../../numerics/nonnegative.ts';
import { type Amperes, temperatureVoltage, type Volts } from '../../units/quantities.ts';
import type { Detector, DevicePoint } from './detector.ts';
import { exponentialDetector } from './exponential.ts';

/** i = a·(exp(u/s) − 1) + q + G·u with u = v − i·Rs: a junction, or with q > 0 a valve, whose current does not end at 0 V. */
export interface FittedLaw {
  readonly evaluate: (voltage: Volts, out: DevicePoint) => void;
  readonly slopeVoltage: Volts;
  /** Whether current flows at 0 V, as from a hot cathode. */
  readonly isHot: boolean;
  /** Root of the mean square of the relative errors at the points. */
  readonly error: number;
}

/** Slopes tried, V: from a cold ideal junction to a hot cathode or a poor crystal. */
const LEAST_SLOPE = 0.02;
const LARGEST_SLOPE = 0.25;
const SLOPES = 28;
const RESISTANCES = 9;
/** Of the best places found, so many are followed downhill. */
const STARTS = 3;
/** Where too few points leave a choice, the usual wins: 1.15·kT/e, no resistance. Squares of relative errors. */
const USUAL = 1e-6;

/**
 * The law of a junction that comes nearest to measured points, by relative error. Its slope and resistance are searched,
 * the rest is least squares that may not turn negative. @returns undefined where no such law can be had.
 */
export function fittedLaw(v: readonly Volts[], i: readonly Amperes[]): FittedLaw | undefined {
  const n = v.length;
  const sizes = i.map(Math.abs).filter((x) => x > 0);
  const top = Math.max(...i);
  if (sizes.length < 2 || !(top > 0)) return undefined;
  const floor = 0.02 * Math.min(...sizes);
  const weight = i.map((x) => 1 / (Math.abs(x) + floor));
  const highest = v[i.indexOf(top)];
  const usual = 1.15 * temperatureVoltage(300);

  // Only a hot cathode sends current at 0 V and against a little voltage.
  const isHot = v.some((x, k) => x <= 0 && i[k] > 0);
  const matrix = new Float64Array(3 * n);
  const right = Float64Array.from(i, (x, k) => x * weight[k]);
  const linear = (s: number, R: number): { x: Float64Array; cost: number; error: number } | undefined => {
    // Junction, valve's own current, leakage; columns of like size.
    const most = (highest - top * R) / s;
    const scale = Math.exp(-Math.max(0, most));
    const leak = 1 / Math.max(Math.abs(highest), 1e-3);
    for (let k = 0; k < n; k++) {
      const u = v[k] - i[k] * R;
      const z = Math.min(u / s, 600);
      matrix[3 * k] = weight[k] * (z < 1 ? Math.expm1(z) : Math.exp(z) - 1) * scale;
      matrix[3 * k + 1] = isHot ? weight[k] * Math.exp(z) * scale : 0;
      matrix[3 * k + 2] = weight[k] * u * leak;
    }
    if (!matrix.every(Number.isFinite)) return undefined;
    const x = nonNegativeLeastSquares(matrix, right, 3);
    let square = 0;
    for (let k = 0; k < n; k++) {
      const r = matrix[3 * k] * x[0] + matrix[3 * k + 1] * x[1] + matrix[3 * k + 2] * x[2] - right[k];
      square += r * r;
    }
    x[0] *= scale;
    x[1] *= scale;
    x[2] *= leak;
    const cost = square / n + USUAL * (Math.log(s / usual) ** 2 + (top * R * 10) ** 2);
    return { x, cost, error: Math.sqrt(square / n) };
  };

  const largest = Math.max(highest, 0) / top;
  // Searched as ln s and R over the largest it could be, both of the order of 1.
  const costAt = ([p, q]: readonly number[]): number => {
    const s = Math.exp(p);
    if (!(s >= LEAST_SLOPE && s <= LARGEST_SLOPE && q < 0.99)) return Number.POSITIVE_INFINITY;
    return linear(s, Math.abs(q) * largest)?.cost ?? Number.POSITIVE_INFINITY;
  };
  const grid: { at: [number, number]; cost: number }[] = [];
  for (let a = 0; a < SLOPES; a++) {
    const p = Math.log(LEAST_SLOPE) + (Math.log(LARGEST_SLOPE / LEAST_SLOPE) * a) / (SLOPES - 1);
    for (let b = 0; b <= RESISTANCES; b++) {
      const at: [number, number] = [p, b === 0 ? 0 : 0.9 * 2 ** (1 - b)];
      grid.push({ at, cost: costAt(at) });
    }
  }
  grid.sort((a, b) => a.cost - b.cost);
  if (!Number.isFinite(grid[0].cost)) return undefined;
  let best = grid[0];
  for (const { at } of grid.slice(0, STARTS)) {
    const low = downhill(costAt, at);
    if (low.cost < best.cost) best = low;
  }
  const s = Math.exp(best.at[0]);
  const R = Math.abs(best.at[1]) * largest;
  const fit = linear(s, R);
  if (!fit) return undefined;
  const [junction, own, leakage] = fit.x;
  const a = junction + own;
  if (!(a > 1e-18 && a < 1 && R < 1e9 && leakage <= 1)) return undefined;
  const device: Detector = exponentialDetector({
    saturationCurrent: a,
    ideality: s / temperatureVoltage(300),
    seriesResistance: R,
    leakage,
  });
  return {
    slopeVoltage: s,
    isHot: own > 0,
    error: fit.error,
    evaluate(voltage, out) {
      device.evaluate(voltage - R * own, out);
      out.current += own;
    },
  };
}

/** Down to the bottom of a function of two variables by a triangle that turns and shrinks (Nelder and Mead 1965). */
function downhill(
  f: (x: readonly number[]) => number,
  from: readonly [number, number],
): { at: [number, number]; cost: number } {
  const corner = (x: number, y: number) => ({ at: [x, y] as [number, number], cost: f([x, y]) });
  const [x, y] = from;
  const t = [corner(x, y), corner(x - 0.07, y), corner(x, y + 0.25 * y + 1e-3)];
  for (let turn = 0; turn < 160; turn++) {
    t.sort((a, b) => a.cost - b.cost);
    const [best, middle, worst] = t;
    if (Math.hypot(worst.at[0] - best.at[0], worst.at[1] - best.at[1]) < 1e-7) break;
    const cx = (best.at[0] + middle.at[0]) / 2;
    const cy = (best.at[1] + middle.at[1]) / 2;
    const along = (k: number) => corner(cx + k * (worst.at[0] - cx), cy + k * (worst.at[1] - cy));
    const over = along(-1);
    if (over.cost < best.cost) {
      const far = along(-2);
      t[2] = far.cost < over.cost ? far : over;
    } else if (over.cost < middle.cost) t[2] = over;
    else {
      const near = along(over.cost < worst.cost ? -0.5 : 0.5);
      if (near.cost < Math.min(worst.cost, over.cost)) t[2] = near;
      else for (const k of [1, 2]) t[k] = corner((best.at[0] + t[k].at[0]) / 2, (best.at[1] + t[k].at[1]) / 2);
    }
  }
  t.sort((a, b) => a.cost - b.cost);
  return t[0];
}
