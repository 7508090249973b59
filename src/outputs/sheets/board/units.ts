import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Point } from '../../scene/scene.ts';
import type { Footprint } from './footprint.ts';
import { footprint } from './footprints.ts';
import type { BoardPart, BoardParts } from './parts.ts';
import { lengthOf } from './route.ts';

export interface PlacedPart {
  readonly part: BoardPart;
  readonly print: Footprint;
  /** Middle, mm from the board's upper left corner. */
  readonly at: Point;
  /** Degrees, of a coil that leans against its neighbour. */
  readonly turn: number;
}

/** Aerial first, phones last: the order along the board, by what a part is there for. */
const STAGE: Record<BoardPart['role'], number> = {
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
  'band-switch': 2,
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
export interface Unit {
  /** Their middles from the middle of all. */
  readonly members: readonly PlacedPart[];
  readonly w: number;
  readonly h: number;
  readonly isCoil: boolean;
  /** Aerial 0, phones 5: the order along the board. */
  readonly stage: number;
}

/** The parts of a set by what stands together, from the aerial to the phones. */
export function unitsOf(set: SetDescription, { parts, couplings }: BoardParts): Unit[] {
  const units: Unit[] = [];
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
      units.push({ ...coupledUnit(set, part, mates), stage: Math.min(...[part, ...mates].map(stage)) });
      axes++;
      continue;
    }
    const isCoil = part.kind === 'coil' || part.kind === 'loop';
    // Coils that are strangers stand at right angles, so that neither reaches the other.
    const print = footprint(part, set, part.kind === 'coil' && axes++ % 2 === 1 ? 'y' : 'x');
    units.push({
      members: [{ part, print, at: [0, 0], turn: 0 }],
      w: print.w,
      h: print.h,
      isCoil,
      stage: stage(part),
    });
  }
  return units.sort((a, b) => a.stage - b.stage);
}

/** The aerial's own capacitor stands on its coil's side: before the other. */
function inOrder(parts: readonly BoardPart[]): readonly BoardPart[] {
  const own = parts.find((p) => p.role === 'aerial-tuning');
  return own ? parts.flatMap((p) => (p === own ? [] : p.role === 'tuning' ? [own, p] : [p])) : parts;
}

/** A coil with those that it is coupled to, side by side, leaning or inside it as described. */
function coupledUnit(set: SetDescription, part: BoardPart, mates: readonly BoardPart[]): Omit<Unit, 'stage'> {
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

/** A coil turned about its axis, or end over end, so that its ends are on the far side. */
function turnedOver(print: Footprint): Footprint {
  const over = ([x, y]: Point): Point => (print.axis === 'y' ? [-x, y] : [x, -y]);
  return {
    ...print,
    terminals: Object.fromEntries(Object.entries(print.terminals).map(([t, p]) => [t, over(p)])),
    drills: print.drills.map(({ at, diameter }) => ({ at: over(at), diameter })),
  };
}

/** The same standing the other way round, where that makes no difference to what it does. */
export function otherWayRound(unit: Unit): Unit | undefined {
  const [one, ...mates] = unit.members;
  if (mates.length > 0) return undefined;
  const { part, print } = one;
  switch (part.kind) {
    case 'capacitor':
    case 'resistor':
    case 'detector':
    case 'cell':
    case 'transformer':
      return { ...unit, members: [{ ...one, turn: one.turn + 180 }] };
    case 'coil':
      return { ...unit, members: [{ ...one, print: turnedOver(print) }] };
    case 'variable': {
      // Where a bought one has its tags is not known; its spindle must stay where it is.
      const [a, b] = part.terminals;
      return print.assumed
        ? {
            ...unit,
            members: [{ ...one, print: { ...print, terminals: { [a]: print.terminals[b], [b]: print.terminals[a] } } }],
          }
        : undefined;
    }
    default:
      return undefined;
  }
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
