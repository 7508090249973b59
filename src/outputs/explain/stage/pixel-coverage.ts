import type { Seconds } from '../../../engine/units/quantities.ts';

/** Parts of a px in which the trace's own extremes are taken: where its cycles are of the size of pixels, and elsewhere. */
const FINE = 16;
const PARTS = 8;
/** Cycles of the size of pixels, px. */
const AMONG_PIXELS = [0.2, 60] as const;
/** Single cycles are not shown where one is narrower than this, px, and fully shown from this on. */
const HIDDEN_TO = 4;
const SHOWN_FROM = 8;

/** Fills `min` and `max` with the extremes of a trace in each of so many equal parts of t0…t1. */
export type Extremes = (t0: Seconds, t1: Seconds, parts: number, min: Float64Array, max: Float64Array) => void;

export interface CoverageOrder {
  readonly extremes: Extremes;
  /** Cycles that the trace repeats in, s; none where it does not. */
  readonly cycles: readonly Seconds[];
  readonly from: Seconds;
  readonly span: Seconds;
  /** Pixels across and down. */
  readonly columns: number;
  readonly rows: number;
  /** Where a value lies, px from the top: zero − k·value. */
  readonly zero: number;
  readonly k: number;
  /** Half the line's width, px. */
  readonly radius: number;
}

/** How much of each pixel a trace covers, 0 to 255, row by row. */
export interface CoverageMap {
  readonly columns: number;
  readonly rows: number;
  readonly shares: Uint8ClampedArray;
}

/**
 * Width over which coverage is averaged, px: one px where cycles can be told apart, and whole cycles where they cannot,
 * for a window of whole cycles sees the same of each. Between, the cycles come out of the grey without a jump.
 * @param cycles px.
 */
export function averagedOver(cycles: readonly number[]): number {
  let width = 1;
  for (const cycle of cycles) {
    if (cycle <= HIDDEN_TO) width = Math.max(width, cycle * Math.round(HIDDEN_TO / cycle));
    else if (cycle < SHOWN_FROM)
      width = Math.max(width, 1 + ((HIDDEN_TO - 1) * (SHOWN_FROM - cycle)) / (SHOWN_FROM - HIDDEN_TO));
  }
  return width;
}

/**
 * The exact share of each pixel that a trace drawn with a round pen covers.
 *
 * Above any moment a round pen that follows a continuous trace covers one piece without gaps: from the greatest of
 * trace + h to the least of trace − h, with h² = radius² − (distance along)². Its ends are found for many parts of
 * each px from the trace's extremes there, so nothing that happens inside a part is lost, however many cycles that
 * are; the pieces are added up as areas. No value is sampled and no edge is drawn twice, so there is nothing that could
 * beat with the pixels.
 */
export class PixelCoverage implements CoverageMap {
  columns = 0;
  rows = 0;
  shares: Uint8ClampedArray = new Uint8ClampedArray(0);
  private min = new Float64Array(0);
  private max = new Float64Array(0);
  private top = new Float64Array(0);
  private bottom = new Float64Array(0);
  private steps = new Float64Array(0);

  draw(order: CoverageOrder): this {
    const { extremes, cycles, from, span, columns, rows, radius } = order;
    const px = span / columns;
    const wide = cycles.map((cycle) => cycle / px);
    const width = averagedOver(wide);
    const parts = wide.some((cycle) => cycle > AMONG_PIXELS[0] && cycle < AMONG_PIXELS[1]) ? FINE : PARTS;
    // Parts to either side that a window or the pen reaches into.
    const beside = Math.ceil((width / 2 + radius + 1) * parts);
    const count = columns * parts + 2 * beside;
    this.room(columns, rows, count);
    const part = px / parts;
    extremes(from - beside * part, from + span + beside * part, count, this.min, this.max);
    this.trail(order, count, parts);
    const half = (width * parts) / 2;
    for (let i = 0; i < columns; i++) {
      const middle = beside + (i + 0.5) * parts;
      this.column(i, middle - half, middle + half);
    }
    return this;
  }

  private room(columns: number, rows: number, count: number): void {
    this.columns = columns;
    this.rows = rows;
    if (this.shares.length === columns * rows) this.shares.fill(0);
    else this.shares = new Uint8ClampedArray(columns * rows);
    if (this.steps.length < rows + 2) this.steps = new Float64Array(rows + 2);
    if (this.min.length >= count) return;
    this.min = new Float64Array(count);
    this.max = new Float64Array(count);
    this.top = new Float64Array(count);
    this.bottom = new Float64Array(count);
  }

  /** What the pen covers above each part, px from the top. */
  private trail({ zero, k, radius, rows }: CoverageOrder, count: number, parts: number): void {
    const { min, max, top, bottom } = this;
    const reach = Math.max(0, Math.floor(radius * parts - 0.5));
    // The far edge of a part is the one from which a slope comes.
    const heights = Array.from({ length: reach + 1 }, (_, d) =>
      d === 0 ? radius : Math.sqrt(Math.max(0, radius * radius - ((d + 0.5) / parts) ** 2)),
    );
    for (let s = 0; s < count; s++) {
      let high = max[s] * k + radius;
      let low = min[s] * k - radius;
      for (let d = 1; d <= reach; d++) {
        const h = heights[d];
        const before = s >= d ? s - d : 0;
        const after = s + d < count ? s + d : count - 1;
        const up = Math.max(max[before], max[after]) * k + h;
        const down = Math.min(min[before], min[after]) * k - h;
        if (up > high) high = up;
        if (down < low) low = down;
      }
      top[s] = Math.min(rows, Math.max(0, zero - high));
      bottom[s] = Math.min(rows, Math.max(0, zero - low));
    }
  }

  /** One column of pixels: the mean of the parts from a to b, of which the ends may be fractions. */
  private column(i: number, a: number, b: number): void {
    const { top, bottom, steps, shares, columns, rows } = this;
    const first = Math.floor(a);
    const last = Math.ceil(b) - 1;
    let highest = rows;
    let lowest = 0;
    for (let s = first; s <= last; s++) {
      const from = top[s];
      const to = bottom[s];
      if (!(to > from)) continue;
      const weight = (255 * (Math.min(b, s + 1) - Math.max(a, s))) / (b - a);
      const p = from | 0;
      const q = to | 0;
      if (p < highest) highest = p;
      if (q > lowest) lowest = q;
      // Steps of the running sum: the row an edge lies in is covered in part.
      steps[p] += weight * (1 - (from - p));
      steps[p + 1] += weight * (from - p);
      steps[q] -= weight * (1 - (to - q));
      steps[q + 1] -= weight * (to - q);
    }
    let share = 0;
    const end = Math.min(lowest, rows - 1);
    for (let row = highest; row <= end; row++) {
      share += steps[row];
      shares[row * columns + i] = share;
    }
    steps.fill(0, highest, Math.min(lowest + 2, rows + 2));
  }
}
