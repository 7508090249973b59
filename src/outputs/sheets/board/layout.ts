import type { SetDescription } from '../../../engine/set/description.ts';
import { type Box, itemBox } from '../../scene/boxes.ts';
import { circle, group, line, polyline, rect } from '../../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../../scene/labels.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { shorten } from '../../scene/text-width.ts';
import { type Footprint, footprint } from './footprints.ts';
import type { BoardPart, BoardParts } from './parts.ts';
import { lengthOf, routes } from './route.ts';
import { terminalLabels } from './terminal-labels.ts';
import { type Wiring, wiringOf } from './wiring.ts';

export interface PlacedPart {
  readonly part: BoardPart;
  readonly print: Footprint;
  /** Middle, mm from the board's upper left corner. */
  readonly at: Point;
  /** Degrees, of a coil that leans against its neighbour. */
  readonly turn: number;
}

export interface BoardLayout {
  /** mm; the aerial's end is at the top. */
  readonly width: number;
  readonly height: number;
  readonly placed: readonly PlacedPart[];
  readonly wiring: Wiring;
  /** The way of each wire of the list over the board, round what stands in between. */
  readonly ways: readonly (readonly Point[])[];
  /** Of each wire of the list, mm, with what its ends take. */
  readonly lengths: readonly number[];
  readonly warnings: readonly string[];
}

/** The parts of a set and where they stand. */
export interface Built {
  readonly parts: BoardParts;
  readonly layout: BoardLayout;
}

/** Before the wires are laid. */
type Laid = Omit<BoardLayout, 'ways' | 'lengths'>;

/** Clear of the edge and between parts, mm: as one likes it, and as close as it may be to stay on one page. */
const EASY = { edge: 8, gap: 9 } as const;
const TIGHT = { edge: 5, gap: 6 } as const;
type Spacing = typeof EASY | typeof TIGHT;
/** For the words over a small part. */
const HEAD = 6.5;
/** Between coils that must not reach each other, mm. */
const APART = 30;

/** Aerial first, phones last: the order along the board. */
function stage(part: BoardPart): number {
  switch (part.kind) {
    case 'aerial terminal':
    case 'earth terminal':
      return 0;
    case 'coil':
      return part.role === 'trap-coil' ? 1 : 2;
    case 'loop':
      return 1;
    case 'variable':
      return 2;
    case 'detector':
    case 'cell':
      return 3;
    case 'outputs':
      return 5;
    case 'transformer':
      return 4;
    default:
      switch (part.role) {
        case 'trap-capacitor':
        case 'series-capacitor':
          return 1;
        case 'tuning':
        case 'aerial-tuning':
        case 'parallel-capacitor':
          return 2;
        case 'pump-capacitor':
          return 3;
        default:
          return 4;
      }
  }
}

/** Several parts that are placed as one: coils that must stand so and so to each other. */
interface Unit {
  readonly members: readonly {
    readonly part: BoardPart;
    readonly print: Footprint;
    readonly at: Point;
    readonly turn: number;
  }[];
  readonly w: number;
  readonly h: number;
  readonly isCoil: boolean;
}

/** A board so long, in mm, fits one page of A4 with its test ruler; one so wide, any page. */
const ONE_PAGE = { width: 178, height: 204 };

