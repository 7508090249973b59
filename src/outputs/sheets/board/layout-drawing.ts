import { type Box, itemBox } from '../../scene/boxes.ts';
import { circle, group, line, pointAtAngle, polyline, rect } from '../../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../../scene/labels.ts';
import type { Item, Point, TextItem } from '../../scene/scene.ts';
import { shorten } from '../../scene/text-width.ts';
import { boardSheetWords } from '../../words/index.ts';
import type { BoardLayout } from './layout.ts';
import type { BoardPart } from './parts.ts';
import { lengthOf } from './route.ts';
import { terminalLabels } from './terminal-labels.ts';
import { type PlacedPart, terminalPoints } from './units.ts';

/** A point of a way at a share of its length. */
function pointAlong(way: readonly Point[], share: number): Point {
  let left = share * lengthOf(way);
  for (let i = 1; i < way.length; i++) {
    const [a, b] = [way[i - 1], way[i]];
    const piece = lengthOf([a, b]);
    if (left <= piece && piece > 0)
      return [a[0] + ((b[0] - a[0]) * left) / piece, a[1] + ((b[1] - a[1]) * left) / piece];
    left -= piece;
  }
  return way[way.length - 1];
}

const LETTERS = 2.6;
/** Width of a wire, mm: outlines are half as wide, so that neither is taken for the other. */
const WIRE = 0.7;
/** Radius of the ring about a wire's number, mm. */
const RING = 2;
/** Bodies lower than this, mm, have no room for words on them. */
const SMALL = 12;

/** What of a small part is seen between its ends. */
const bodyBox = ({ at: [x, y], print }: PlacedPart): Box => ({
  x: x - print.w / 4,
  y: y - print.h / 3,
  w: print.w / 2,
  h: (2 * print.h) / 3,
});

/** Along the outline of a body, so that no word lies across it. */
function edgesOf({ at: [x, y], turn, print }: PlacedPart): Box[] {
  if (print.h < SMALL || turn % 180 !== 0) return [];
  const over = turn % 360 === 0 ? 1 : -1;
  const thin = 0.3;
  return print.items.flatMap((item): Box[] => {
    if (item.kind !== 'rect' || item.h < SMALL) return [];
    const { w, h } = item;
    const [left, top] = [x + over * (item.x + w / 2) - w / 2, y + over * (item.y + h / 2) - h / 2];
    return [
      { x: left, y: top, w, h: thin },
      { x: left, y: top + h - thin, w, h: thin },
      { x: left, y: top, w: thin, h },
      { x: left + w - thin, y: top, w: thin, h },
    ];
  });
}

/** Along the rings of terminals, which no word lies across. */
const ringsOf = ({ at: [x, y], print, part }: PlacedPart): Box[] =>
  POSTS.has(part.kind)
    ? print.items.flatMap((item) =>
        item.kind === 'circle'
          ? boxesAlong(
              Array.from({ length: 25 }, (_, i): Point => {
                const [u, v] = pointAtAngle(item.centre, item.radius, (i * 360) / 24);
                return [x + u, y + v];
              }),
              0.3,
            )
          : [],
      )
    : [];
const POSTS: ReadonlySet<BoardPart['kind']> = new Set(['aerial terminal', 'earth terminal', 'outputs', 'loop']);

/** Boxes a word keeps off so that no wire runs through it. */
const boxesOn = (way: readonly Point[]): Box[] => {
  const count = Math.max(1, Math.ceil(lengthOf(way) / 3));
  return boxesAlong(
    Array.from({ length: count + 1 }, (_, i) => pointAlong(way, i / count)),
    0.6,
  );
};

/** The board from above at full size: outlines, holes, terminals, and every wire by its number in the list. */
export function layoutItems(layout: BoardLayout): Item[] {
  const { width, height, placed, ways } = layout;
  const points = terminalPoints(placed);
  const holes = placed.flatMap(holesOf);
  const dots: Item[] = [...points].map(([title, p]) => circle(p, 0.8, { fill: 'ink', title }));
  return [
    rect(0, 0, width, height, { stroke: 'ink', width: 0.5, title: boardSheetWords.edge }),
    ...placed.map(({ part, print, at, turn }) =>
      group(print.items, { move: at, turn, title: boardSheetWords.partTitle(part) }),
    ),
    ...ways.map((way) => polyline(way, { stroke: 'ink', width: WIRE })),
    ...holes,
    ...dots,
    ...labelItems(layout, points, [...holes.filter((h) => h.kind === 'circle'), ...dots].map(itemBox)),
  ];
}

/** The holes of a part, each with a cross. */
function holesOf({ print, at, turn }: PlacedPart): Item[] {
  const a = (turn * Math.PI) / 180;
  return print.drills.flatMap(({ at: [x, y], diameter }) => {
    const p: Point = [at[0] + x * Math.cos(a) - y * Math.sin(a), at[1] + x * Math.sin(a) + y * Math.cos(a)];
    const reach = diameter / 2 + 1.2;
    return [
      circle(p, diameter / 2, { stroke: 'ink', width: 0.25 }),
      line([p[0] - reach, p[1]], [p[0] + reach, p[1]], { stroke: 'ink', width: 0.15 }),
      line([p[0], p[1] - reach], [p[0], p[1] + reach], { stroke: 'ink', width: 0.15 }),
    ];
  });
}

