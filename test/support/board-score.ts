import { type Box, inside, overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import type { CircleItem, Item, LineItem, Point, PolylineItem, TextItem } from '../../src/outputs/scene/scene.ts';
import type { BoardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { layoutItems } from '../../src/outputs/sheets/board/layout-drawing.ts';
import type { PlacedPart } from '../../src/outputs/sheets/board/units.ts';

/** What a reader of a board's drawing can misread, in counts and mm. Zero is good throughout. */
export interface BoardScore {
  /** Times that one wire crosses another. */
  readonly crossings: number;
  /** Length over which two wires lie on one line, as if they were one, mm. */
  readonly oneLine: number;
  /** Length of wires over parts that they do not join, mm. */
  readonly overParts: number;
  /** Wires that pass so near to the dot of another net that they seem to end there. */
  readonly pastDots: number;
  /** Ends of wires, or of leaders, that are not on their dots. */
  readonly offDots: number;
  /** Words over words, over a dot, or out of the board. */
  readonly overWords: number;
  /** Words, other than a wire's own number, with a wire through them. */
  readonly wordsOnWires: number;
  /** Names of terminals nearer to a foreign dot than to their own. */
  readonly strayNames: number;
  /** The longest leader, mm. */
  readonly leader: number;
  /** Numbers of wires that stand nearer to another wire than to their own. */
  readonly strayNumbers: number;
  /** Wires that should be short, the longest of them, as a share of the way round two sides of the board. */
  readonly sensitive: number;
  /** Of all wires, mm. */
  readonly length: number;
}

/** A dot's radius on the drawing, mm. */
const DOT = 0.8;
/** Two lines of 0.35 mm nearer to each other than this are read as one, mm; and the angle up to which they are parallel. */
const ONE_LINE = 0.7;

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const toSegment = ([x, y]: Point, [a, b]: Point, [c, d]: Point): number => {
  const [u, v] = [c - a, d - b];
  const t = u === 0 && v === 0 ? 0 : Math.min(1, Math.max(0, ((x - a) * u + (y - b) * v) / (u * u + v * v)));
  return Math.hypot(x - a - t * u, y - b - t * v);
};
const toWay = (p: Point, way: readonly Point[]): number =>
  Math.min(...way.slice(1).map((q, i) => toSegment(p, way[i], q)));

const toBox = ({ x, y, w, h }: Box, [px, py]: Point): number =>
  Math.hypot(Math.max(x - px, 0, px - x - w), Math.max(y - py, 0, py - y - h));

const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** Points along a way, half a millimetre apart. */
const STEP = 0.5;
function along(way: readonly Point[]): Point[] {
  return way.slice(1).flatMap((b, i) => {
    const a = way[i];
    const n = Math.max(1, Math.round(distance(a, b) / STEP));
    return Array.from(
      { length: n },
      (_, k): Point => [a[0] + ((b[0] - a[0]) * (k + 0.5)) / n, a[1] + ((b[1] - a[1]) * (k + 0.5)) / n],
    );
  });
}

const isIn = ([x, y]: Point, { at, turn, print }: PlacedPart): boolean => {
  const a = (-turn * Math.PI) / 180;
  const [dx, dy] = [x - at[0], y - at[1]];
  const [u, v] = [dx * Math.cos(a) - dy * Math.sin(a), dx * Math.sin(a) + dy * Math.cos(a)];
  return Math.abs(u) < print.w / 2 - 0.5 && Math.abs(v) < print.h / 2 - 0.5;
};

/** The room a part takes, as it is turned. */
const outline = ({ at, turn, print: { w, h } }: PlacedPart): Box => {
  const [c, s] = [Math.abs(Math.cos((turn * Math.PI) / 180)), Math.abs(Math.sin((turn * Math.PI) / 180))];
  const [width, height] = [w * c + h * s, w * s + h * c];
  return { x: at[0] - width / 2, y: at[1] - height / 2, w: width, h: height };
};

const isText = (i: Item): i is TextItem => i.kind === 'text';

/** A board's drawing judged by what is on it; of the layout only which wire joins what is taken. */
export function boardScore(layout: BoardLayout): BoardScore {
  const items = layoutItems(layout);
  const { placed, wiring } = layout;
  const owner = new Map(placed.flatMap((p) => p.part.terminals.map((t) => [t, p] as const)));
  const dots = new Map(
    items
      .filter((i): i is CircleItem => i.kind === 'circle' && owner.has(i.title ?? ''))
      .map(({ title, centre }) => [title!, centre]),
  );
  const ways = items.filter((i): i is PolylineItem => i.kind === 'polyline').map(({ points }) => points);
  const texts = items.filter(isText);
  const boxes = texts.map((item) => ({ item, box: textBox(item), terminal: dots.has(item.title ?? '') }));
  const numbers = new Set(wiring.lines.map((_, i) => `${i + 1}`));
  const isNumber = ({ item, terminal }: (typeof boxes)[number]): boolean => !terminal && numbers.has(item.text);
  const fine = ways.map((way) => along(way));
  const net = netOf(wiring.lines);

  let crossings = 0;
  let oneLine = 0;
  ways.forEach((a, i) => {
    ways.forEach((b, k) => {
      if (k <= i) return;
      for (let m = 1; m < a.length; m++)
        for (let n = 1; n < b.length; n++) if (cross(a[m - 1], a[m], b[n - 1], b[n])) crossings++;
      const ends = [a[0], a[a.length - 1]].filter((p) => [b[0], b[b.length - 1]].some((q) => distance(p, q) < 0.1));
      // From a dot that both end on they must part within 3 mm.
      for (const p of fine[i])
        if (toWay(p, b) < ONE_LINE && isParallel(p, a, b) && !ends.some((end) => distance(end, p) < 3)) oneLine += STEP;
    });
  });

  let overParts = 0;
  let pastDots = 0;
  let offDots = 0;
  wiring.lines.forEach(({ from, to }, i) => {
    const way = ways[i];
    if (distance(way[0], dots.get(from)!) > 0.01) offDots++;
    if (distance(way[way.length - 1], dots.get(to)!) > 0.01) offDots++;
    const own = [owner.get(from)!, owner.get(to)!];
    // Out of a coil that stands in another its wires must go over that one.
    for (const part of placed)
      if (!own.some((one) => overlap(outline(one), outline(part), -0.5)))
        overParts += STEP * fine[i].filter((p) => isIn(p, part)).length;
    for (const [t, p] of dots)
      if (t !== from && t !== to && net(t) !== net(from) && toWay(p, way) < 2 * DOT) pastDots++;
  });

  const frame = { x: 0, y: 0, w: layout.width, h: layout.height };
  let [overWords, wordsOnWires, strayNames, strayNumbers, leader] = [0, 0, 0, 0, 0];
  boxes.forEach((a, i) => {
    if (!inside(a.box, frame)) overWords++;
    for (const b of boxes.slice(i + 1)) if (overlap(a.box, b.box, -0.01)) overWords++;
    for (const [, dot] of dots) if (toBox(a.box, dot) < DOT) overWords++;
    const through = fine.some(
      (points, w) => !(isNumber(a) && a.item.text === `${w + 1}`) && points.some((p) => toBox(a.box, p) <= 0),
    );
    if (through) wordsOnWires++;
    if (isNumber(a)) {
      const middle: Point = [a.box.x + a.box.w / 2, a.box.y + a.box.h / 2];
      const own = toWay(middle, ways[Number(a.item.text) - 1]);
      if (ways.some((way, w) => w !== Number(a.item.text) - 1 && toWay(middle, way) < own)) strayNumbers++;
    }
  });
  for (const { item, box, terminal } of boxes) {
    if (!terminal) continue;
    const line = items.find((i): i is LineItem => i.kind === 'line' && i.title === item.title);
    const own = dots.get(item.title!)!;
    if (!line || distance(line.to, own) > 0.01) offDots++;
    const from = toBox(box, own);
    leader = Math.max(leader, from);
    if ([...dots].some(([t, p]) => t !== item.title && toBox(box, p) < from - 0.01)) strayNames++;
  }

  const twoSides = layout.width + layout.height;
  const long = ways.map((way) => way.slice(1).reduce((sum, p, i) => sum + distance(way[i], p), 0));
  const sensitive = Math.max(0, ...wiring.lines.map(({ keepShort }, i) => (keepShort ? long[i] / twoSides : 0)));
  const length = long.reduce((a, b) => a + b, 0);
  return {
    crossings,
    oneLine,
    overParts,
    pastDots,
    offDots,
    overWords,
    wordsOnWires,
    strayNames,
    leader,
    strayNumbers,
    sensitive,
    length,
  };
}

function isParallel(p: Point, a: readonly Point[], b: readonly Point[]): boolean {
  const heading = (way: readonly Point[]): number => {
    let [best, angle] = [Number.POSITIVE_INFINITY, 0];
    for (let i = 1; i < way.length; i++) {
      const away = toSegment(p, way[i - 1], way[i]);
      if (away < best) {
        best = away;
        angle = Math.atan2(way[i][1] - way[i - 1][1], way[i][0] - way[i - 1][0]);
      }
    }
    return angle;
  };
  // Lines 0.7 mm apart at an angle of 10° part within 4 mm.
  return Math.abs(Math.sin(heading(a) - heading(b))) < Math.sin(Math.PI / 18);
}

/** Which terminals are joined with one another by wires. */
function netOf(lines: BoardLayout['wiring']['lines']): (terminal: string) => string {
  const parent = new Map<string, string>();
  const root = (t: string): string => {
    let at = t;
    while (parent.has(at)) at = parent.get(at)!;
    return at;
  };
  for (const { from, to } of lines) {
    const [a, b] = [root(from), root(to)];
    if (a !== b) parent.set(a, b);
  }
  return root;
}
