import { AERIAL, OUT } from '../../src/engine/kinds/arrangements/assembly.ts';
import type { Circuit, Element } from '../../src/engine/network/elements.ts';
import { EARTH } from '../../src/engine/network/elements.ts';
import { type ElementRole, type Owner, sideOf } from '../../src/engine/network/ids.ts';
import { PART } from '../../src/engine/network/part-ids.ts';
import { type Diagram, onWire } from '../../src/outputs/drawings/circuit/diagram.ts';
import type { Point } from '../../src/outputs/scene/scene.ts';

/** A symbol's terminals by the nets that they are on. */
export interface Connection {
  /** Of the symbol, or of what it stands for in the circuit. */
  readonly id: string;
  /** Which end is which matters: a detector, a cell. */
  readonly polar: boolean;
  readonly nets: readonly number[];
}

const POLAR = new Set(['diode', 'valve', 'cell', 'amplifier']);
const same = (a: Point, b: Point): boolean => Math.abs(a[0] - b[0]) < 0.01 && Math.abs(a[1] - b[1]) < 0.01;

/**
 * What is joined to what, read from the lines alone as a person would: wires that end on one another are joined, wires
 * that cross are not, and the names of nodes are not looked at.
 */
function connectionsOf(diagram: Diagram): Connection[] {
  const { wires, symbols } = diagram;
  const parent: number[] = [];
  const find = (i: number): number => {
    let k = i;
    while (parent[k] !== k) k = parent[k] = parent[parent[k]];
    return k;
  };
  const join = (a: number, b: number): void => {
    parent[find(a)] = find(b);
  };
  const terminals = symbols.flatMap((s) => s.terminals.map((t) => t.at));
  for (let i = 0; i < wires.length + terminals.length; i++) parent.push(i);
  const ends = wires.map((w) => [w.points[0], w.points[w.points.length - 1]]);
  wires.forEach((wire, i) => {
    ends.forEach((pair, j) => {
      if (i !== j && pair.some((p) => onWire(p, wire))) join(i, j);
    });
    terminals.forEach((p, k) => {
      if (onWire(p, wire)) join(i, wires.length + k);
    });
  });
  terminals.forEach((p, k) => {
    for (let l = 0; l < k; l++) if (same(p, terminals[l])) join(wires.length + k, wires.length + l);
  });
  // A drawn dot joins what passes through it.
  for (const dot of diagram.dots) {
    const through = wires.flatMap((w, i) => (onWire(dot, w) ? [i] : []));
    for (const i of through.slice(1)) join(through[0], i);
  }
  let k = 0;
  return symbols
    .map((s) => ({
      id: s.id,
      polar: POLAR.has(s.kind),
      nets: s.terminals.map(() => find(wires.length + k++)),
    }))
    .filter((c) => c.nets.length > 0);
}

type TwoTerminal = Exclude<Element, { kind: 'mutual' }>;

/** Strays of the model are no parts, and the cord passes a little even where no by-pass is fitted. */
const STRAY = new Set<ElementRole>(['self-capacitance', 'junction-capacitance', 'cord']);

/** A lead or slider; a loop's emf lies in its turns. */
const isWire = ({ role, part }: Owner): boolean => role === 'contact' || (role === 'emf' && part === PART.loop);

/** What one symbol stands for: a stretch of a coil by itself, one side of a transformer, otherwise a whole part. */
function symbolOf({ id, owner: { part, role } }: TwoTerminal): string {
  if (role === 'winding') return id;
  if (role === 'primary' || role === 'secondary') return sideOf(part, role);
  // Field, aerial and earth are one way for the signal.
  return part === PART.earth ? PART.aerial : part;
}

