import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import { builtSet } from '../src/engine/built/built-set.ts';
import { setCircuit } from '../src/engine/built/set-circuit.ts';
import { receive } from '../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../src/engine/set/description.ts';
import { readText, readValue } from '../src/engine/set/read.ts';
import { stationDraw } from '../src/engine/uncertainty/field-draws.ts';
import { uncertaintyOf } from '../src/engine/uncertainty/uncertainty.ts';
import { wavePlaces } from '../src/engine/waves/wave-places.ts';
import { circuitDiagram, drawCircuit } from '../src/outputs/drawings/index.ts';
import { boardLayout } from '../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../src/outputs/sheets/board/parts.ts';
import { lineText, netsOf, wiringOf } from '../src/outputs/sheets/board/wiring.ts';
import { faultsOf } from '../src/outputs/sheets/pages/faults.ts';
import { partsList } from '../src/outputs/sheets/pages/parts-list.ts';
import { pathTable } from '../src/outputs/tables/path-table.ts';
import { wiringDisagreements } from './sheets/board-checks.ts';
import { BASE, SETS } from './support/every-arrangement.ts';
import { disagreements } from './support/nets.ts';
import { someSet } from './support/random-sets.ts';
import { nameable, type Renaming, renamed } from './support/renamed.ts';

/** Names that the engine, the drawings or the language use themselves, or that tear a careless text apart. */
const HOSTILE = [
  'phones coil',
  'trap',
  'C1',
  'turns 0–11',
  'aerial ',
  'field',
  '🎧',
  'tuning',
  'coil:0',
  '__proto__',
  'by-pass, 1 nF',
  'trap 1 coil',
  'x, turns 3–9',
  'biased',
  'turn 11',
  'top',
  'detector',
  'series',
  'joint:a',
  'R1, any',
  'a ~ b',
  'pump',
  'toString',
  'load in',
].map((name) => name.trim());

/** Names that occur in no text of the tool: what is said of them can be put under any other name. */
function plainNames(set: SetDescription): Renaming {
  const { coils, listed, nodes } = nameable(set);
  return {
    coil: (name) => `Qc${coils.indexOf(name)}q`,
    listed: (name) => `Qe${listed.indexOf(name)}q`,
    node: (name) => `Qn${nodes.indexOf(name)}q`,
    station: (index) => `Qs${index}q`,
    set: 'Qsetq',
  };
}

/** One renaming for each turn of the list: every name gets another hostile one. */
function hostile(set: SetDescription, turn: number): Renaming {
  const { coils, listed, nodes } = nameable(set);
  const of =
    (names: readonly string[], shift: number) =>
    (name: string): string =>
      HOSTILE[(turn + shift + 7 * names.indexOf(name)) % HOSTILE.length];
  return {
    coil: of(coils, 0),
    listed: of(listed, 3),
    // Three nodes are given; anything else may be a node's name.
    node: (name) => {
      const other = of(nodes, 5)(name);
      return other === 'aerial' ? 'aerial’s' : other;
    },
    station: (index) => `${HOSTILE[(turn + 11 + 7 * index) % HOSTILE.length]}`,
    set: HOSTILE[(turn + 13) % HOSTILE.length],
  };
}

/** Everything that is said and computed of a set, but for where words stand, which depends on how wide they are. */
function everything(set: SetDescription): unknown {
  const parts = boardParts(set);
  const wiring = wiringOf(netsOf(parts));
  const reception = receive(set);
  const layout = boardLayout(set, parts);
  const diagram = circuitDiagram(set);
  const built = builtSet(set);
  return {
    reception,
    path: reception.stations.map((s) => pathTable(s, 2000)),
    board: parts.parts.map(({ tag, kind, words, terminals, ends }) => ({ tag, kind, words, terminals, ends })),
    built: [...built.parts.values()].map(({ displayName: _, ...part }) => part),
    couplings: parts.couplings,
    wires: wiring.lines.map(lineText),
    notes: wiring.lines.map((l) => l.use),
    free: wiring.free,
    placed: layout.placed.map(({ at, turn, part }) => [part.tag, at, turn]),
    lengths: layout.lengths,
    list: partsList(set, reception, parts, layout),
    faults: faultsOf(set),
    symbols: diagram.symbols.map(({ kind, id, part, at, name, words, terminals }) => ({
      kind,
      id,
      part,
      at,
      name,
      words,
      nodes: terminals.map((t) => t.node),
    })),
    drawnCouplings: diagram.couplings.map(({ first, second, words }) => [first, second, words]),
    inWords: drawCircuit(set).description,
    places: wavePlaces(setCircuit(set)),
  };
}

