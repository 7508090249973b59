import { AERIAL, OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import type { Circuit, Element } from '../../../engine/network/elements.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import type { Point } from '../../scene/scene.ts';
import { type Diagram, onWire } from './diagram.ts';

/** A symbol's terminals by the nets that they are on. */
export interface Connection {
  readonly name: string;
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
export function connectionsOf(diagram: Diagram): Connection[] {
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
      name: keyOf(s.name, s.part),
      polar: POLAR.has(s.kind),
      nets: s.terminals.map(() => find(wires.length + k++)),
    }))
    .filter((c) => c.nets.length > 0);
}

/** Elements of the model that are no parts of their own on a diagram. */
const STRAY = /’s (own )?capacitance$/;
const CONTACTS = new Set(['aerial lead', 'detector lead', 'slider']);
const PHONES = new Set(
  [
    'resistance',
    'inductance',
    'iron',
    'cord',
    'coil',
    'crystal',
    'leakage',
    'input resistance',
    'input capacitance',
  ].map((n) => `phones ${n}`),
);
const PRIMARY = new Set(
  [
    'transformer leakage',
    'transformer primary resistance',
    'transformer iron',
    'transformer winding',
    'transformer primary',
  ].map((n) => `phones ${n}`),
);

function symbolFor(e: Exclude<Element, { kind: 'mutual' }>, loop: boolean): string | undefined {
  if (STRAY.test(e.name)) return undefined;
  if (PHONES.has(e.name)) return 'phones';
  if (PRIMARY.has(e.name)) return 'phones transformer primary';
  if (!loop && e.part === 'aerial') return 'aerial';
  if (!loop && e.part === 'earth') return 'aerial';
  return keyOf(e.name, e.part);
}

/** Listed elements are told by their place in the list: the circuit may have had to rename them. */
const keyOf = (name: string, part: string | undefined): string =>
  part?.startsWith('arrangement.elements.') ? part : name;

/** The same of a circuit as the engine solves it, its strays left out and models of one part taken together. */
export function connectionsIn(circuit: Circuit): { connections: Connection[]; couplings: string[] } {
  const loop = !circuit.elements.some((e) => e.kind !== 'mutual' && e.part === 'earth');
  const merged = new Map<string, string>();
  const node = (n: string): string => {
    let k = n;
    while (merged.has(k)) k = merged.get(k)!;
    return k;
  };
  for (const e of circuit.elements) {
    if (e.kind === 'mutual') continue;
    const contact =
      (e.kind === 'resistor' && CONTACTS.has(e.name) && e.part === undefined) || (loop && e.kind === 'source');
    if (contact && node(e.from) !== node(e.to)) {
      const [a, b] = [node(e.from), node(e.to)];
      if (a === EARTH) merged.set(b, a);
      else merged.set(a, b);
    }
  }
  const groups = new Map<string, Exclude<Element, { kind: 'mutual' }>[]>();
  for (const e of circuit.elements) {
    if (e.kind === 'mutual') continue;
    if ((e.kind === 'resistor' && CONTACTS.has(e.name) && e.part === undefined) || (loop && e.kind === 'source'))
      continue;
    // The cord of phones passes a little even where no by-pass is fitted.
    if (e.name === 'by-pass capacitor' && e.kind === 'capacitor' && e.capacitance <= 30.001e-12) continue;
    const name = symbolFor(e, loop);
    if (name === undefined) continue;
    groups.set(name, [...(groups.get(name) ?? []), e]);
  }
  const ids = new Map<string, number>();
  const id = (n: string): number => {
    const key = node(n);
    if (!ids.has(key)) ids.set(key, ids.size);
    return ids.get(key)!;
  };
  // The set's own terminals count even where nothing is joined to them.
  const terminals = new Set([EARTH, AERIAL, OUT].map(node));
  const touched = (n: string, besides: string): boolean =>
    terminals.has(n) ||
    [...groups].some(([name, list]) => name !== besides && list.some((e) => node(e.from) === n || node(e.to) === n));
  const connections: Connection[] = [];
  for (const [name, list] of groups) {
    const first = list[0];
    const polar = first.kind === 'detector' || first.kind === 'cell';
    let ends =
      list.length === 1
        ? [first.from, first.to]
        : [...new Set(list.flatMap((e) => [node(e.from), node(e.to)]))].filter((n) => touched(n, name));
    if (list.length > 1 && ends.length === 1) ends = [ends[0], ends[0]];
    if (polar || node(ends[0]) !== node(ends[1])) connections.push({ name, polar, nets: ends.map(id) });
  }
  const base = (name: string): string => name.replace(/, turns [\d.]+–[\d.]+$/, '');
  const keys = new Map(
    circuit.elements.map((e) => [e.name, keyOf(base(e.name), e.kind === 'mutual' ? undefined : e.part)]),
  );
  const coilKey = (name: string): string => keys.get(name) ?? base(name);
  const couplings = new Set(
    circuit.elements.flatMap((e) =>
      e.kind === 'mutual' && coilKey(e.first) !== coilKey(e.second)
        ? [[coilKey(e.first), coilKey(e.second)].sort().join(' ~ ')]
        : [],
    ),
  );
  return { connections, couplings: [...couplings].sort() };
}

/** Every net by what hangs on it: two lists are equal when the circuits are. */
function signature(connections: readonly Connection[]): string[] {
  const nets = new Map<number, string[]>();
  for (const c of connections)
    c.nets.forEach((net, end) => {
      nets.set(net, [...(nets.get(net) ?? []), c.polar ? `${c.name} (${end === 0 ? 'from' : 'to'})` : c.name]);
    });
  return [...nets.values()].map((list) => list.sort().join(' + ')).sort();
}

/**
 * What a diagram's lines and a circuit do not agree on, in sentences; empty when the diagram shows exactly the circuit.
 * Aerial and earth are one way for the signal: their two symbols count as the ends of it.
 */
export function disagreements(diagram: Diagram, circuit: Circuit): string[] {
  const drawn = connectionsOf(diagram).map((c) => (c.name === 'phones' ? { ...c, polar: false } : c));
  const [up, down] = ['aerial', 'earth'].map((name) => drawn.find((c) => c.name === name));
  const joined = drawn.filter((c) => c !== up && c !== down);
  if (up && down) joined.push({ name: 'aerial', polar: false, nets: [up.nets[0], down.nets[0]] });
  const wanted = connectionsIn(circuit);
  const [a, b] = [signature(joined.filter((c) => c.polar || c.nets[0] !== c.nets[1])), signature(wanted.connections)];
  const sentences: string[] = [];
  for (const net of a) if (!b.includes(net)) sentences.push(`The diagram joins ${net}; the circuit does not.`);
  for (const net of b) if (!a.includes(net)) sentences.push(`The circuit joins ${net}; the diagram does not.`);
  const parts = new Map(diagram.symbols.map((s) => [s.name, keyOf(s.name, s.part)]));
  const drawnKey = (name: string): string => parts.get(name) ?? name;
  const couplings = [
    ...new Set(
      diagram.couplings
        .filter((c) => c.first !== c.second)
        .map((c) => [drawnKey(c.first), drawnKey(c.second)].sort().join(' ~ ')),
    ),
  ].sort();
  if (couplings.join() !== wanted.couplings.join())
    sentences.push(
      `The diagram couples ${couplings.join(', ') || 'nothing'}; the circuit ${wanted.couplings.join(', ') || 'nothing'}.`,
    );
  return sentences;
}
