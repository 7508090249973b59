import { type MonotoneCurve, monotoneCurve } from '../numerics/monotone.ts';
import { NINETY } from './spread.ts';

/** How a figure answers to one input: what it adds at a value of it, 0 in the middle. */
export type FigureResponse = (x: number) => number;

/** As far beyond its outer points as a parabola is trusted, in shares of their distance from the middle. */
const BEYOND = 1.6;

/** Slope and bend in the middle, and how far to both sides it is trusted. */
interface Parabola {
  readonly slope: number;
  readonly bend: number;
  readonly from: number;
  readonly to: number;
}

const NO_RESPONSE: Parabola = { slope: 0, bend: 0, from: 0, to: 0 };

/** Through three evaluations, 0 in the middle; a value missing counts as on a straight line with the others. */
function parabolaThrough([a, ya]: readonly [x: number, y: number], [b, yb]: readonly [x: number, y: number]): Parabola {
  if (!(a < 0 && b > 0)) return NO_RESPONSE;
  const fromLow = ya / a;
  const fromHigh = yb / b;
  const [sa, sb] = [
    Number.isFinite(fromLow) ? fromLow : Number.isFinite(fromHigh) ? fromHigh : 0,
    Number.isFinite(fromHigh) ? fromHigh : Number.isFinite(fromLow) ? fromLow : 0,
  ];
  const bend = (sb - sa) / (b - a);
  return { slope: sa - bend * a, bend, from: BEYOND * a, to: BEYOND * b };
}

/**
 * Adds to a figure in every set drawn what one input adds to it: a parabola through the ends of the input's 90 % range.
 * @param deviates of the input. @param low what it adds at the lower end; NaN where that was not evaluated. @param high likewise.
 */
export function addResponse(draws: Float64Array, deviates: Float64Array, low: number, high: number): void {
  const { slope, bend, from, to } = parabolaThrough([-NINETY, low], [NINETY, high]);
  // Most inputs leave most figures as they are.
  if (slope === 0 && bend === 0) return;
  for (let k = 0; k < draws.length; k++) {
    const t = Math.min(to, Math.max(from, deviates[k]));
    draws[k] += t * (slope + t * bend);
  }
}

/** A smooth curve through evaluations, straight beyond its ends, 0 at x = 0 which must be among them. */
export function throughPoints(points: readonly (readonly [x: number, y: number])[]): FigureResponse {
  const finite = points
    .filter(([, y]) => Number.isFinite(y))
    .sort((p, q) => p[0] - q[0])
    .filter(([x], i, all) => i === 0 || x - all[i - 1][0] > 1e-9);
  if (finite.length < 2) return () => 0;
  const curve: MonotoneCurve = monotoneCurve(
    finite.map(([x]) => x),
    finite.map(([, y]) => y),
  );
  const [first, last] = [finite[0], finite[finite.length - 1]];
  const below = (finite[1][1] - first[1]) / (finite[1][0] - first[0]);
  const before = finite[finite.length - 2];
  const above = (last[1] - before[1]) / (last[0] - before[0]);
  return (x) =>
    x < first[0] ? first[1] + below * (x - first[0]) : x > last[0] ? last[1] + above * (x - last[0]) : curve.at(x);
}