/** The same with every name in every text put for another. */
function translated(value: unknown, names: readonly (readonly [string, string])[]): unknown {
  if (typeof value === 'string') return names.reduce((text, [from, to]) => text.replaceAll(from, () => to), value);
  if (Array.isArray(value)) return value.map((v) => translated(v, names));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, v]) => [key, translated(v, names)]));
  return value;
}

function expectAlike(set: SetDescription, turns: readonly number[]): void {
  const { coils, listed, nodes, stations } = nameable(set);
  const from = plainNames(set);
  const plain = everything(renamed(set, from));
  for (const turn of turns) {
    const to = hostile(set, turn);
    const names = [
      ...coils.map((n) => [from.coil(n), to.coil(n)] as const),
      ...listed.map((n) => [from.listed(n), to.listed(n)] as const),
      ...nodes.map((n) => [from.node(n), to.node(n)] as const),
      ...Array.from({ length: stations }, (_, i) => [from.station(i), to.station(i)] as const),
      [from.set, to.set] as const,
    ];
    const other = renamed(set, to);
    expect(translated(everything(other), []), `${turn}: ${names.map(([, n]) => n).join(' | ')}`).toEqual(
      translated(plain, names),
    );
    expect(disagreements(circuitDiagram(other), setCircuit(other).assembly.circuitAt(0.5))).toEqual([]);
    const board = boardParts(other);
    expect(wiringDisagreements(wiringOf(netsOf(board)).lines.map(lineText), board)).toEqual([]);
  }
}

const turnsFrom = (first: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => (first + 5 * i) % HOSTILE.length);

describe('a name is only a name: under any other, nothing but the name changes', () => {
  const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));
  test.each(examples)('example %s', (file) => {
    const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    expectAlike(read.set, turnsFrom(examples.indexOf(file), 3));
  });

  const names = Object.keys(SETS);
  test.each(names)('%s', (name) => {
    const read = readValue({ ...BASE, ...SETS[name] });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expectAlike(read.set, turnsFrom(names.indexOf(name), 4));
  });

  test('nor do the medians and ranges of any station, though all stations have one name', () => {
    const stations = [603, 909].map((kHz) => ({
      name: '',
      frequency: `${kHz} kHz`,
      power: '50 kW',
      distance: '40 km',
    }));
    const place = (name: (i: number) => string) => ({
      name: 'Somewhere',
      stations: stations.map((s, i) => ({ ...s, name: name(i) })),
    });
    const figures = (arrangement: string, name: (i: number) => string) => {
      const read = readValue({ ...BASE, ...SETS[arrangement], place: place(name) });
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return uncertaintyOf(setCircuit(read.set)).map(
        (figure) => figure && { ...figure, disturbances: figure.disturbances.map((one) => ({ ...one, by: '' })) },
      );
    };
    for (const arrangement of ['traps', 'two-circuits', 'ferrite-rod', 'elements']) {
      const plain = figures(arrangement, (i) => `Qs${i}q`);
      expect(plain.every(Boolean), arrangement).toBe(true);
      expect(
        figures(arrangement, () => 'field'),
        arrangement,
      ).toEqual(plain);
    }
  });

  test('stations on one frequency are drawn apart', () => {
    const read = readText(readFileSync(inRoot('examples', 'slider-set.json'), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    const [first] = read.set.place.stations;
    const set = { ...read.set, place: { ...read.set.place, stations: [first, first, { ...first, name: 'C1' }] } };
    const names = [0, 2].map((i) => stationDraw(set.place.stations, set.place.stations[i]));
    expect(new Set(names).size).toBe(2);
  });

  test('sets by chance', () => {
    let seen = 0;
    fc.assert(
      fc.property(someSet, fc.nat(HOSTILE.length - 1), (set, turn) => {
        if (!set) return;
        seen++;
        expectAlike(set, [turn]);
      }),
      { numRuns: 40, seed: 21 },
    );
    expect(seen).toBeGreaterThan(20);
  });
});
