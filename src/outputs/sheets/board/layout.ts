import type { PartRole } from '../../../engine/built/identity.ts';
import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Point } from '../../scene/scene.ts';
import type { BoardWarning } from '../../words/index.ts';
import type { Footprint } from './footprint.ts';
import { footprint } from './footprints.ts';
import type { BoardPart, BoardParts } from './parts.ts';
import { lengthOf, routes } from './route.ts';
import { type BoardWiring, wiringOf } from './wiring.ts';

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
  readonly wiring: BoardWiring;
  /** The way of each wire of the list over the board, round what stands in between. */
  readonly ways: readonly (readonly Point[])[];
  /** Of each wire of the list, mm, with what its ends take. */
  readonly lengths: readonly number[];
  readonly warnings: readonly BoardWarning[];
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

/** Aerial first, phones last: the order along the board, by what a part is there for. */
const STAGE: Record<PartRole, number> = {
  aerial: 0,
  earth: 0,
  frame: 1,
  rod: 1,
  'trap-coil': 1,
  'trap-capacitor': 1,
  'series-capacitor': 1,
  'tuning-coil': 2,
  'aerial-coil': 2,
  rotor: 2,
  'spare-coil': 2,
  tuning: 2,
  'aerial-tuning': 2,
  'parallel-capacitor': 2,
  'pump-capacitor': 3,
  detector: 3,
  'second-detector': 3,
  'bias-cell': 3,
  'by-pass': 4,
  'equaliser-resistor': 4,
  'equaliser-capacitor': 4,
  transformer: 4,
  'load-resistor': 4,
  'coupling-capacitor': 4,
  listed: 4,
  load: 5,
};

/** Coils of a list stand with the coils, whatever they are there for. */
const stage = ({ kind, role }: BoardPart): number => (role === 'listed' && kind === 'coil' ? 2 : STAGE[role]);

/** How the first two coupled coils of an arrangement stand to each other, where that is described. Distance m, tilt °. */
type Placing =
  | { readonly kind: 'inside' }
  | { readonly kind: 'apart'; readonly distance: number; readonly tilt: number }
  | undefined;

const apart = ({ distance, tilt }: { readonly distance: number; readonly tilt: number }): Placing => ({
  kind: 'apart',
  distance,
  tilt,
});
const alone = (): Placing => undefined;

const PLACING: ByKind<ArrangementDescription, Placing> = {
  coupled: apart,
  'two circuits': apart,
  // The rotor turns inside its stator.
  variometer: () => ({ kind: 'inside' }),
  // One coil, which may have a trap's beside it.
  direct: alone,
  'series capacitor': alone,
  tapped: alone,
  slider: alone,
  frame: alone,
  'ferrite rod': alone,
  // A list gives mutual inductances, not places.
  elements: alone,
};

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
    const warning: BoardWarning = { code: 'board.too-narrow', width: Math.ceil(widest) / 1e3 };
    return wired({ ...laid, warnings: [warning, ...laid.warnings] });
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
  const warnings: BoardWarning[] = [];
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
  if (length !== undefined && length < least) warnings.push({ code: 'board.too-short', length: least / 1e3 });
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
function turnedToWires(standing: readonly PlacedPart[], { lines }: BoardWiring): PlacedPart[] {
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
  for (const part of inOrder(parts)) {
    if (done.has(part.tag)) continue;
    done.add(part.tag);
    const mates = couplings
      .filter((pair) => pair.includes(part.tag))
      .map(([a, b]) => parts.find((p) => p.tag === (a === part.tag ? b : a))!)
      .filter((p) => !done.has(p.tag) && p.kind === 'coil');
    if (part.kind === 'coil' && mates.length > 0) {
      for (const mate of mates) done.add(mate.tag);
      units.push({ unit: coupledUnit(set, part, mates), stage: Math.min(...[part, ...mates].map(stage)) });
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

/** The aerial's own capacitor stands on its coil's side: before the other. */
function inOrder(parts: readonly BoardPart[]): readonly BoardPart[] {
  const own = parts.find((p) => p.role === 'aerial-tuning');
  return own ? parts.flatMap((p) => (p === own ? [] : p.role === 'tuning' ? [own, p] : [p])) : parts;
}

/** A coil with those that it is coupled to, side by side, leaning or inside it as described. */
function coupledUnit(set: SetDescription, part: BoardPart, mates: readonly BoardPart[]): Unit {
  const placing = byKind(PLACING, set.arrangement);
  const first = footprint(part, set, 'x');
  const members: PlacedPart[] = [{ part, print: first, at: [0, 0], turn: 0 }];
  let [left, right, high] = [-first.w / 2, first.w / 2, first.h];
  mates.forEach((mate, i) => {
    let print = footprint(mate, set, 'x');
    const isTrap = part.role === 'trap-coil' || mate.role === 'trap-coil';
    const known = i === 0 && placing?.kind === 'apart' && !isTrap ? placing : undefined;
    const isInside = i === 0 && placing?.kind === 'inside';
    // Anything else coupled stands beside what is there already.
    const beside = isInside ? 0 : right + 8 + print.w / 2;
    const distance = known ? known.distance * 1e3 : beside;
    const turn = known?.tilt ?? 0;
    const place = { part: mate, at: [distance, 0] as Point, turn };
    // One inside the other: its ends come out on the other side, where none of the first are.
    if (endsMeet([...members, { ...place, print }])) print = turnedOver(print);
    members.push({ ...place, print });
    const a = (turn * Math.PI) / 180;
    const w = Math.abs(print.w * Math.cos(a)) + Math.abs(print.h * Math.sin(a));
    const h = Math.abs(print.w * Math.sin(a)) + Math.abs(print.h * Math.cos(a));
    left = Math.min(left, distance - w / 2);
    right = Math.max(right, distance + w / 2);
    high = Math.max(high, h);
  });
  const middle = (left + right) / 2;
  const shifted = members.map((m) => ({ ...m, at: [m.at[0] - middle, m.at[1]] as Point }));
  return { members: shifted, w: right - left, h: high, isCoil: true };
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

/** Where each terminal of the placed parts lies. */
export function terminalPoints(placed: readonly PlacedPart[]): Map<string, Point> {
  const points = new Map<string, Point>();
  for (const { print, at, turn } of placed) {
    const a = (turn * Math.PI) / 180;
    for (const [name, [x, y]] of Object.entries(print.terminals))
      points.set(name, [at[0] + x * Math.cos(a) - y * Math.sin(a), at[1] + x * Math.sin(a) + y * Math.cos(a)]);
  }
  return points;
}
