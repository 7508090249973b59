import type { Point } from '../../scene/scene.ts';

/** A part's body on the board: its middle, size and turn in degrees. mm. */
export interface Body {
  readonly at: Point;
  readonly w: number;
  readonly h: number;
  readonly turn: number;
}

/** A wire over a part is worth so many times its length in going round; over the part it is joined to, less. */
const OVER = 20;
const OVER_ITS_OWN = 4;
/** Every bend costs this, mm: a straight wire is stiffer. */
const BEND = 6;
/** So does a lane that another wire may have. */
const SHARED = 30;
/** Clear of a body, mm; the next wire round the same corner keeps off this one. */
const CLEAR = 2.5;
const APART = 1.8;
const LANES = 4;
/** As near as a wire goes to a part that it does not join, and to a point where another ends, mm. */
const NEAR = 2;
const TOUCH = 4;
const EDGE = 2;

const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

export const lengthOf = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, p, i) => sum + distance(way[i], p), 0);

/** How much of a straight wire lies over a body, mm. */
export function over(a: Point, b: Point, { at, w, h, turn }: Body): number {
  const reach = (w + h) / 2;
  for (const axis of [0, 1] as const)
    if (Math.min(a[axis], b[axis]) > at[axis] + reach || Math.max(a[axis], b[axis]) < at[axis] - reach) return 0;
  const angle = (-turn * Math.PI) / 180;
  const inside = ([x, y]: Point): Point => {
    const [dx, dy] = [x - at[0], y - at[1]];
    return [dx * Math.cos(angle) - dy * Math.sin(angle), dx * Math.sin(angle) + dy * Math.cos(angle)];
  };
  const [p, q] = [inside(a), inside(b)];
  let [from, to] = [0, 1];
  for (const [axis, half] of [
    [0, w / 2],
    [1, h / 2],
  ] as const) {
    const step = q[axis] - p[axis];
    const ends = [(-half - p[axis]) / step, (half - p[axis]) / step];
    if (Math.abs(step) < 1e-9) {
      if (Math.abs(p[axis]) >= half) return 0;
      continue;
    }
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  return Math.max(0, to - from) * distance(a, b);
}

/**
 * The way of each wire from one point to another: straight, or round the corners of what stands in between where that is
 * not too long a way, and clear of the points where other wires end. All mm.
 * @param points where wires may end, those of `wires` among them
 * @returns for each wire its points, both ends among them.
 */
export function routes(
  wires: readonly (readonly [Point, Point])[],
  bodies: readonly Body[],
  board: { readonly width: number; readonly height: number },
  points: readonly Point[] = [],
): Point[][] {
  return wires.map(([from, to], lane) => {
    const wide = CLEAR + APART * (lane % LANES);
    const cornersAt = (clear: number): Point[] =>
      bodies
        .flatMap((body) => cornersOf(body, clear))
        .map(([x, y]): Point => [within(x, board.width), within(y, board.height)]);
    // Where parts stand close together there may be no room for a lane of its own.
    const shared = lane % LANES === 0 ? [] : cornersAt(CLEAR);
    const dear = new Set(shared);
    const exits = [from, to].flatMap((end) => bodies.flatMap((body) => exitFrom(end, body, wide + 1)));
    const inTheWay = [
      ...bodies.map((body) =>
        isOn(from, body) || isOn(to, body)
          ? { body, worth: OVER_ITS_OWN }
          : { body: { ...body, w: body.w + 2 * NEAR, h: body.h + 2 * NEAR }, worth: OVER },
      ),
      ...points
        .filter((p) => distance(p, from) > TOUCH && distance(p, to) > TOUCH)
        .map((at) => ({ body: { at, w: TOUCH, h: TOUCH, turn: 0 }, worth: OVER })),
    ];
    const cost = (a: Point, b: Point): number =>
      distance(a, b) +
      inTheWay.reduce((sum, { body, worth }) => sum + worth * over(a, b, body), 0) +
      (dear.has(b) ? BEND + SHARED : BEND);
    return cheapest([from, to, ...exits, ...cornersAt(wide), ...shared], cost);
  });
}

/** Straight out of the edge of a part at which a wire ends, so that it passes what else ends there. */
function exitFrom(end: Point, { at, w, h, turn }: Body, clear: number): Point[] {
  const a = (turn * Math.PI) / 180;
  const [dx, dy] = [end[0] - at[0], end[1] - at[1]];
  const [x, y] = [dx * Math.cos(a) + dy * Math.sin(a), dy * Math.cos(a) - dx * Math.sin(a)];
  const sides = (
    [
      [w / 2 - x, 1, 0],
      [w / 2 + x, -1, 0],
      [h / 2 - y, 0, 1],
      [h / 2 + y, 0, -1],
    ] as const
  ).filter(([depth]) => Math.abs(depth) < TOUCH);
  if (Math.abs(x) > w / 2 + TOUCH || Math.abs(y) > h / 2 + TOUCH) return [];
  return sides.map(
    ([, u, v]): Point => [
      end[0] + clear * (u * Math.cos(a) - v * Math.sin(a)),
      end[1] + clear * (u * Math.sin(a) + v * Math.cos(a)),
    ],
  );
}

/** Where a part's ends are, also those that stand out of it a little. */
const isOn = (p: Point, { at, w, h, turn }: Body): boolean =>
  over(p, at, { at, w: w + 4, h: h + 4, turn }) > distance(p, at) - 1e-6;

const within = (x: number, size: number): number => Math.min(Math.max(x, EDGE), size - EDGE);

function cornersOf({ at, w, h, turn }: Body, clear: number): Point[] {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [x, y] = [w / 2 + clear, h / 2 + clear];
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ].map(([u, v]) => [at[0] + u * c - v * s, at[1] + u * s + v * c]);
}

/** From the first point to the second by way of any others. */
function cheapest(points: readonly Point[], cost: (a: Point, b: Point) => number): Point[] {
  const least = points.map((_, i) => (i === 0 ? 0 : Infinity));
  const before = points.map(() => 0);
  const left = points.map((p) => distance(p, points[1]));
  const open = new Set(points.keys());
  while (open.size > 0) {
    // The sum so far and what is left at best: no cost is less than the distance.
    let at = 1;
    for (const i of open) if (least[i] + left[i] < least[at] + left[at]) at = i;
    if (at === 1) break;
    open.delete(at);
    for (const next of open) {
      // Even without anything in the way it would not be less.
      const straight = least[at] + distance(points[at], points[next]);
      if (straight >= least[next] || straight + left[next] >= least[1]) continue;
      const sum = least[at] + cost(points[at], points[next]);
      if (sum < least[next]) [least[next], before[next]] = [sum, at];
    }
  }
  const way: Point[] = [];
  for (let i = 1; i !== 0; i = before[i]) way.unshift(points[i]);
  return [points[0], ...way];
}
