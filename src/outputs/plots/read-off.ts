import type { Box } from '../scene/boxes.ts';

/** What a plot says of a place along its horizontal axis: under a pointer, or stepped to by key. */
export interface PlotReadout {
  /** Where the data lie, in the scene's unit. */
  readonly box: Box;
  /** Rising, in the scene's unit; at least one. */
  readonly places: readonly number[];
  /** @param index of a place @returns one line with units */
  readonly at: (index: number) => string;
}

/** Nearer than this two places are one, px. */
export const SAME_PLACE = 0.75;
/** From one step of an arrow key to the next, px. */
const STEP = 2;

/**
 * Places to step through along a plot, even ones and those of what stands out, such as stations.
 * @param marks in any order, those off the plot are left out
 */
export function readPlaces({ x, w }: Box, marks: readonly number[]): readonly number[] {
  const within = marks.filter((mark) => mark >= x && mark <= x + w);
  const even = Array.from({ length: Math.floor(w / STEP) + 1 }, (_, i) => x + i * STEP);
  const clear = even.filter((place) => within.every((mark) => Math.abs(mark - place) >= SAME_PLACE));
  return [...new Set([...clear, ...within])].sort((a, b) => a - b);
}

/** Value at x between points of rising x, straight between two; undefined off their ends. */
export function valueBetween(points: readonly (readonly [x: number, y: number])[], x: number): number | undefined {
  if (points.length === 0 || x < points[0][0] || x > points[points.length - 1][0]) return undefined;
  let [low, high] = [0, points.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle][0] <= x) low = middle;
    else high = middle;
  }
  const [[x0, y0], [x1, y1]] = [points[low], points[high]];
  return x1 === x0 ? y0 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
