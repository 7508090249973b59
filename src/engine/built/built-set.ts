import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { TrapDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { AERIAL, type Assembly, OUT } from '../kinds/arrangements/assembly.ts';
import type { TuningDescription } from '../kinds/tunings/tuning-schema.ts';
import { type Circuit, EARTH, type Element, type Mutual } from '../network/elements.ts';
import {
  type ElementId,
  type JointId,
  jointId,
  type Owner,
  type PartId,
  sideOf,
  type TerminalId,
  terminalId,
  turnsInId,
} from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { SetDescription } from '../set/description.ts';
import type { Farads, Henries, Ohms, Volts } from '../units/quantities.ts';
import { knownCoupling } from './coil-parts.ts';
import { coilIndex, identitiesOf, type PartIdentity } from './identity.ts';
import { type SetCircuit, setCircuit } from './set-circuit.ts';

export type TerminalIs =
  | 'start'
  | 'end'
  | 'tap'
  | 'slider'
  | 'fixed'
  | 'moving'
  | 'anode'
  | 'cathode'
  | 'plus'
  | 'minus'
  | 'one'
  | 'other';

/** Where a wire is joined to a part. */
export interface Terminal {
  readonly id: TerminalId;
  readonly joint: JointId;
  readonly is: TerminalIs;
  /** Of a coil: counted from its start. */
  readonly turn?: number;
  /** Of a transformer. */
  readonly side?: 'primary' | 'secondary';
}

/** What a part measures, by what kind of thing it is. */
export type PartValues =
  | { readonly kind: 'outdoors' }
  /** `coil`: which of the description's coils; none for one that is known by its inductance alone. */
  | { readonly kind: 'coil'; readonly coil?: number; readonly turns: number; readonly inductance: Henries }
  | { readonly kind: 'variable'; readonly tuning: TuningDescription }
  | { readonly kind: 'capacitor'; readonly capacitance: Farads }
  | { readonly kind: 'resistor'; readonly resistance: Ohms }
  | { readonly kind: 'detector' }
  | { readonly kind: 'cell'; readonly voltage: Volts }
  | { readonly kind: 'transformer'; readonly ratio: number }
  | { readonly kind: 'load' };

/** What of the circuit lies between two terminals: a stretch of a coil, a side of a transformer, otherwise a whole part. */
export interface Piece {
  readonly id: ElementId | PartId | string;
  readonly terminals: readonly [TerminalId, TerminalId];
}

/** A thing that somebody buys, winds or fits. */
export interface Part extends PartIdentity {
  readonly terminals: readonly Terminal[];
  readonly values: PartValues;
  readonly pieces: readonly Piece[];
}

/** Two coils that reach each other, as the description places them. */
export interface Coupling {
  readonly between: readonly [PartId, PartId];
  readonly k?: number;
  readonly distance?: number;
  readonly tilt?: number;
}

/** A set as made: parts by id in the order in which a builder meets them, what couples them, and the circuit. */
export interface BuiltSet {
  readonly set: SetDescription;
  readonly parts: ReadonlyMap<PartId, Part>;
  /** In the order of the circuit. */
  readonly couplings: readonly Coupling[];
  readonly circuit: SetCircuit;
  readonly assembly: Assembly;
  /** The joint that a node of the circuit is part of. */
  readonly jointOf: (node: string) => JointId;
}

type TwoTerminal = Exclude<Element, Mutual>;

const cache = new WeakMap<SetDescription, BuiltSet>();

/**
 * A set as made: once for a description.
 * @param set as read
 * @returns its parts, what couples them, and its circuit
 * @throws RangeError for parts that cannot be built; `readValue` names those beforehand.
 */
export function builtSet(set: SetDescription): BuiltSet {
  let built = cache.get(set);
  if (!built) cache.set(set, (built = build(set)));
  return built;
}

/** Where the pointer stands while a circuit is read for what it joins. */
const MIDDLE = 0.5;

function build(set: SetDescription): BuiltSet {
  const circuit = setCircuit(set);
  const { assembly } = circuit;
  const at = assembly.circuitAt(MIDDLE);
  const elements = at.elements.filter((e): e is TwoTerminal => e.kind !== 'mutual');
  const joint = jointsOf(at);
  const identities = identitiesOf(set);
  const grouped = new Map<PartId, TwoTerminal[]>();
  for (const e of elements) {
    if (isNoPart(e.owner)) continue;
    grouped.set(e.owner.part, [...(grouped.get(e.owner.part) ?? []), e]);
  }
  const parts = [...grouped].flatMap(([id, list]): Part[] => {
    const identity = identities.get(id);
    if (!identity) throw new RangeError(`"${id}" is no part of this set`);
    const part = partOf(set, identity, list, elements, joint);
    return part ? [part] : [];
  });
  parts.sort((a, b) => rank(a) - rank(b));
  return {
    set,
    parts: new Map(parts.map((p) => [p.id, p])),
    couplings: couplingsOf(set, at, identities),
    circuit,
    assembly,
    jointOf: joint,
  };
}

/** What is no thing of its own: strays of a part, leads, the field, the cord of what one listens with. */
const isNoPart = ({ role }: Owner): boolean =>
  role === 'self-capacitance' ||
  role === 'junction-capacitance' ||
  role === 'contact' ||
  role === 'emf' ||
  role === 'cord';

/** Aerial and earth, coils, what tunes, the detector, then all else along the circuit; a transformer last. */
function rank({ id, values }: Part): number {
  if (values.kind === 'outdoors') return id === PART.aerial ? 0 : 1;
  if (values.kind === 'coil') return 2;
  if (id === PART.tuning) return 3;
  if (id === PART.aerialTuning || id === PART.detector) return 4;
  return values.kind === 'transformer' ? 6 : 5;
}

/** Nodes of the circuit with what mere wire joins taken as one: contacts, and a loop's emf, which lies in its turns. */
function jointsOf({ elements }: Circuit): (node: string) => JointId {
  const merged = new Map<string, string>();
  const root = (node: string): string => {
    let k = node;
    while (merged.has(k)) k = merged.get(k)!;
    return k;
  };
  for (const e of elements) {
    if (e.kind === 'mutual') continue;
    const { role, part } = e.owner;
    if (role !== 'contact' && !(role === 'emf' && part === PART.loop)) continue;
    const [a, b] = [root(e.from), root(e.to)];
    if (a === b) continue;
    if (a === EARTH) merged.set(b, a);
    else merged.set(a, b);
  }
  return (node) => jointId(root(node));
}

function partOf(
  set: SetDescription,
  identity: PartIdentity,
  list: readonly TwoTerminal[],
  all: readonly TwoTerminal[],
  joint: (node: string) => JointId,
): Part | undefined {
  const { id } = identity;
  const [first] = list;
  const terminal = (is: TerminalIs, node: string, more: Partial<Terminal> = {}): Terminal => ({
    id: terminalId(id, more.side ? `${more.side}-${is}` : is),
    is,
    joint: joint(node),
    ...more,
  });
  const between = (values: PartValues, is: readonly [TerminalIs, TerminalIs]): Part | undefined => {
    const ends = [terminal(is[0], first.from), terminal(is[1], first.to)];
    // Both ends on one joint: it does nothing, and nobody fits it. What has a direction stays.
    if (ends[0].joint === ends[1].joint && values.kind !== 'detector' && values.kind !== 'cell') return undefined;
    return { ...identity, values, terminals: ends, pieces: [{ id, terminals: [ends[0].id, ends[1].id] }] };
  };
  switch (identity.role) {
    case 'aerial':
      return {
        ...identity,
        values: { kind: 'outdoors' },
        terminals: [terminal('one', AERIAL)],
        // Outside, field and ground join the two posts.
        pieces: [{ id, terminals: [terminalId(PART.aerial, 'one'), terminalId(PART.earth, 'one')] }],
      };
    case 'earth':
      return { ...identity, values: { kind: 'outdoors' }, terminals: [terminal('one', EARTH)], pieces: [] };
    case 'tuning':
    case 'aerial-tuning':
      return tuningPart(set, identity, first, between);
    case 'trap-capacitor': {
      const { capacitor } = trapOf(set, identity) ?? {};
      if (capacitor && capacitor.kind !== 'fixed')
        return between({ kind: 'variable', tuning: capacitor }, ['fixed', 'moving']);
      break;
    }
    case 'detector':
    case 'second-detector':
      return between({ kind: 'detector' }, ['anode', 'cathode']);
    case 'bias-cell':
      // `to` is the positive end.
      return between({ kind: 'cell', voltage: first.kind === 'cell' ? first.voltage : 0 }, ['minus', 'plus']);
    case 'transformer': {
      const sides = (['primary', 'secondary'] as const).map((side) => {
        const [from, to] = endsOf(
          list.filter((e) => e.owner.role === side),
          list,
          all,
        );
        return [terminal('one', from, { side }), terminal('other', to, { side })] as const;
      });
      return {
        ...identity,
        values: { kind: 'transformer', ratio: set.load.transformer?.ratio ?? 1 },
        terminals: sides.flat(),
        pieces: sides.map(([a, b]) => ({ id: sideOf(id, a.side ?? 'primary'), terminals: [a.id, b.id] })),
      };
    }
    case 'load': {
      const [from, to] = endsOf(list, list, all);
      const ends = [terminal('one', from), terminal('other', to)];
      return {
        ...identity,
        values: { kind: 'load' },
        terminals: ends,
        pieces: [{ id, terminals: [ends[0].id, ends[1].id] }],
      };
    }
    default:
  }
  if (first.kind === 'inductor') return coilPartOf(set, identity, list, all, joint);
  if (first.kind === 'capacitor')
    return between({ kind: 'capacitor', capacitance: first.capacitance }, ['one', 'other']);
  const resistance = first.kind === 'resistor' && typeof first.resistance === 'number' ? first.resistance : Number.NaN;
  return between({ kind: 'resistor', resistance }, ['one', 'other']);
}

function tuningPart(
  set: SetDescription,
  { role }: PartIdentity,
  e: TwoTerminal,
  between: (values: PartValues, is: readonly [TerminalIs, TerminalIs]) => Part | undefined,
): Part | undefined {
  const { arrangement } = set;
  const own = role === 'aerial-tuning' && arrangement.kind === 'two circuits' ? arrangement.aerialTuning : undefined;
  const tuning = own ?? set.tuning;
  return tuning.kind === 'fixed'
    ? between({ kind: 'capacitor', capacitance: e.kind === 'capacitor' ? e.capacitance : Number.NaN }, ['one', 'other'])
    : between({ kind: 'variable', tuning }, ['fixed', 'moving']);
}

/** Turns closer than this are one tap. */
const SAME_TURN = 0.02;

/** A coil whole again with its taps, from the stretches that the circuit cuts it into. */
function coilPartOf(
  set: SetDescription,
  identity: PartIdentity,
  list: readonly TwoTerminal[],
  all: readonly TwoTerminal[],
  joint: (node: string) => JointId,
): Part | undefined {
  const { id } = identity;
  const windings = list
    .filter((e) => e.kind === 'inductor')
    .map((e) => ({ e, turns: e.owner.turns ?? ([0, 1] as const) }))
    .sort((a, b) => a.turns[0] - b.turns[0]);
  const last = windings[windings.length - 1].turns[1];
  const contacts = all.filter((e) => e.owner.role === 'contact');
  const sliding = contacts.find((e) => e.owner.part === id)?.to;
  const tapped = contacts.find((e) => e.owner.part === PART.detector)?.to;
  const marks = new Map<number, string>();
  for (const { e, turns } of windings) {
    if (!marks.has(turns[0])) marks.set(turns[0], e.to);
    marks.set(turns[1], e.from);
  }
  const isAt = (turn: number, node: string): TerminalIs => {
    if (turn === 0) return 'start';
    if (Math.abs(turn - last) < SAME_TURN) return 'end';
    return node === sliding && node !== tapped ? 'slider' : 'tap';
  };
  const terminals = [...marks].map(
    ([turn, node]): Terminal => ({
      id: terminalId(id, turnsInId(turn)),
      is: isAt(turn, node),
      joint: joint(node),
      turn,
    }),
  );
  const joints = new Set(terminals.map((t) => t.joint));
  if (joints.size === 1) return undefined;
  const end = (turn: number) => terminals.find((t) => t.turn === turn)!.id;
  const [whole] = windings;
  return {
    ...identity,
    values: {
      kind: 'coil',
      coil: describedCoil(set, identity),
      turns: last,
      inductance: whole.e.kind === 'inductor' ? whole.e.inductance : Number.NaN,
    },
    terminals,
    pieces: windings.map(({ e, turns }) => ({ id: e.id, terminals: [end(turns[1]), end(turns[0])] })),
  };
}

const trapOf = (
  { arrangement }: SetDescription,
  { index = 0 }: Pick<PartIdentity, 'index'>,
): TrapDescription | undefined => aerialLead(arrangement).traps[index];

function describedCoil(set: SetDescription, { role, index }: PartIdentity): number | undefined {
  if (role === 'trap-coil') {
    const { coil } = trapOf(set, { index }) ?? {};
    return coil === undefined ? undefined : coilIndex(set, coil);
  }
  if (role === 'tuning-coil' || role === 'aerial-coil' || role === 'rotor') return index;
  if (role !== 'listed' || set.arrangement.kind !== 'elements' || index === undefined) return undefined;
  const entry = set.arrangement.elements[index];
  return entry.kind === 'coil' ? coilIndex(set, entry.coil) : undefined;
}

/** The two nodes by which elements that are one thing hang on the rest, in the order in which they come. */
function endsOf(
  side: readonly TwoTerminal[],
  own: readonly TwoTerminal[],
  all: readonly TwoTerminal[],
): readonly [string, string] {
  const outside = new Set([EARTH, AERIAL, OUT, ...all.filter((e) => !own.includes(e)).flatMap((e) => [e.from, e.to])]);
  const nodes = [...new Set(side.flatMap((e) => [e.from, e.to]))].filter((n) => outside.has(n));
  return [nodes[0], nodes[1] ?? nodes[0]];
}

function couplingsOf(
  { arrangement }: SetDescription,
  { elements }: Circuit,
  identities: ReadonlyMap<PartId, PartIdentity>,
): Coupling[] {
  const partOfElement = new Map(elements.flatMap((e) => (e.kind === 'mutual' ? [] : [[e.id, e.owner.part] as const])));
  const couplings: Coupling[] = [];
  for (const e of elements) {
    if (e.kind !== 'mutual') continue;
    const [a, b] = [partOfElement.get(e.first)!, partOfElement.get(e.second)!];
    if (a === b) continue;
    if (couplings.some(({ between }) => between.includes(a) && between.includes(b))) continue;
    const isPlaced = arrangement.kind === 'coupled' || arrangement.kind === 'two circuits';
    const placing =
      isPlaced && [a, b].every((id) => identities.get(id)?.role !== 'trap-coil') ? arrangement : undefined;
    couplings.push({
      between: [a, b],
      k: placing && knownCoupling(placing),
      distance: placing?.distance,
      tilt: placing?.tilt,
    });
  }
  return couplings;
}