export function boardLayout(
  set: SetDescription,
  parts: BoardParts,
  board: { width?: number; height?: number } = {},
): BoardLayout {
  const units = unitsOf(set, parts);
  const widest = Math.max(...units.map(({ unit }) => unit.w)) + 2 * EASY.edge;
  if (board.width !== undefined) {
    const laid = laidOut(parts, units, Math.max(board.width, Math.ceil(widest)), board.height, EASY);
    if (!(widest > board.width)) return wired(laid);
    const word = `The board must be ${Math.ceil(widest)} mm wide: its widest part would not lie on it.`;
    return wired({ ...laid, warnings: [word, ...laid.warnings] });
  }
  // The narrowest that fits a page; where none does, the one that wastes least.
  const widths = [130, 142, 154, 166, ONE_PAGE.width].map((w) => Math.max(w, Math.ceil(widest)));
  const tried = (spacing: Spacing) => widths.map((w) => laidOut(parts, units, w, board.height, spacing));
  const fits = (l: Laid): boolean => l.width <= ONE_PAGE.width && l.height <= ONE_PAGE.height;
  const easy = tried(EASY);
  return wired(
    easy.find(fits) ??
      tried(TIGHT).find(fits) ??
      easy.reduce((a, b) => (b.width * b.height < a.width * a.height ? b : a)),
  );
}

function laidOut(
  parts: BoardParts,
  units: readonly { unit: Unit; stage: number }[],
  width: number,
  length: number | undefined,
  { edge, gap }: Spacing,
): Laid {
  const warnings: string[] = [];
  const standing: PlacedPart[] = [];
  let y = edge;
  const terminals = units.filter((u) => u.stage === 0).map((u) => u.unit);
  if (terminals.length > 0) {
    terminals.forEach((unit, i) => {
      const x = i === 0 ? edge + unit.w / 2 : width - edge - unit.w / 2;
      for (const m of unit.members) standing.push({ ...m, at: [x, y + HEAD + unit.h / 2] });
    });
    y += HEAD + 16 + gap / 2;
  }
  for (let s = 1; s <= 5; s++) {
    const here = units.filter((u) => u.stage === s).map((u) => u.unit);
    for (const row of rowsOf(here, width - 2 * edge, gap)) {
      const height = Math.max(...row.map((u) => u.h)) + HEAD;
      const total = row.reduce((sum, u) => sum + u.w, 0);
      const gaps = row.slice(1).map((u, i) => (u.isCoil && row[i].isCoil ? APART : gap));
      const spare = width - 2 * edge - total - gaps.reduce((a, b) => a + b, 0);
      const between = row.length > 1 ? Math.min(spare / (row.length - 1), 14) : 0;
      let x = edge + (row.length > 1 ? Math.max(0, spare - between * (row.length - 1)) / 2 : spare / 2);
      row.forEach((unit, i) => {
        const [cx, cy] = [x + unit.w / 2, y + HEAD + (height - HEAD) / 2];
        for (const m of unit.members) standing.push({ ...m, at: [cx + m.at[0], cy + m.at[1]] });
        x += unit.w + (gaps[i] ?? 0) + between;
      });
      y += height + gap / 2;
    }
  }
  const least = Math.ceil(y + edge);
  if (length !== undefined && length < least)
    warnings.push(`The board must be ${least} mm long: laid out as the trade does it, the parts need so much.`);
  const height = Math.max(least, length ?? 0);
  const wiring = wiringOf(
    parts,
    standing.map((p) => p.part.tag),
  );
  const placed = turnedToWires(standing, wiring);
  return { width, height, placed, wiring, warnings };
}

/** The same with the way of every wire. */
function wired(laid: Laid): BoardLayout {
  const { width, height, placed, wiring } = laid;
  const at = terminalPoints(placed);
  const bodies = placed.map(({ print, at, turn }) => ({ at, turn, w: print.w, h: print.h }));
  const ways = routes(
    wiring.lines.map(({ from, to }) => [at.get(from)!, at.get(to)!] as const),
    bodies,
    { width, height },
    [...at.values()],
  );
  const lengths = ways.map((way) => Math.ceil((lengthOf(way) * 1.15 + 25) / 10) * 10);
  return { ...laid, ways, lengths };
}

/** Parts that may as well stand the other way round, so turned that their wires are short and do not cross. */
function turnedToWires(standing: readonly PlacedPart[], { lines }: Wiring): PlacedPart[] {
  const placed = [...standing];
  const total = (): number => {
    const at = terminalPoints(placed);
    return lines.reduce((sum, { from, to }) => sum + lengthOf([at.get(from)!, at.get(to)!]), 0);
  };
  standing.forEach((one, i) => {
    const other = otherWayRound(one);
    if (!other) return;
    const before = total();
    placed[i] = other;
    if (total() > before - 1) placed[i] = one;
  });
  return placed;
}

