import { formatQuantity } from '../../engine/units/format.ts';
import type { Box } from '../scene/boxes.ts';
import { line, polyline, text } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { drawingText } from '../words/index.ts';

/** Room for a drawing, mm on paper. */
export interface PaperRoom {
  /** Default 130. */
  readonly width?: number;
  /** At most; what is not needed is left off. Default 96. */
  readonly height?: number;
  /** Draw at this scale whether it fits or not: 1 is full size. */
  readonly drawnAt?: number;
}

export const SMALL = 2.9;
/** Widths of lines, mm: outlines, ordinary, thin. */
export const BOLD = 0.5;
export const PLAIN = 0.3;
export const THIN = 0.18;

/** Scales that a rule is divided for. */
const SCALES = [
  20,
  10,
  5,
  2,
  1,
  1 / 2,
  1 / 4,
  1 / 5,
  1 / 10,
  1 / 20,
  1 / 25,
  1 / 50,
  1 / 100,
  1 / 200,
  1 / 250,
  1 / 500,
  1 / 1000,
  1 / 2000,
  1 / 5000,
];

export interface Paper {
  readonly width: number;
  readonly height: number;
  readonly drawnAt: number;
  /** Where a point of the thing (mm, y upward) comes to lie. */
  at(x: number, y: number): Point;
  /** Length on paper of so many mm of the thing. */
  mm(length: number): number;
  readonly note: Item;
}

/**
 * The largest scale at which a thing fits between the margins of the room.
 * @param extent of the thing itself, mm, y upward.
 */
export function paperFor(
  extent: Box,
  room: PaperRoom = {},
  margins: { left?: number; right?: number; top?: number; bottom?: number } = {},
): Paper {
  const { left = 16, right = 8, top = 9, bottom = 14 } = margins;
  let { width = 130, height = 96 } = room;
  const [w, h] = [Math.max(extent.w, 1e-3), Math.max(extent.h, 1e-3)];
  const fits = (s: number): boolean => w * s <= width - left - right && h * s <= height - top - bottom;
  const drawnAt =
    room.drawnAt ?? SCALES.find(fits) ?? Math.min((width - left - right) / w, (height - top - bottom) / h);
  if (room.drawnAt !== undefined) {
    width = Math.max(width, w * drawnAt + left + right);
    height = Math.max(height, h * drawnAt + top + bottom);
  }
  height = Math.min(height, h * drawnAt + top + bottom);
  const x0 = left + (width - left - right - w * drawnAt) / 2 - extent.x * drawnAt;
  const y0 = top + (height - top - bottom - h * drawnAt) / 2 + (extent.y + extent.h) * drawnAt;
  return {
    width,
    height,
    drawnAt,
    at: (x, y) => [x0 + x * drawnAt, y0 - y * drawnAt],
    mm: (length) => length * drawnAt,
    note: text([width - 2, height - 2], drawingText.scale(drawnAt), SMALL, {
      anchor: 'end',
      role: 'soft',
      italic: true,
    }),
  };
}

/** Something drawn to be recognised, not measured. */
export const sketchNote = (width: number, height: number, words = drawingText.notToScale): Item =>
  text([width - 2, height - 2], words, SMALL, { anchor: 'end', role: 'soft', italic: true });

/** Between the lines of the figures of a sketch, mm. */
const FIGURE_LINE = 4.2;

/** A part's own figures in the upper left corner of its sketch. */
export const sketchFigures = (lines: readonly string[]): Item[] =>
  lines.map((words, i) => text([2, SMALL + 1 + FIGURE_LINE * i], words, SMALL));

export const millimetres = (mm: number): string => formatQuantity(mm / 1e3, 'length', 3);

/**
 * A dimension line beside two points, with what it measures written on it.
 * @param away how far from the points, mm on paper: to the left of the direction from → to when positive.
 */
export function dimension(from: Point, to: Point, words: string, away: number): Item[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 0)) return [];
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const [nx, ny] = [uy, -ux];
  const a: Point = [from[0] + nx * away, from[1] + ny * away];
  const b: Point = [to[0] + nx * away, to[1] + ny * away];
  const look = { stroke: 'soft' as const, width: THIN };
  const over = Math.sign(away) * 1.2;
  const head = (p: Point, s: number): Item =>
    polyline(
      [
        [p[0] + s * ux * 1.8 + nx * 0.6, p[1] + s * uy * 1.8 + ny * 0.6],
        p,
        [p[0] + s * ux * 1.8 - nx * 0.6, p[1] + s * uy * 1.8 - ny * 0.6],
      ],
      look,
    );
  const inside = length > 5;
  const items: Item[] = [
    line([from[0] + nx * over, from[1] + ny * over], [a[0] + nx * over, a[1] + ny * over], look),
    line([to[0] + nx * over, to[1] + ny * over], [b[0] + nx * over, b[1] + ny * over], look),
    inside ? line(a, b, look) : line([a[0] - ux * 3, a[1] - uy * 3], [b[0] + ux * 3, b[1] + uy * 3], look),
    head(a, inside ? 1 : -1),
    head(b, inside ? -1 : 1),
  ];
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const upright = Math.abs(ux) < 0.5;
  const wide = textWidth(words, SMALL);
  if (upright) {
    // Written along the line when it is long enough, beside it otherwise.
    if (length > wide + 4)
      items.push(text([middle[0] - 0.9, middle[1]], words, SMALL, { anchor: 'middle', turn: -90, rim: true }));
    else
      items.push(
        text([a[0] + Math.sign(nx * away) * 1.5, middle[1]], words, SMALL, {
          anchor: nx * away > 0 ? 'start' : 'end',
          sits: 'middle',
          rim: true,
        }),
      );
  } else {
    // Words wider than the line stand beyond it, clear of its two ends.
    const beyond = length < wide + 2 ? (ny * away > 0 ? 4.2 : -2) : -0.9;
    items.push(text([middle[0], middle[1] + beyond], words, SMALL, { anchor: 'middle', rim: true }));
  }
  return items;
}

export const drawing = (
  paper: { width: number; height: number; drawnAt?: number },
  title: string,
  description: string,
  items: readonly Item[],
): Scene => ({
  unit: 'mm',
  width: paper.width,
  height: paper.height,
  title,
  description: paper.drawnAt ? drawingText.describedAt({ description, drawnAt: paper.drawnAt }) : description,
  items,
  drawnAt: paper.drawnAt,
});
