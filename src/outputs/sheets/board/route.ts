import type { Point } from '../../scene/scene.ts';

/** A part's body on the board: its middle, size and turn in degrees. mm. */
export interface Body {
  readonly at: Point;
  readonly w: number;
  readonly h: number;
  readonly turn: number;
}

/** A wire over a part is worth so many times its length in going round; over the part it is joined to, less. */
const OVER = 60;
const OVER_ITS_OWN = 4;
/** Every bend costs this, mm: a straight wire is stiffer. Crossing another wire costs so much in going round. */
const BEND = 6;
const CROSS = 40;
/** A wire on the line of another is worth so many times its length: the two are read as one. Nearer than this they are, mm. */
const ON_ONE_LINE = 60;
const ONE_LINE = 1.3;
/** Clear of a body, mm: the lanes that wires may take round a corner. */
const LANES = [2.5, 4.3, 6.1];
/** As near as a wire goes to a part that it does not join, and to a point where another ends, mm. */
const NEAR = 2;
const TOUCH = 4;
const EDGE = 2;
const PASSES = 2;

function distance(a: Point, b: Point): number {
  const [u, v] = [b[0] - a[0], b[1] - a[1]];
  return Math.sqrt(u * u + v * v);
}

export const lengthOf = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, p, i) => sum + distance(way[i], p), 0);

