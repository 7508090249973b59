import type { Seconds } from '../../../engine/units/quantities.ts';
import { emptyRange, type Trace } from './range.ts';

/** Columns to a cycle from which on the eye follows the line, and up to which it sees a bar. */
const LINE_FROM = 6;
const BAR_TO = 4;

/** Among neighbours a bar is drawn while a column holds fewer cycles than this: with more, the tallest is the same in each. */
const CROWDED_BAR_TO = 4;
/** Among neighbours one crest differs from the next: a bar's height is averaged with falling weight as far as this, cycles. */
const AVERAGED = 1.75;

/**
 * Least and greatest of a trace for each of so many columns, as they are to be drawn. Close up that is what each column
 * holds. Where single cycles cannot be told apart, each column has the extremes of whole cycles about it: columns that
 * catch a crest only now and then would beat with the cycles, and a steady carrier would look modulated. Between, the
 * one passes into the other.
 * @param cycle of the slowest carrier in it, s; 0 where there is none.
 * @param crowded whether other carriers make one crest differ from the next: the height drawn then follows the envelope
 *   by an average over a few cycles, without steps.
 */
export function drawnExtremes(
  trace: Trace,
  cycle: Seconds,
  crowded: boolean,
  t0: Seconds,
  t1: Seconds,
  columns: number,
  min: Float64Array,
  max: Float64Array,
): void {
  trace.prepare?.(t0, t1, columns);
  const each = (t1 - t0) / columns;
  const bar = each < (crowded ? CROWDED_BAR_TO : 1) * cycle ? barShare(cycle / each) : 0;
  if (bar > 0) fillBars(trace, cycle, crowded ? Math.ceil((AVERAGED * cycle) / each) : 0, t0, each, columns, min, max);
  if (bar === 1) return;
  for (let i = 0; i < columns; i++) {
    const a = t0 + i * each;
    trace.extent(a, a + each, range);
    min[i] = bar === 0 ? range.min : bar * min[i] + (1 - bar) * range.min;
    max[i] = bar === 0 ? range.max : bar * max[i] + (1 - bar) * range.max;
  }
}

/** Extremes of whole cycles about each column, averaged over `reach` columns to either side. */
function fillBars(
  trace: Trace,
  cycle: Seconds,
  reach: number,
  t0: Seconds,
  each: Seconds,
  columns: number,
  min: Float64Array,
  max: Float64Array,
): void {
  // A hair more than whole cycles, so that rounding never loses a crest.
  const half = (Math.max(1, Math.ceil(each / cycle)) * cycle * 1.000001) / 2;
  const count = columns + 2 * reach;
  if (lows.length < count) [lows, highs] = [new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    const middle = t0 + (i - reach + 0.5) * each;
    trace.extent(middle - half, middle + half, range);
    lows[i] = range.min;
    highs[i] = range.max;
  }
  const whole = (reach + 1) ** 2;
  for (let i = 0; i < columns; i++) {
    let low = 0;
    let high = 0;
    for (let k = -reach; k <= reach; k++) {
      const weight = (reach + 1 - Math.abs(k)) / whole;
      low += weight * lows[i + reach + k];
      high += weight * highs[i + reach + k];
    }
    min[i] = low;
    max[i] = high;
  }
}

const range = emptyRange();
let lows = new Float64Array(0);
let highs = new Float64Array(0);

/** How much of a bar is seen, with so many columns to a cycle: 0 to 1. */
function barShare(columnsPerCycle: number): number {
  const u = Math.min(1, Math.max(0, (LINE_FROM - columnsPerCycle) / (LINE_FROM - BAR_TO)));
  return u * u * (3 - 2 * u);
}
