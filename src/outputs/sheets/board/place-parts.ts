import { uniform } from '../../../engine/numerics/random.ts';
import type { Point } from '../../scene/scene.ts';
import { lengthOf, linesCross, over } from './route.ts';
import { otherWayRound, type PlacedPart, terminalPoints, type Unit } from './units.ts';
import { type Net, wiringOf } from './wiring.ts';

/** Parts on a board, without wires. */
export interface Laid {
  /** mm; the aerial's end is at the top. */
  readonly width: number;
  readonly height: number;
  readonly placed: readonly PlacedPart[];
}

/** Clear of the edge and between parts, mm. */
export interface Spacing {
  readonly edge: number;
  readonly gap: number;
}

/** For the words over a small part, mm. */
const HEAD = 6.5;
/** Between coils that must not reach each other, mm. */
const APART = 30;

/** Units in the order in which they fill the rows of a board; the posts of aerial and earth are the first row. */
interface Order {
  readonly posts: readonly Unit[];
  readonly units: readonly Unit[];
}

/** What a fault is worth in mm of wire. A wire that carries the signal before the detector counts so many times. */
const SHORT = 3;
const CROSSING = 30;
const OVER_PART = 1.5;
const SPINDLE_BLOCKED = 80;
const OUT_OF_ORDER = 8;
const TOO_HIGH = 20;

/** Steps of the annealing for each unit, and its temperatures in mm of wire. */
const STEPS = 40;
const HOT = 60;
const COLD = 2;

/**
 * Parts in rows from the aerial to the phones, in an order that keeps wires short and seldom crossing, found by simulated
 * annealing (Kirkpatrick, Gelatt and Vecchi, Science 220, 1983), always the same for the same parts.
 * @param units from the aerial to the phones
 * @param board its width, and the height that it should not exceed, mm
 */
export function placeParts(
  units: readonly Unit[],
  nets: readonly Net[],
  board: { readonly width: number; readonly height: number },
  spacing: Spacing,
): Laid {
  const chance = uniform(1);
  let at = inOrder(units);
  let laid = laidOut(at, board.width, spacing);
  let cost = costOf(at, laid, nets, board.height);
  let best = { laid, cost };
  const steps = STEPS * units.length;
  for (let step = 0; step < steps; step++) {
    const temperature = HOT * (COLD / HOT) ** (step / steps);
    const next = changed(at, chance);
    if (!next) continue;
    const tried = laidOut(next, board.width, spacing);
    const worth = costOf(next, tried, nets, board.height);
    if (worth > cost && chance() >= Math.exp((cost - worth) / temperature)) continue;
    [at, laid, cost] = [next, tried, worth];
    if (cost < best.cost) best = { laid, cost };
  }
  return best.laid;
}

export const inOrder = (units: readonly Unit[]): Order => ({
  posts: units.filter((u) => u.stage === 0),
  units: units.filter((u) => u.stage > 0),
});

/** One unit the other way round, two that change places, or one that goes elsewhere. */
function changed({ posts, units }: Order, chance: () => number): Order | undefined {
  const any = (): number => Math.floor(chance() * units.length);
  const what = chance();
  if (what < 0.08) return { posts: posts.toReversed(), units };
  const [i, k] = [any(), any()];
  if (what < 0.35) {
    const turned = otherWayRound(units[i]);
    return turned && { posts, units: units.with(i, turned) };
  }
  // The phones' terminals stay at their edge.
  if (i === k || units[i].stage === 5 || units[k].stage === 5) return undefined;
  if (what < 0.7) return { posts, units: units.with(i, units[k]).with(k, units[i]) };
  return { posts, units: units.toSpliced(i, 1).toSpliced(k, 0, units[i]) };
}

/** Rows of units down a board so wide, mm. */
export function laidOut({ posts, units }: Order, width: number, { edge, gap }: Spacing): Laid {
  const placed: PlacedPart[] = [];
  const put = ({ members }: Unit, x: number, y: number): void => {
    for (const m of members) placed.push({ ...m, at: [x + m.at[0], y + m.at[1]] });
  };
  let y = edge;
  posts.forEach((unit, i) => {
    put(unit, i === 0 ? edge + unit.w / 2 : width - edge - unit.w / 2, y + HEAD + unit.h / 2);
  });
  if (posts.length > 0) y += HEAD + 16 + gap / 2;
  for (const row of rowsOf(units, width - 2 * edge, gap)) {
    const height = Math.max(...row.map((u) => u.h)) + HEAD;
    const total = row.reduce((sum, u) => sum + u.w, 0);
    const gaps = row.slice(1).map((u, i) => (u.isCoil && row[i].isCoil ? APART : gap));
    const spare = width - 2 * edge - total - gaps.reduce((a, b) => a + b, 0);
    const between = row.length > 1 ? Math.min(spare / (row.length - 1), 14) : 0;
    let x = edge + (row.length > 1 ? Math.max(0, spare - between * (row.length - 1)) / 2 : spare / 2);
    row.forEach((unit, i) => {
      put(unit, x + unit.w / 2, y + HEAD + (height - HEAD) / 2);
      x += unit.w + (gaps[i] ?? 0) + between;
    });
    y += height + gap / 2;
  }
  return { width, height: Math.ceil(y + edge), placed };
}

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

/** Length and crossings of straight wires, and what else makes a board hard to wire or to read, as mm of wire. */
function costOf({ units }: Order, { placed, height }: Laid, nets: readonly Net[], most: number): number {
  const at = terminalPoints(placed);
  const wires = wiringOf(nets, at).lines.map(({ from, to, keepShort }) => {
    const [a, b] = [at.get(from)!, at.get(to)!] as const;
    return { a, b, worth: keepShort ? SHORT : 1 };
  });
  let cost = height + TOO_HIGH * Math.max(0, height - most);
  let longest = 0;
  wires.forEach(({ a, b, worth }, i) => {
    const length = lengthOf([a, b]);
    cost += worth * length;
    if (worth > 1) longest = Math.max(longest, length);
    for (let k = 0; k < i; k++) {
      const { a: c, b: d } = wires[k];
      if (!isSame(a, c) && !isSame(a, d) && !isSame(b, c) && !isSame(b, d) && linesCross(a, b, c, d)) cost += CROSSING;
    }
    for (const { print, at, turn } of placed) cost += OVER_PART * over(a, b, { at, turn, w: print.w, h: print.h });
  });
  cost += SHORT * longest;
  placed.forEach((one, i) => {
    const next = placed[one.part.role === 'aerial-tuning' ? i - 1 : i + 1];
    // What stands beside a knob keeps the hand off it.
    if (one.part.kind === 'variable' && next && Math.abs(next.at[1] - one.at[1]) < 1) cost += SPINDLE_BLOCKED;
  });
  for (let i = 1; i < units.length; i++) cost += OUT_OF_ORDER * Math.max(0, units[i - 1].stage - units[i].stage);
  return cost;
}

const isSame = (p: Point, q: Point): boolean => p[0] === q[0] && p[1] === q[1];