/** Names of parts first, then of terminals with leaders to their dots, then the wires' numbers, where there is still room. */
function labelItems(
  { width, height, placed, ways }: BoardLayout,
  points: ReadonlyMap<string, Point>,
  marks: readonly Box[],
): Item[] {
  const frame = { x: 0.5, y: 0.5, w: width - 1, h: height - 1 };
  const bodies = placed.filter(({ print }) => print.h < SMALL).map(bodyBox);
  const wires = ways.flatMap(boxesOn);
  const labels = [
    ...placed.map((p) => partLabel(p, width)),
    ...placed.filter((p) => p.print.assumed).map(assumedLabel),
  ];
  const edges = placed.flatMap(edgesOf);
  const rings = placed.flatMap(ringsOf);
  const named = placeLabels(labels, frame, [...marks, ...bodies, ...wires, ...edges], 0.9).items;
  const wanted = placed.flatMap(({ part }) =>
    part.terminals.length < 2 ? [] : part.terminals.map((terminal, i) => ({ terminal, words: part.marks[i] })),
  );
  const ends = terminalLabels(
    wanted,
    points,
    frame,
    named.map(itemBox),
    [...marks, ...rings],
    [...bodies, ...edges],
    wires,
  );
  const leaders = ends.map(({ terminal, leader: [from, to] }) =>
    line(from, to, { stroke: 'ink', width: 0.12, title: terminal }),
  );
  const joined = ends.map(({ terminal, text }) => ({ ...text, title: terminal }));
  const leaderBoxes = ends.flatMap(({ leader }) => boxesAlong(leader, 0.3));
  const inTheWay = [...marks, ...[...named, ...joined].map(itemBox), ...leaderBoxes];
  const numbered = wireNumbers(ways, frame, inTheWay);
  const numberRings = numbered.map((number) => {
    const { x, y, w, h } = itemBox(number);
    return circle([x + w / 2, y + h / 2], RING, { stroke: 'ink', width: 0.18, fill: 'paper' });
  });
  return [
    ...leaders,
    ...[...named, ...joined].map((t) => ({ ...t, rim: true })),
    ...numberRings,
    ...numbered.map((t) => ({ ...t, rim: false })),
  ];
}

/** The tag and what the part is, in it or over it. @param width of the board, mm. */
function partLabel({ part, print, at }: PlacedPart, width: number): Label {
  const isInside = print.words === 'inside';
  const room = isInside ? Math.max(24, (print.body ?? print.w) - 3) : Math.min(width - 4, Math.max(44, print.w + 20));
  const words = boardSheetWords.part(part);
  const above = -print.h / 2 - 1.4;
  const below = print.h / 2;
  const heights = isInside
    ? [-4, 2, -9, 8, above, below + 5, -14, 14, 19, -19]
    : [above, below + 4, above - 3.4, below + 7.4, above - 6, below + 10];
  return {
    item: { text: shorten(words, LETTERS, room / 1.12), size: LETTERS, bold: true },
    shorter: [shorten(words, LETTERS, room * 0.55), part.tag],
    must: true,
    places: [
      ...heights.flatMap((y) => [
        { at: [at[0], at[1] + y] as Point, anchor: 'middle' as const },
        { at: [Math.max(2, at[0] - print.w / 2), at[1] + y] as Point, anchor: 'start' as const },
        ...(isInside ? [{ at: [at[0] - print.w / 2 + 4, at[1] + y] as Point, anchor: 'start' as const }] : []),
        { at: [Math.min(width - 2, at[0] + print.w / 2), at[1] + y] as Point, anchor: 'end' as const },
      ]),
      { at: [at[0] - print.w / 2 - 1, at[1] + 1] as Point, anchor: 'end' as const },
      { at: [at[0] + print.w / 2 + 1, at[1] + 1] as Point, anchor: 'start' as const },
    ],
  };
}

const assumedLabel = ({ at }: PlacedPart): Label => ({
  item: { text: boardSheetWords.sizeAssumed, size: 2.2 },
  places: [2, 5, 8, -9, 12].map((y) => ({ at: [at[0], at[1] + y] as Point, anchor: 'middle' as const })),
});

/** Along a wire, from its middle outward. */
function sharesOf(way: readonly Point[]): number[] {
  const count = Math.max(15, 2 * Math.floor(lengthOf(way) / 5) + 1);
  return Array.from({ length: count }, (_, i) => 0.5 + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.94) / count);
}

/** The number of each wire on it or beside it, off other wires where there is such a place, and off all words. */
function wireNumbers(ways: BoardLayout['ways'], frame: Box, inTheWay: readonly Box[]): TextItem[] {
  const along = ways.map((way) => boxesOn(way));
  const taken = [...inTheWay];
  return ways.map((way, i) => {
    const label = wireLabel(way, i);
    const others = along.filter((_, k) => k !== i).flat();
    const clear = [RING - 0.7, 0.9, 0.3].flatMap(
      (gap) => placeLabels([{ ...label, must: false }], frame, [...taken, ...others], gap).items,
    );
    const item = clear[0] ?? placeLabels([label], frame, taken, 0.5).items[0];
    taken.push(itemBox(item));
    return item;
  });
}

const wireLabel = (way: readonly Point[], i: number): Label => ({
  item: { text: `${i + 1}`, size: LETTERS, bold: true },
  must: true,
  places: [0, 2, -2, 2.8, -2.8].flatMap((aside) =>
    sharesOf(way).flatMap((share) => {
      const [x, middle] = pointAlong(way, share);
      const y = middle + 0.9;
      const places: Point[] =
        aside === 0
          ? [[x, y]]
          : [
              [x + aside, y],
              [x, y + aside],
            ];
      return places.map((at) => ({ at, anchor: 'middle' as const }));
    }),
  ),
});
