import { circle, line, path, polyline, rect, text } from '../../scene/build.ts';
import type { Anchor, Item, PathSegment, Point, Scene } from '../../scene/scene.ts';

/** Of every picture of a step, mm: beside a column of text. */
export const WIDTH = 66;

/** Line widths of drawings on paper, mm. */
const FINE = 0.18;
const OUTLINE = 0.35;
const WIRE = 0.7;
const LETTERS = 3;
/** Of hidden lines, mm. */
export const HIDDEN = [0.8, 0.7];

export const drawnWire = (...points: readonly Point[]): Item => polyline(points, { stroke: 'ink', width: WIRE });
export const wirePath = (...segments: readonly PathSegment[]): Item => path(segments, { stroke: 'ink', width: WIRE });
/** Behind or inside something. */
export const hiddenWire = (...points: readonly Point[]): Item =>
  polyline(points, { stroke: 'ink', width: OUTLINE, dash: HIDDEN, cap: 'butt' });
export const hole = (at: Point): Item => circle(at, 0.9, { stroke: 'ink', width: OUTLINE, fill: 'paper' });
export const label = (at: Point, what: string, anchor: Anchor = 'middle'): Item => text(at, what, LETTERS, { anchor });
/** A wire seen from its end. */
export const section = (at: Point, radius: number, number?: number): Item[] => [
  circle(at, radius, { stroke: 'ink', width: OUTLINE, fill: number === undefined ? 'faint' : 'paper' }),
  ...(number === undefined ? [] : [text(at, String(number), LETTERS, { anchor: 'middle', sits: 'middle' })]),
];

/** A point with an moveArrow, coming from another. */
function head([x, y]: Point, [fromX, fromY]: Point): Item {
  const along = Math.atan2(y - fromY, x - fromX);
  const corner = (turn: number): Point => [x - 2 * Math.cos(along + turn), y - 2 * Math.sin(along + turn)];
  return polyline([[x, y], corner(0.35), corner(-0.35)], { fill: 'ink', closed: true });
}

/** Which way something moves. */
export const moveArrow = (from: Point, to: Point): Item[] => [
  line(from, to, { stroke: 'ink', width: OUTLINE }),
  head(to, from),
];

/** A length between two places on one line, its figure outside where there is no room between. */
export function lengthMark(from: Point, to: Point, figure: string): Item[] {
  const upright = from[0] === to[0];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const tick = ([x, y]: Point): Item =>
    upright
      ? line([x - 1, y], [x + 1, y], { stroke: 'ink', width: FINE })
      : line([x, y - 1], [x, y + 1], { stroke: 'ink', width: FINE });
  const figureText: Item = upright
    ? text([to[0] + 1.8, middle[1]], figure, LETTERS, { sits: 'middle' })
    : text([Math.max(from[0], to[0]) + 1.6, middle[1]], figure, LETTERS, { sits: 'middle' });
  return [line(from, to, { stroke: 'ink', width: FINE }), tick(from), tick(to), figureText];
}

/** Where a tube is drawn, mm; an end is open, or the tube goes on there. */
export interface TubePlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly open?: 'left' | 'right';
}

/** Half of an ellipse between two points above each other, bulging to the right by a share of the height, or to the left. */
function bulge(x: number, top: number, bottom: number, by: number): PathSegment[] {
  const k = (0.5523 * (bottom - top)) / 2;
  const middle = (top + bottom) / 2;
  return [
    ['M', x, top],
    ['C', x + 0.5523 * by, top, x + by, middle - k, x + by, middle],
    ['C', x + by, middle + k, x + 0.5523 * by, bottom, x, bottom],
  ];
}

/** A tube seen from the side. */
export function tube({ left, right, top, bottom, open }: TubePlace): Item[] {
  const outline = { stroke: 'ink', width: OUTLINE } as const;
  const by = (bottom - top) * 0.16;
  const goesOn = (x: number): Item => path(bulge(x, top, bottom, by * 0.7), { stroke: 'ink', width: FINE });
  const mouth = (x: number): Item[] => [
    path([...bulge(x, top, bottom, by), ...bulge(x, top, bottom, -by)], { ...outline, fill: 'paper' }),
  ];
  return [
    rect(left, top, right - left, bottom - top, { fill: 'card' }),
    line([left, top], [right, top], outline),
    line([left, bottom], [right, bottom], outline),
    ...(open === 'left' ? mouth(left) : [goesOn(left)]),
    ...(open === 'right' ? mouth(right) : [goesOn(right)]),
  ];
}

/** A turn of wire over the side of a tube that is seen. */
export const turn = (x: number, { top, bottom }: TubePlace, slant = 1): Item =>
  drawnWire([x, top], [x + slant, bottom]);

/** A picture of one step. @param drawnAt its scale, where it is to scale. */
export const stepScene = (title: string, height: number, items: readonly Item[], drawnAt?: number): Scene => ({
  unit: 'mm',
  width: WIDTH,
  height,
  title,
  description: items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(', '),
  items,
  drawnAt,
});