/** The connections of a circuit as the engine solves it, its strays left out and models of one part taken together. */
export function connectionsIn(circuit: Circuit): { connections: Connection[]; couplings: [string, string][] } {
  const merged = new Map<string, string>();
  const node = (n: string): string => {
    let k = n;
    while (merged.has(k)) k = merged.get(k)!;
    return k;
  };
  const elements = circuit.elements.filter((e): e is TwoTerminal => e.kind !== 'mutual');
  for (const e of elements) {
    const [a, b] = [node(e.from), node(e.to)];
    if (!isWire(e.owner) || a === b) continue;
    if (a === EARTH) merged.set(b, a);
    else merged.set(a, b);
  }
  const groups = new Map<string, TwoTerminal[]>();
  for (const e of elements) {
    if (isWire(e.owner) || STRAY.has(e.owner.role)) continue;
    const symbol = symbolOf(e);
    groups.set(symbol, [...(groups.get(symbol) ?? []), e]);
  }
  const numbers = new Map<string, number>();
  const number = (n: string): number => {
    const key = node(n);
    if (!numbers.has(key)) numbers.set(key, numbers.size);
    return numbers.get(key)!;
  };
  // The set's own terminals count even where nothing is joined to them.
  const terminals = new Set([EARTH, AERIAL, OUT].map(node));
  const touched = (n: string, besides: string): boolean =>
    terminals.has(n) ||
    [...groups].some(([id, list]) => id !== besides && list.some((e) => node(e.from) === n || node(e.to) === n));
  const connections: Connection[] = [];
  for (const [id, list] of groups) {
    const first = list[0];
    const polar = first.kind === 'detector' || first.kind === 'cell';
    let ends =
      list.length === 1
        ? [first.from, first.to]
        : [...new Set(list.flatMap((e) => [node(e.from), node(e.to)]))].filter((n) => touched(n, id));
    if (list.length > 1 && ends.length === 1) ends = [ends[0], ends[0]];
    if (polar || node(ends[0]) !== node(ends[1])) connections.push({ id, polar, nets: ends.map(number) });
  }
  const coils = new Map(elements.map((e) => [e.id, e.owner.role === 'winding' ? e.owner.part : symbolOf(e)]));
  const couplings: [string, string][] = [];
  for (const e of circuit.elements) {
    if (e.kind !== 'mutual') continue;
    const pair: [string, string] = [coils.get(e.first) ?? e.first, coils.get(e.second) ?? e.second];
    if (pair[0] !== pair[1] && !couplings.some((c) => isSamePair(c, pair))) couplings.push(pair);
  }
  return { connections, couplings };
}

type Pair = readonly [string, string];
const isSamePair = (a: Pair, b: Pair): boolean => (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);

/** Every net by what hangs on it: two lists are equal when the circuits are. */
function signature(connections: readonly Connection[]): string[] {
  const nets = new Map<number, string[]>();
  for (const c of connections)
    c.nets.forEach((net, end) => {
      nets.set(net, [...(nets.get(net) ?? []), c.polar ? `${c.id} (${end === 0 ? 'from' : 'to'})` : c.id]);
    });
  return [...nets.values()].map((list) => list.sort().join(' + ')).sort();
}

/**
 * What a diagram's lines and a circuit do not agree on, in sentences; empty when the diagram shows exactly the circuit.
 * Aerial and earth are one way for the signal: their two symbols count as the ends of it.
 */
export function disagreements(diagram: Diagram, circuit: Circuit): string[] {
  const drawn = connectionsOf(diagram).map((c) => (c.id === PART.load ? { ...c, polar: false } : c));
  const [up, down] = [PART.aerial, PART.earth].map((id) => drawn.find((c) => c.id === id));
  const joined = drawn.filter((c) => c !== up && c !== down);
  if (up && down) joined.push({ id: PART.aerial, polar: false, nets: [up.nets[0], down.nets[0]] });
  const wanted = connectionsIn(circuit);
  const [a, b] = [signature(joined.filter((c) => c.polar || c.nets[0] !== c.nets[1])), signature(wanted.connections)];
  const sentences: string[] = [];
  for (const net of a) if (!b.includes(net)) sentences.push(`The diagram joins ${net}; the circuit does not.`);
  for (const net of b) if (!a.includes(net)) sentences.push(`The circuit joins ${net}; the diagram does not.`);
  const couplings = diagram.couplings
    .map((c): Pair => [c.first, c.second])
    .filter(([first, second]) => first !== second);
  const listed = (pairs: readonly Pair[]): string => pairs.map((pair) => pair.join(' with ')).join(', ') || 'nothing';
  const lacks = (some: readonly Pair[], others: readonly Pair[]): boolean =>
    some.some((pair) => !others.some((other) => isSamePair(pair, other)));
  if (lacks(couplings, wanted.couplings) || lacks(wanted.couplings, couplings))
    sentences.push(`The diagram couples ${listed(couplings)}; the circuit ${listed(wanted.couplings)}.`);
  return sentences;
}