function otherWayRound(one: PlacedPart): PlacedPart | undefined {
  const { part, print } = one;
  switch (part.kind) {
    case 'capacitor':
    case 'resistor':
    case 'detector':
    case 'cell':
      return { ...one, turn: one.turn + 180 };
    case 'variable': {
      // Where a bought one has its tags is not known; its spindle must stay where it is.
      const [a, b] = part.terminals;
      return print.assumed
        ? { ...one, print: { ...print, terminals: { [a]: print.terminals[b], [b]: print.terminals[a] } } }
        : undefined;
    }
    default:
      return undefined;
  }
}

function unitsOf(set: SetDescription, { parts, couplings }: BoardParts): { unit: Unit; stage: number }[] {
  const units: { unit: Unit; stage: number }[] = [];
  const done = new Set<string>();
  let axes = 0;
  const placing = set.arrangement as { distance?: number; tilt?: number };
  // The aerial's own capacitor stands on its coil's side: before the other.
  const own = parts.find((p) => p.role === 'aerial-tuning');
  const order = own ? parts.flatMap((p) => (p === own ? [] : p.role === 'tuning' ? [own, p] : [p])) : parts;
  for (const part of order) {
    if (done.has(part.tag)) continue;
    done.add(part.tag);
    const mates = couplings
      .filter((pair) => pair.includes(part.tag))
      .map(([a, b]) => parts.find((p) => p.tag === (a === part.tag ? b : a))!)
      .filter((p) => !done.has(p.tag) && p.kind === 'coil');
    if (part.kind === 'coil' && mates.length > 0) {
      const first = footprint(part, set, 'x');
      const members = [{ part, print: first, at: [0, 0] as Point, turn: 0 }];
      let [left, right, high] = [-first.w / 2, first.w / 2, first.h];
      mates.forEach((mate, i) => {
        done.add(mate.tag);
        let print = footprint(mate, set, 'x');
        const known =
          i === 0 && placing.distance !== undefined && part.role !== 'trap-coil' && mate.role !== 'trap-coil';
        // A variometer's rotor turns inside its stator; anything else coupled stands beside what is there already.
        const inside = i === 0 && set.arrangement.kind === 'variometer';
        const distance = known || inside ? (placing.distance ?? 0) * 1e3 : right + 8 + print.w / 2;
        const tilt = known ? (placing.tilt ?? 0) : 0;
        const place = { part: mate, at: [distance, 0] as Point, turn: tilt };
        // One inside the other: its ends come out on the other side, where none of the first are.
        if (endsMeet([...members, { ...place, print }])) print = turnedOver(print);
        members.push({ ...place, print });
        const a = (tilt * Math.PI) / 180;
        const w = Math.abs(print.w * Math.cos(a)) + Math.abs(print.h * Math.sin(a));
        const h = Math.abs(print.w * Math.sin(a)) + Math.abs(print.h * Math.cos(a));
        left = Math.min(left, distance - w / 2);
        right = Math.max(right, distance + w / 2);
        high = Math.max(high, h);
      });
      const middle = (left + right) / 2;
      const shifted = members.map((m) => ({ ...m, at: [m.at[0] - middle, m.at[1]] as Point }));
      units.push({
        unit: { members: shifted, w: right - left, h: high, isCoil: true },
        stage: Math.min(...members.map((m) => stage(m.part))),
      });
      axes++;
      continue;
    }
    const isCoil = part.kind === 'coil' || part.kind === 'loop';
    // Coils that are strangers stand at right angles, so that neither reaches the other.
    const print = footprint(part, set, part.kind === 'coil' && axes++ % 2 === 1 ? 'y' : 'x');
    units.push({
      unit: { members: [{ part, print, at: [0, 0], turn: 0 }], w: print.w, h: print.h, isCoil },
      stage: stage(part),
    });
  }
  return units;
}

