import type { Item, Point, TextItem } from './scene.ts';
import { textWidth } from './text-width.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** How far base line to top and base line to bottom of the letters are, in ems. */
const RISE = 0.74;
const FALL = 0.2;

/** How far below `at` the base line lies, in ems. */
export const baseShift = (sits: TextItem['sits']): number => (sits === 'middle' ? 0.35 : sits === 'top' ? RISE : 0);

/** Corners of a text's box as it lies, turned or not. */
function textCorners(item: TextItem): Point[] {
  const w = textWidth(item.text, item.size, item.bold);
  const x = item.anchor === 'middle' ? -w / 2 : item.anchor === 'end' ? -w : 0;
  const base = baseShift(item.sits) * item.size;
  const upright: Point[] = [
    [x, base - RISE * item.size],
    [x + w, base - RISE * item.size],
    [x + w, base + FALL * item.size],
    [x, base + FALL * item.size],
  ];
  return upright.map((p) => turned(p, item.turn ?? 0, item.at));
}

export const textBox = (item: TextItem): Box => boundsOf(textCorners(item));

const turned = ([x, y]: Point, degrees: number, [dx, dy]: Point, scale = 1): Point => {
  const a = (degrees * Math.PI) / 180;
  return [dx + scale * (x * Math.cos(a) - y * Math.sin(a)), dy + scale * (x * Math.sin(a) + y * Math.cos(a))];
};

function boundsOf(points: readonly Point[]): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    x0 = Math.min(x0, x);
    x1 = Math.max(x1, x);
    y0 = Math.min(y0, y);
    y1 = Math.max(y1, y);
  }
  return { x: x0, y: y0, w: x1 - x0, h: y1 - y0 };
}

export const overlap = (a: Box, b: Box, gap = 0): boolean =>
  a.x < b.x + b.w + gap && b.x < a.x + a.w + gap && a.y < b.y + b.h + gap && b.y < a.y + a.h + gap;

export const inside = (a: Box, frame: Box): boolean =>
  a.x >= frame.x && a.y >= frame.y && a.x + a.w <= frame.x + frame.w && a.y + a.h <= frame.y + frame.h;

const union = (boxes: readonly Box[]): Box =>
  boundsOf(
    boxes.flatMap((b): Point[] => [
      [b.x, b.y],
      [b.x + b.w, b.y + b.h],
    ]),
  );

const corners = (b: Box): Point[] => [
  [b.x, b.y],
  [b.x + b.w, b.y],
  [b.x, b.y + b.h],
  [b.x + b.w, b.y + b.h],
];

/** The box an item takes, strokes left out; a clip limits it. */
export function itemBox(item: Item): Box {
  switch (item.kind) {
    case 'line':
      return boundsOf([item.from, item.to]);
    case 'polyline':
      return boundsOf(item.points);
    case 'circle':
      return {
        x: item.centre[0] - item.radius,
        y: item.centre[1] - item.radius,
        w: 2 * item.radius,
        h: 2 * item.radius,
      };
    case 'rect':
    case 'shares':
      return item;
    case 'text':
      return textBox(item);
    case 'path':
      return boundsOf(pathPoints(item.segments));
    case 'group': {
      const own = item.clip ?? union(item.items.map(itemBox));
      return boundsOf(corners(own).map((p) => turned(p, item.turn ?? 0, item.move ?? [0, 0], item.scale ?? 1)));
    }
  }
}

function pathPoints(segments: Extract<Item, { kind: 'path' }>['segments']): Point[] {
  const points: Point[] = [];
  let at: Point = [0, 0];
  for (const s of segments) {
    if (s[0] === 'Z') continue;
    if (s[0] === 'C') points.push([s[1], s[2]], [s[3], s[4]]);
    const next: Point = s[0] === 'A' ? [s[4], s[5]] : s[0] === 'C' ? [s[5], s[6]] : [s[1], s[2]];
    if (s[0] === 'A') {
      const chord = Math.hypot(next[0] - at[0], next[1] - at[1]);
      const r = Math.max(s[1], chord / 2);
      const [mx, my] = [(at[0] + next[0]) / 2, (at[1] + next[1]) / 2];
      const rise = Math.sqrt(r * r - (chord * chord) / 4);
      const side = s[2] === s[3] ? -1 : 1;
      const [ux, uy] = chord > 0 ? [(next[0] - at[0]) / chord, (next[1] - at[1]) / chord] : [1, 0];
      const c: Point = [mx - side * rise * uy, my + side * rise * ux];
      // The extremes of the circle that the arc passes.
      const a0 = Math.atan2(at[1] - c[1], at[0] - c[0]);
      const a1 = Math.atan2(next[1] - c[1], next[0] - c[0]);
      const turn = (from: number, to: number) => (((to - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      const swept = s[3] ? turn(a0, a1) : turn(a1, a0);
      for (const a of [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2]) {
        if ((s[3] ? turn(a0, a) : turn(a, a0)) <= swept) points.push([c[0] + r * Math.cos(a), c[1] + r * Math.sin(a)]);
      }
    }
    points.push(next);
    at = next;
  }
  return points;
}

/** Every text of a scene with its box and corners in the scene's own coordinates, for judging overlaps and cut-off words. */
export function textBoxes(
  items: readonly Item[],
): { readonly text: string; readonly box: Box; readonly corners: readonly Point[] }[] {
  return items.flatMap((item) => {
    if (item.kind === 'text') return [{ text: item.text, box: textBox(item), corners: textCorners(item) }];
    if (item.kind !== 'group') return [];
    return textBoxes(item.items).map(({ text, corners }) => {
      const moved = corners.map((p) => turned(p, item.turn ?? 0, item.move ?? [0, 0], item.scale ?? 1));
      return { text, box: boundsOf(moved), corners: moved };
    });
  });
}
