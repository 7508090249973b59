import type { Box } from '../scene/boxes.ts';
import { line, text } from '../scene/build.ts';
import type { Item, Scene } from '../scene/scene.ts';
import { shorten, textWidth, wrap } from '../scene/text-width.ts';

/** How large a plot is to be, px. Letters keep their size, so a narrow plot has fewer of them. */
export interface PlotSize {
  /** 280 and up; default 640. */
  readonly width?: number;
  /** Default from the width. */
  readonly height?: number;
}

export const PLOT_LETTERS = 12;

export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Where the data go. */
  readonly box: Box;
  readonly narrow: boolean;
}

export interface Margins {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
}

export function frameOf(size: PlotSize, margins: Margins = {}, aspect = 0.5): Frame {
  const width = Math.max(280, size.width ?? 640);
  const height = Math.max(120, size.height ?? Math.round(Math.min(420, Math.max(220, width * aspect))));
  const { left = 44, right = 14, top = 30, bottom = 40 } = margins;
  return {
    width,
    height,
    narrow: width < 480,
    box: { x: left, y: top, w: width - left - right, h: height - top - bottom },
  };
}

/** From data to place; what d3-scale's continuous scales are. */
export interface AxisScale {
  (value: number): number;
  ticks(count?: number): number[];
  domain(): number[];
}

export interface AxisOptions {
  /** "kHz": written once, at the end of the axis. */
  readonly unit: string;
  readonly format: (value: number) => string;
  readonly ticks?: readonly number[];
  /** What is measured: "scale", "level". */
  readonly name?: string;
  /** Faint lines through the plot; default true. */
  readonly grid?: boolean;
}

/** As many ticks as there is room for, taken from the scale unless given. */
function thinned(ticks: readonly number[], place: AxisScale, room: (value: number) => number): number[] {
  for (const step of [1, 2, 5, 10]) {
    const kept = ticks.filter((_, i) => i % step === 0);
    const clear = kept.every(
      (t, i) => i === 0 || Math.abs(place(t) - place(kept[i - 1])) >= (room(t) + room(kept[i - 1])) / 2,
    );
    if (clear) return kept;
  }
  return ticks.length > 0 ? [ticks[0]] : [];
}

export function xAxis({ box }: Frame, place: AxisScale, options: AxisOptions): Item[] {
  const { unit, format, name, grid = true } = options;
  const wanted = options.ticks ?? place.ticks(Math.max(2, Math.floor(box.w / 70)));
  const ticks = thinned(wanted, place, (t) => textWidth(format(t), PLOT_LETTERS) + 10);
  const floor = box.y + box.h;
  const label = [name, unit].filter(Boolean).join(', ');
  return [
    ...(grid
      ? ticks.map((t) => line([place(t), box.y], [place(t), floor], { stroke: 'faint', width: 0.75 }))
      : ticks.map((t) => line([place(t), floor], [place(t), floor + 4], { stroke: 'soft', width: 0.75 }))),
    line([box.x, floor], [box.x + box.w, floor], { stroke: 'soft', width: 1 }),
    ...ticks.map((t) =>
      text([place(t), floor + 8], format(t), PLOT_LETTERS, { anchor: 'middle', sits: 'top', role: 'soft' }),
    ),
    text([box.x + box.w, floor + 22], label, PLOT_LETTERS, { anchor: 'end', sits: 'top', role: 'soft' }),
  ];
}

export function yAxis({ box }: Frame, place: AxisScale, options: AxisOptions): Item[] {
  const { unit, format, name, grid = true } = options;
  const wanted = options.ticks ?? place.ticks(Math.max(2, Math.floor(box.h / 36)));
  const ticks = thinned(wanted, place, () => PLOT_LETTERS + 4);
  const label = [name, unit].filter(Boolean).join(', ');
  return [
    ...(grid
      ? ticks.map((t) => line([box.x, place(t)], [box.x + box.w, place(t)], { stroke: 'faint', width: 0.75 }))
      : []),
    ...ticks.map((t) =>
      text([box.x - 6, place(t)], format(t), PLOT_LETTERS, { anchor: 'end', sits: 'middle', role: 'soft' }),
    ),
    text([4, box.y - 8], label, PLOT_LETTERS, { role: 'soft' }),
  ];
}

/** One sentence at the top right, where the vertical axis' name leaves room; broken into two lines at most. */
export function caption(frame: Frame, words: string, taken = 90): { items: Item[]; lines: number } {
  const room = frame.width - taken - 8;
  const lines = wrap(words, PLOT_LETTERS, room).slice(0, 2);
  return {
    lines: lines.length,
    items: lines.map((l, i) =>
      text([frame.width - 6, 16 + i * 15], shorten(l, PLOT_LETTERS, room), PLOT_LETTERS, {
        anchor: 'end',
        role: 'ink',
      }),
    ),
  };
}

export const plotScene = (
  frame: Frame,
  title: string,
  description: string,
  items: readonly Item[],
  warnings?: readonly string[],
): Scene => ({ unit: 'px', width: frame.width, height: frame.height, title, description, items, warnings });
