/** Least and greatest value of something over a stretch of time. Made once by the caller and filled in. */
export interface Range {
  min: number;
  max: number;
}

export const emptyRange = (): Range => ({ min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY });

/** Ends of a scale. */
export interface ScaleEnds {
  readonly low: number;
  readonly high: number;
}

/** A function of time that knows its true extremes over any stretch. */
export interface Trace {
  /** Value at a time, s. */
  at(t: number): number;
  /** Least and greatest value from a to b (a ≤ b), into `out`. Allocates nothing. */
  extent(a: number, b: number, out: Range): void;
  /** Told before the extremes of each of so many parts of a stretch are asked for. */
  prepare?(t0: number, t1: number, parts: number): void;
}

/** The same value for ever. */
export const constant = (value: number): Trace => ({
  at: () => value,
  extent(_a, _b, out) {
    out.min = value;
    out.max = value;
  },
});

/** Extremes of a trace in each of so many parts of a stretch. */
export function extremesInto(
  trace: Trace,
  t0: number,
  t1: number,
  pixels: number,
  min: Float64Array,
  max: Float64Array,
): void {
  trace.prepare?.(t0, t1, pixels);
  const each = (t1 - t0) / pixels;
  for (let i = 0; i < pixels; i++) {
    trace.extent(t0 + i * each, t0 + (i + 1) * each, range);
    min[i] = range.min;
    max[i] = range.max;
  }
}
const range = emptyRange();
