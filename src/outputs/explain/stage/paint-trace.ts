import type { Seconds } from '../../../engine/units/quantities.ts';
import type { Role } from '../../scene/scene.ts';
import type { View } from '../model/view.ts';
import type { Pen } from './pen.ts';
import type { Columns } from './pixel-columns.ts';
import type { Extremes } from './pixel-coverage.ts';

/** A trace as it is drawn. */
export interface TraceSource {
  readonly extremes: Extremes;
  /** Cycles that it repeats in, s. */
  readonly cycles: readonly Seconds[];
  /** Its values, where it has cycles that can be drawn one by one. */
  at?(t: Seconds): number;
  /** As `extremes`, but no column holds less than a whole cycle: for outlines, where cycles cannot be told apart. */
  readonly bars?: Extremes;
}

/** Where a trace lies and how it looks, px. */
export interface TracePlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** A value lies at zero − k·value. */
  readonly zero: number;
  readonly k: number;
  readonly line: number;
  /** Pixels of the device to a px. */
  readonly density: number;
  readonly role: Role;
  readonly opacity: number;
}

/** From so many px to a cycle on, an outline is a line through values; below, a bar. */
const LINE_FROM = 6;
/** Values to a cycle of such a line. */
const VALUES = 40;

/** Draws a trace: as areas of pixels on a pen that has pixels, as lines and outlines on one that has none. */
export function paintTrace(pen: Pen, source: TraceSource, view: View, place: TracePlace, columns: Columns): void {
  const { x, y, width, height, zero, k, line, density, role, opacity } = place;
  const count = Math.max(2, Math.round(width * density));
  if (pen.coverage) {
    const top = Math.floor(y * density);
    const map = columns.coverage.draw({
      extremes: source.extremes,
      cycles: source.cycles,
      from: view.from,
      span: view.span,
      columns: count,
      rows: Math.ceil((y + height) * density) - top,
      zero: zero * density - top,
      k: k * density,
      radius: (line / 2) * density,
    });
    pen.coverage(Math.round(x * density) / density, top / density, map, density, role, opacity);
    return;
  }
  const shortest = Math.min(...source.cycles, Number.POSITIVE_INFINITY);
  const px = (shortest / view.span) * width;
  if (source.at && px >= LINE_FROM && px < Number.POSITIVE_INFINITY) {
    const step = Math.min(1, px / VALUES);
    const n = Math.ceil(width / step) + 1;
    const xs = Float64Array.from({ length: n }, (_, i) => x + Math.min(width, i * step));
    const ys = xs.map((at) => zero - k * source.at!(view.from + ((at - x) / width) * view.span));
    pen.polyline(xs, ys, n, role, line, opacity);
    return;
  }
  columns.room(count);
  const { min, max, top, bottom } = columns;
  (source.bars ?? source.extremes)(view.from, view.from + view.span, count, min, max);
  for (let i = 0; i < count; i++) {
    top[i] = zero - max[i] * k - line / 2;
    bottom[i] = zero - min[i] * k + line / 2;
  }
  pen.band(x + 0.5 / density, 1 / density, top, bottom, count, role, opacity);
}
