import type { Seconds } from '../../../engine/units/quantities.ts';
import { emptyRange, type Trace } from './range.ts';

/** Columns to a cycle from which on the eye follows the line, and up to which it sees a bar. */
const LINE_FROM = 6;
const BAR_TO = 4;

/**
 * Least and greatest of a trace for each of so many columns, as they are to be drawn. Close up that is what each column
 * holds. Where single cycles cannot be told apart, each column has the extremes of a whole cycle about it: columns that
 * catch a crest only now and then would beat with the cycles, and a steady carrier would look modulated. Between, the
 * one passes into the other.
 * @param cycle of the slowest carrier in it, s; 0 where there is none.
 * @param over cycles a column of a bar holds at least.
 */
export function drawnExtremes(
  trace: Trace,
  cycle: Seconds,
  over: number,
  t0: Seconds,
  t1: Seconds,
  columns: number,
  min: Float64Array,
  max: Float64Array,
): void {
  trace.prepare?.(t0, t1, columns);
  const each = (t1 - t0) / columns;
  const bar = each < over * cycle ? barShare(cycle / each) : 0;
  // A hair more than whole cycles, so that rounding never loses a crest.
  const beyond = Math.max(0, (over * cycle * 1.000001 - each) / 2);
  for (let i = 0; i < columns; i++) {
    const a = t0 + i * each;
    let low = 0;
    let high = 0;
    if (bar < 1) {
      trace.extent(a, a + each, range);
      low += (1 - bar) * range.min;
      high += (1 - bar) * range.max;
    }
    if (bar > 0) {
      trace.extent(a - beyond, a + each + beyond, range);
      low += bar * range.min;
      high += bar * range.max;
    }
    min[i] = low;
    max[i] = high;
  }
}

const range = emptyRange();

/** How much of a bar is seen, with so many columns to a cycle: 0 to 1. */
function barShare(columnsPerCycle: number): number {
  const u = Math.min(1, Math.max(0, (LINE_FROM - columnsPerCycle) / (LINE_FROM - BAR_TO)));
  return u * u * (3 - 2 * u);
}