/** Ends nearer to each other than this, mm, leave no room for two wires. */
const ENDS_APART = 4;

function endsMeet(placed: readonly PlacedPart[]): boolean {
  const points = [...terminalPoints(placed.slice(-1)).values()];
  const others = [...terminalPoints(placed.slice(0, -1)).values()];
  return points.some((p) => others.some((q) => lengthOf([p, q]) < ENDS_APART));
}

/** A coil turned about its axis, so that its ends are on the far side. */
const turnedOver = (print: Footprint): Footprint => ({
  ...print,
  terminals: Object.fromEntries(Object.entries(print.terminals).map(([t, [x, y]]) => [t, [x, -y]])),
  drills: print.drills.map(({ at: [x, y], diameter }) => ({ at: [x, -y], diameter })),
});

function rowsOf(units: readonly Unit[], room: number, usual: number): Unit[][] {
  const rows: Unit[][] = [];
  let used = 0;
  for (const unit of units) {
    const row = rows[rows.length - 1];
    const gap = row && unit.isCoil && row[row.length - 1].isCoil ? APART : usual;
    if (row && used + gap + unit.w <= room) {
      row.push(unit);
      used += gap + unit.w;
    } else {
      rows.push([unit]);
      used = unit.w;
    }
  }
  return rows;
}

function terminalPoints(placed: readonly PlacedPart[]): Map<string, Point> {
  const points = new Map<string, Point>();
  for (const { print, at, turn } of placed) {
    const a = (turn * Math.PI) / 180;
    for (const [name, [x, y]] of Object.entries(print.terminals))
      points.set(name, [at[0] + x * Math.cos(a) - y * Math.sin(a), at[1] + x * Math.sin(a) + y * Math.cos(a)]);
  }
  return points;
}

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
/** Bodies lower than this, mm, have no room for words on them. */
const SMALL = 12;

