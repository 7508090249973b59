import type {
  CircleItem,
  GroupItem,
  Item,
  LineItem,
  Look,
  PathItem,
  PathSegment,
  Point,
  PolylineItem,
  RectItem,
  TextItem,
} from './scene.ts';

/** Short constructors, so that a drawing reads like a drawing. */
export const line = (from: Point, to: Point, look: Look = { stroke: 'ink' }): LineItem => ({
  kind: 'line',
  from,
  to,
  ...look,
});
export const polyline = (
  points: readonly Point[],
  look: Look & { closed?: boolean } = { stroke: 'ink' },
): PolylineItem => ({
  kind: 'polyline',
  points,
  ...look,
});
export const path = (segments: readonly PathSegment[], look: Look = { stroke: 'ink' }): PathItem => ({
  kind: 'path',
  segments,
  ...look,
});
export const circle = (centre: Point, radius: number, look: Look = { stroke: 'ink' }): CircleItem => ({
  kind: 'circle',
  centre,
  radius,
  ...look,
});
export const rect = (
  x: number,
  y: number,
  w: number,
  h: number,
  look: Look & { radius?: number } = { stroke: 'ink' },
): RectItem => ({ kind: 'rect', x, y, w, h, ...look });
export const text = (
  at: Point,
  words: string,
  size: number,
  more: Omit<TextItem, 'kind' | 'at' | 'text' | 'size'> = {},
): TextItem => ({
  kind: 'text',
  at,
  text: words,
  size,
  ...more,
});
export const group = (items: readonly Item[], more: Omit<GroupItem, 'kind' | 'items'> = {}): GroupItem => ({
  kind: 'group',
  items,
  ...more,
});

/** The point at an angle from a centre; 0° to the right, clockwise as seen. */
export const pointAtAngle = ([x, y]: Point, radius: number, degrees: number): Point => [
  x + radius * Math.cos((degrees * Math.PI) / 180),
  y + radius * Math.sin((degrees * Math.PI) / 180),
];

/** Part of a circle, clockwise as seen from one angle to the other (to ≥ from). */
export function arc(centre: Point, radius: number, from: number, to: number): PathSegment[] {
  const sweep = to - from;
  const [x0, y0] = pointAtAngle(centre, radius, from);
  const [x1, y1] = pointAtAngle(centre, radius, to);
  if (Math.abs(sweep) >= 359.99) {
    const [xm, ym] = pointAtAngle(centre, radius, from + 180);
    return [
      ['M', x0, y0],
      ['A', radius, false, true, xm, ym],
      ['A', radius, false, true, x0, y0],
    ];
  }
  return [
    ['M', x0, y0],
    ['A', radius, Math.abs(sweep) > 180, sweep > 0, x1, y1],
  ];
}