/** How much of a straight wire lies over a body, mm. */
export function over(a: Point, b: Point, { at: [x, y], w, h, turn }: Body): number {
  const reach = (w + h) / 2;
  let [ax, ay, bx, by] = [a[0] - x, a[1] - y, b[0] - x, b[1] - y];
  if ((ax > reach && bx > reach) || (ax < -reach && bx < -reach)) return 0;
  if ((ay > reach && by > reach) || (ay < -reach && by < -reach)) return 0;
  if (turn !== 0) {
    const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    [ax, ay, bx, by] = [ax * c + ay * s, ay * c - ax * s, bx * c + by * s, by * c - bx * s];
  }
  const [u, v] = [bx - ax, by - ay];
  let [from, to] = [0, 1];
  if (Math.abs(u) < 1e-9) {
    if (Math.abs(ax) >= w / 2) return 0;
  } else {
    const [p, q] = [(-w / 2 - ax) / u, (w / 2 - ax) / u];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (Math.abs(v) < 1e-9) {
    if (Math.abs(ay) >= h / 2) return 0;
  } else {
    const [p, q] = [(-h / 2 - ay) / v, (h / 2 - ay) / v];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  return to > from ? (to - from) * Math.sqrt(u * u + v * v) : 0;
}

type Line = readonly [Point, Point];
/** What it costs to go straight from one point to another; more than `most` need not be exact. */
type Cost = (a: Point, b: Point, most: number) => number;

/**
 * The way of each wire from one point to another: straight, or round the corners of what stands in between where that is
 * not too long a way, clear of the points where other wires end, and seldom across or along another. One that meets
 * others is laid again when all are known. All mm.
 * @param points where wires may end, those of `wires` among them
 * @returns for each wire its points, both ends among them.
 */
export function routes(
  wires: readonly Line[],
  bodies: readonly Body[],
  board: { readonly width: number; readonly height: number },
  points: readonly Point[] = [],
): Point[][] {
  const corners = LANES.flatMap((clear) => bodies.flatMap((body) => cornersOf(body, clear)))
    .map(([x, y]): Point => [within(x, board.width), within(y, board.height)])
    .filter((p) => !bodies.some((body) => isWithin(p, body)));
  const ways: Point[][] = wires.map(() => []);
  // Short ones have least choice.
  const order = [...wires.keys()].sort((a, b) => lengthOf(wires[a]) - lengthOf(wires[b]));
  for (let pass = 0; pass < PASSES; pass++)
    for (const i of order) {
      const [from, to] = wires[i];
      const others = ways.filter((_, k) => k !== i).flatMap((way) => way.slice(1).map((p, k): Line => [way[k], p]));
      const beside = wayBeside(from, to, others);
      if (pass > 0 && !ways[i].slice(1).some((p, k) => beside(ways[i][k], p) > 0)) continue;
      const exits = [from, to].flatMap((end) => bodies.flatMap((body) => exitsFrom(end, body)));
      const past = wayPast(from, to, bodies, points);
      ways[i] = cheapest([from, to, ...exits, ...corners], (a, b, most) => {
        const sum = past(a, b, most);
        return sum < most ? sum + beside(a, b) : sum;
      });
    }
  return ways;
}

/** How long a wire is, and what it costs to go over parts and past the points where other wires end. */
function wayPast(from: Point, to: Point, bodies: readonly Body[], points: readonly Point[]): Cost {
  const inTheWay = [
    ...bodies.map((body) =>
      isOn(from, body) || isOn(to, body)
        ? { body, worth: OVER_ITS_OWN }
        : { body: { ...body, w: body.w + 2 * NEAR, h: body.h + 2 * NEAR }, worth: OVER },
    ),
    ...points
      .filter((p) => distance(p, from) > TOUCH && distance(p, to) > TOUCH)
      .map((at) => ({ body: { at, w: TOUCH, h: TOUCH, turn: 0 }, worth: OVER })),
  ].sort((a, b) => b.body.w * b.body.h - a.body.w * a.body.h);
  return (a, b, most) => {
    let sum = distance(a, b) + BEND;
    for (const { body, worth } of inTheWay) {
      if (sum >= most) return sum;
      sum += worth * over(a, b, body);
    }
    return sum;
  };
}

/** What it costs to cross other wires or to run along them, where they do not end at the same point. */
function wayBeside(from: Point, to: Point, others: readonly Line[]): (a: Point, b: Point) => number {
  const isEnd = (p: Point): boolean => distance(p, from) < 0.1 || distance(p, to) < 0.1;
  return (a, b) => {
    let sum = 0;
    for (const line of others) {
      const [c, d] = line;
      if (
        Math.min(a[0], b[0]) > Math.max(c[0], d[0]) + ONE_LINE ||
        Math.max(a[0], b[0]) < Math.min(c[0], d[0]) - ONE_LINE ||
        Math.min(a[1], b[1]) > Math.max(c[1], d[1]) + ONE_LINE ||
        Math.max(a[1], b[1]) < Math.min(c[1], d[1]) - ONE_LINE
      )
        continue;
      if (!isEnd(c) && !isEnd(d) && linesCross(a, b, c, d)) sum += CROSS;
      sum += ON_ONE_LINE * together(a, b, line);
    }
    return sum;
  };
}

/** Do two straight lines cross or touch. */
export function linesCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

/** How long a straight wire runs on the line of another, mm. */
function together(a: Point, b: Point, [c, d]: Line): number {
  const length = distance(a, b);
  const other = distance(c, d);
  if (!(length > 0 && other > 0)) return 0;
  const [u, v] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const slope = (u * (d[1] - c[1]) - v * (d[0] - c[0])) / other;
  if (Math.abs(slope) > 0.25) return 0;
  const place = (p: Point): readonly [number, number] => {
    const [x, y] = [p[0] - a[0], p[1] - a[1]];
    return [x * u + y * v, y * u - x * v];
  };
  const [[s, h], [t, k]] = [place(c), place(d)];
  // Where along the first the second is within reach.
  const at = (height: number): number => s + ((height - h) / (k - h)) * (t - s);
  const span =
    Math.abs(k - h) < 1e-9
      ? Math.abs(h) < ONE_LINE
        ? [s, t]
        : [0, 0]
      : [
          at(Math.min(Math.max(-ONE_LINE, Math.min(h, k)), Math.max(h, k))),
          at(Math.max(Math.min(ONE_LINE, Math.max(h, k)), Math.min(h, k))),
        ];
  if (Math.min(h, k) > ONE_LINE || Math.max(h, k) < -ONE_LINE) return 0;
  return Math.max(0, Math.min(length, Math.max(...span)) - Math.max(0, Math.min(...span)));
}

/** Straight out of the edge of a part at which a wire ends, so that it passes what else ends there. */
function exitsFrom(end: Point, { at, w, h, turn }: Body): Point[] {
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
  return LANES.flatMap((clear) =>
    sides.map(
      ([, u, v]): Point => [
        end[0] + (clear + 1) * (u * Math.cos(a) - v * Math.sin(a)),
        end[1] + (clear + 1) * (u * Math.sin(a) + v * Math.cos(a)),
      ],
    ),
  );
}

/** Where a part's ends are, also those that stand out of it a little. */
const isOn = (p: Point, { at, w, h, turn }: Body): boolean =>
  over(p, at, { at, w: w + 4, h: h + 4, turn }) > distance(p, at) - 1e-6;

const isWithin = (p: Point, { at, w, h, turn }: Body): boolean => {
  const a = (turn * Math.PI) / 180;
  const [dx, dy] = [p[0] - at[0], p[1] - at[1]];
  const [x, y] = [dx * Math.cos(a) + dy * Math.sin(a), dy * Math.cos(a) - dx * Math.sin(a)];
  return Math.abs(x) < w / 2 && Math.abs(y) < h / 2;
};

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
function cheapest(points: readonly Point[], cost: Cost): Point[] {
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
      const most = Math.min(least[next], least[1] - left[next]) - least[at];
      const sum = least[at] + cost(points[at], points[next], most);
      if (sum < least[next]) [least[next], before[next]] = [sum, at];
    }
  }
  const way: Point[] = [];
  for (let i = 1; i !== 0; i = before[i]) way.unshift(points[i]);
  return [points[0], ...way];
}