/** What of a small part is seen between its ends. */
const bodyBox = ({ at: [x, y], print }: PlacedPart): Box => ({
  x: x - print.w / 4,
  y: y - print.h / 3,
  w: print.w / 2,
  h: (2 * print.h) / 3,
});

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
  const items: Item[] = [rect(0, 0, width, height, { stroke: 'ink', width: 0.5, title: 'edge of the board' })];
  const points = terminalPoints(placed);
  const holes: Item[] = [];
  for (const { part, print, at, turn } of placed) {
    items.push(group(print.items, { move: at, turn, title: `${part.tag}: ${part.words}` }));
    const a = (turn * Math.PI) / 180;
    for (const {
      at: [x, y],
      diameter,
    } of print.drills) {
      const p: Point = [at[0] + x * Math.cos(a) - y * Math.sin(a), at[1] + x * Math.sin(a) + y * Math.cos(a)];
      holes.push(circle(p, diameter / 2, { stroke: 'ink', width: 0.25 }));
      holes.push(
        line([p[0] - diameter / 2 - 1.2, p[1]], [p[0] + diameter / 2 + 1.2, p[1]], { stroke: 'ink', width: 0.15 }),
      );
      holes.push(
        line([p[0], p[1] - diameter / 2 - 1.2], [p[0], p[1] + diameter / 2 + 1.2], { stroke: 'ink', width: 0.15 }),
      );
    }
  }
  const drawnWires: Item[] = ways.map((way) => polyline(way, { stroke: 'soft', width: 0.35, dash: [1.6, 0.9] }));
  const dots: Item[] = [...points].map(([title, p]) => circle(p, 0.8, { fill: 'ink', title }));
  // Names of parts first, then of terminals with leaders to their dots, then the wires' numbers, where there is still room.
  const frame = { x: 0.5, y: 0.5, w: width - 1, h: height - 1 };
  const labels: Label[] = [];
  for (const { part, print, at } of placed) {
    const room =
      print.words === 'inside'
        ? Math.max(24, (print.body ?? print.w) - 3)
        : Math.min(width - 4, Math.max(44, print.w + 20));
    const words = `${part.tag}  ${part.words}`;
    const above = -print.h / 2 - 1.4;
    const spots: Point[] =
      print.words === 'inside'
        ? [
            [0, -4],
            [0, 2],
            [0, -9],
            [0, 8],
            [0, above],
            [0, print.h / 2 + 5],
            [0, -14],
            [0, 14],
          ]
        : [
            [0, above],
            [0, print.h / 2 + 4],
            [0, above - 3.4],
            [0, print.h / 2 + 7.4],
          ];
    labels.push({
      item: { text: shorten(words, LETTERS, room / 1.12), size: LETTERS, bold: true },
      shorter: [shorten(words, LETTERS, room * 0.55), part.tag],
      must: true,
      places: spots.flatMap(([x, y]) => [
        { at: [at[0] + x, at[1] + y] as Point, anchor: 'middle' as const },
        { at: [Math.max(2, at[0] + x - print.w / 2), at[1] + y] as Point, anchor: 'start' as const },
        { at: [Math.min(width - 2, at[0] + x + print.w / 2), at[1] + y] as Point, anchor: 'end' as const },
      ]),
    });
  }
  for (const { print, at } of placed) {
    if (!print.assumed) continue;
    labels.push({
      item: { text: '(size assumed)', size: 2.2 },
      places: [2, 5, 8, -9, 12].map((y) => ({ at: [at[0], at[1] + y] as Point, anchor: 'middle' as const })),
    });
  }
  const numbers = ways.map(
    (way, i): Label => ({
      item: { text: `${i + 1}`, size: LETTERS, bold: true, rim: true },
      must: true,
      places: [0.5, 0.42, 0.58, 0.34, 0.66, 0.27, 0.73, 0.2, 0.8, 0.47, 0.53, 0.38, 0.62].flatMap((t) => {
        const [x, middle] = pointAlong(way, t);
        const y = middle + 0.9;
        return [
          { at: [x, y] as Point, anchor: 'middle' as const },
          { at: [x + 2, y] as Point, anchor: 'middle' as const },
          { at: [x - 2, y] as Point, anchor: 'middle' as const },
          { at: [x, y - 2] as Point, anchor: 'middle' as const },
        ];
      }),
    }),
  );
  const marks = [...holes.filter((h) => h.kind === 'circle').map(itemBox), ...dots.map(itemBox)];
  const bodies = placed.filter(({ print }) => print.h < SMALL).map(bodyBox);
  const wires = ways.flatMap(boxesOn);
  const named = placeLabels(labels, frame, [...marks, ...bodies, ...wires], 0.9).items;
  const wanted = placed.flatMap(({ part }) =>
    part.terminals.length < 2
      ? []
      : part.terminals.map((t, i) => ({
          terminal: t,
          words: part.marks[i],
        })),
  );
  const ends = terminalLabels(wanted, points, frame, named.map(itemBox), marks, [...bodies, ...wires]);
  const leaders = ends.map(({ terminal, leader: [from, to] }) =>
    line(from, to, { stroke: 'ink', width: 0.12, title: terminal }),
  );
  const joined = ends.map(({ terminal, text }) => ({ ...text, title: terminal }));
  const leaderBoxes = ends.flatMap(({ leader }) => boxesAlong(leader, 0.3));
  const inTheWay = [...marks, ...[...named, ...joined].map(itemBox), ...leaderBoxes];
  const numbered = placeLabels(numbers, frame, inTheWay, 0.9).items;
  const names = [...named, ...joined, ...numbered].map((t) => ({ ...t, rim: true }));
  return [...items, ...drawnWires, ...holes, ...dots, ...leaders, ...names];
}
