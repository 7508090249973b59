import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { AERIAL } from '../../../engine/kinds/arrangements/assembly.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { Circuit, Element } from '../../../engine/network/elements.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { type Connection, connectionsIn } from '../../drawings/circuit/nets.ts';
import { printable } from '../pages/words.ts';

export type PartKind =
  | 'aerial terminal'
  | 'earth terminal'
  | 'coil'
  | 'loop'
  | 'variable'
  | 'capacitor'
  | 'resistor'
  | 'detector'
  | 'cell'
  | 'transformer'
  | 'outputs';

/** Something on the board that wires are joined to. */
export interface BoardPart {
  /** "L1", "C2"; terminals and outputs are "A", "E", "P". */
  readonly tag: string;
  readonly kind: PartKind;
  /** "coil “main”, 56 turns". */
  readonly words: string;
  /** As a wiring list calls them: "L1 start". */
  readonly terminals: readonly string[];
  /** The circuit's elements that it stands for, by the terminals each lies between. */
  readonly pieces: readonly {
    readonly name: string;
    readonly polar: boolean;
    readonly terminals: readonly [string, string];
  }[];
  /** Net of each terminal, as the circuit has it. */
  readonly nets: readonly number[];
  readonly coil?: CoilDescription;
  readonly tuning?: TuningDescription;
  readonly inductance?: number;
  /** Name in the circuit, for couplings. */
  readonly key: string;
}

export interface BoardParts {
  readonly parts: readonly BoardPart[];
  /** Pairs of tags whose coils must reach each other. */
  readonly couplings: readonly (readonly [string, string])[];
  readonly circuit: Circuit;
}

type TwoEnded = Exclude<Element, { kind: 'mutual' }>;

const SECTION = /^(.*), turns ([\d.]+)–([\d.]+)$/;
const LISTED = /^arrangement\.elements\.(\d+)$/;

/** A set's circuit as parts with terminals: coils whole again with their taps, aerial and earth as two terminals. */
export function boardParts(set: SetDescription): BoardParts {
  const circuit = setCircuit(set).assembly.circuitAt(0.5);
  const { connections, couplings } = connectionsIn(circuit);
  const byName = new Map<string, TwoEnded>();
  for (const e of circuit.elements)
    if (e.kind !== 'mutual') {
      byName.set(e.name, e);
      if (e.part && LISTED.test(e.part) && !e.name.endsWith('’s own capacitance')) byName.set(e.part, e);
    }
  const numbers = new Map<string, number>();
  const tag = (letter: string): string => {
    const n = (numbers.get(letter) ?? 0) + 1;
    numbers.set(letter, n);
    return `${letter}${n}`;
  };
  const parts: BoardPart[] = [];
  const coils = new Map<
    string,
    { name: string; part: string | undefined; pieces: { c: Connection; from: number; to: number }[] }
  >();
  const ordered = [...connections].sort((a, b) => rank(a.name, byName) - rank(b.name, byName));
  for (const c of ordered) {
    const e = byName.get(c.name);
    if (e?.kind === 'inductor' && !c.name.startsWith('phones')) {
      const cut = SECTION.exec(c.name);
      const name = cut ? cut[1] : c.name;
      const turns = coilOf(set, e.part)?.turns ?? 1;
      const list = coils.get(name) ?? { name, part: e.part, pieces: [] };
      list.pieces.push({ c, from: cut ? Number(cut[2]) : 0, to: cut ? Number(cut[3]) : turns });
      coils.set(name, list);
    }
  }
  const two = (
    letter: string,
    kind: PartKind,
    c: Connection,
    words: string,
    ends: readonly [string, string],
    more = {},
  ): void => {
    const t = tag(letter);
    const terminals = [`${t} ${ends[0]}`, `${t} ${ends[1]}`] as const;
    parts.push({
      tag: t,
      kind,
      words,
      terminals,
      pieces: [{ name: c.name, polar: c.polar, terminals }],
      nets: c.nets,
      key: c.name,
      ...more,
    });
  };
  const aerial = ordered.find((c) => c.name === 'aerial');
  if (aerial) {
    const pieces = [{ name: 'aerial', polar: false, terminals: ['A', 'E'] as [string, string] }];
    // The lead-in and the earth lead end at two terminals; outside, field and ground join them.
    const [up, down] = aerialNets(aerial, circuit);
    parts.push(
      {
        tag: 'A',
        kind: 'aerial terminal',
        words: 'aerial terminal',
        terminals: ['A'],
        pieces,
        nets: [up],
        key: 'aerial',
      },
      {
        tag: 'E',
        kind: 'earth terminal',
        words: 'earth terminal',
        terminals: ['E'],
        pieces: [],
        nets: [down],
        key: 'earth',
      },
    );
  }
  for (const { name, part, pieces } of coils.values()) {
    const t = tag('L');
    const described = coilOf(set, part);
    const last = described?.turns ?? pieces[pieces.length - 1].to;
    pieces.sort((p, q) => p.from - q.from);
    const terminal = (turn: number): string => `${t} ${turnWords(set, turn, last)}`;
    const nets = new Map<string, number>();
    for (const { c, from, to } of pieces) {
      nets.set(terminal(from), c.nets[1]);
      nets.set(terminal(to), c.nets[0]);
    }
    const names = [...nets.keys()];
    parts.push({
      tag: t,
      kind: part === 'aerial' ? 'loop' : 'coil',
      words: coilWordsOf(set, name, part, byName.get(pieces[0].c.name)),
      terminals: names,
      pieces: pieces.map(({ c, from, to }) => ({
        name: c.name,
        polar: false,
        terminals: [terminal(to), terminal(from)],
      })),
      nets: names.map((n) => nets.get(n)!),
      coil: described?.coil,
      inductance: inductanceOf(byName.get(pieces[0].c.name)),
      key: pieces.length > 1 || SECTION.test(pieces[0].c.name) ? name : pieces[0].c.name,
    });
  }
  for (const c of ordered) {
    if (c.name === 'aerial' || (byName.get(c.name)?.kind === 'inductor' && !c.name.startsWith('phones'))) continue;
    if (c.name === 'phones') {
      parts.push({
        tag: 'P',
        kind: 'outputs',
        words: set.load.kind === 'amplifier' ? 'amplifier terminals (P2: the braid)' : 'terminals for the phones',
        terminals: ['P1', 'P2'],
        pieces: [{ name: c.name, polar: false, terminals: ['P1', 'P2'] }],
        nets: c.nets,
        key: c.name,
      });
      continue;
    }
    if (c.name === 'phones transformer primary' || c.name === 'phones transformer secondary') continue;
    const e = byName.get(c.name);
    const said = printable(wordsOf(c.name, e));
    switch (e?.kind) {
      case 'detector':
        two('D', 'detector', c, `${said}${detectorKind(set)}`, ['anode', 'cathode']);
        break;
      case 'cell':
        // `to` is the positive end.
        two('B', 'cell', c, `${said}, ${formatQuantity(e.voltage, 'voltage')}`, ['minus', 'plus']);
        break;
      case 'capacitor': {
        const tuned = e.part === 'tuning' || e.part === 'arrangement.aerialTuning';
        if (tuned) {
          const tuning = tuningOf(set, e.part);
          const fixed = tuning?.kind === 'fixed';
          two(
            'C',
            fixed ? 'capacitor' : 'variable',
            c,
            fixed ? `${said}, ${formatQuantity(e.capacitance, 'capacitance')}` : said,
            fixed
              ? ['one end', 'other end']
              : tuning?.kind === 'vanes' || tuning?.kind === 'variable' || tuning?.kind === 'measured'
                ? ['fixed vanes', 'moving vanes']
                : ['fixed side', 'moving side'],
            { tuning },
          );
        } else
          two('C', 'capacitor', c, `${said}, ${formatQuantity(e.capacitance, 'capacitance')}`, [
            'one end',
            'other end',
          ]);
        break;
      }
      default: {
        const ohms =
          e?.kind === 'resistor' && typeof e.resistance === 'number'
            ? `, ${formatQuantity(e.resistance, 'resistance')}`
            : '';
        two('R', 'resistor', c, `${said}${ohms}`, ['one end', 'other end']);
      }
    }
  }
  const [primary, secondary] = ['primary', 'secondary'].map((w) =>
    ordered.find((c) => c.name === `phones transformer ${w}`),
  );
  if (primary || secondary) {
    const t = tag('T');
    const sides = [primary && ([primary, 'primary'] as const), secondary && ([secondary, 'secondary'] as const)].filter(
      (s) => s !== undefined,
    );
    const pieces = sides.map(([c, w]) => ({
      name: c.name,
      polar: false,
      terminals: [`${t} ${w} one end`, `${t} ${w} other end`] as [string, string],
    }));
    parts.push({
      tag: t,
      kind: 'transformer',
      words: `transformer, ${formatNumber(set.load.transformer?.ratio ?? 1, 3)} to 1`,
      terminals: pieces.flatMap((p) => p.terminals),
      pieces,
      nets: sides.flatMap(([c]) => c.nets),
      key: 'phones transformer primary',
    });
  }
  const byKey = new Map(parts.map((p) => [p.key, p.tag]));
  const pairs = couplings.flatMap((pair): [string, string][] => {
    const [a, b] = pair.split(' ~ ').map((k) => byKey.get(k));
    return a && b && a !== b ? [[a, b]] : [];
  });
  return { parts, couplings: pairs, circuit };
}

/** Tags in the order in which a builder meets the parts: from the aerial to the phones. */
function rank(name: string, byName: ReadonlyMap<string, TwoEnded>): number {
  const e = byName.get(name);
  if (e?.part === 'tuning') return -2;
  if (e?.part === 'arrangement.aerialTuning') return -1;
  if (name === 'detector') return -1;
  return 0;
}

/** Which net is the lead-in's and which is earth's. */
function aerialNets(c: Connection, circuit: Circuit): readonly [number, number] {
  // connectionsIn numbers nets as it meets them; the aerial's own chain begins at earth or ends at "aerial".
  const chain = circuit.elements.filter(
    (e): e is TwoEnded => e.kind !== 'mutual' && (e.part === 'aerial' || e.part === 'earth'),
  );
  const first = [...new Set(chain.flatMap((e) => [e.from, e.to]))].find((n) => n === AERIAL || n === 'earth');
  return first === AERIAL ? [c.nets[0], c.nets[1]] : [c.nets[1], c.nets[0]];
}

function coilOf(set: SetDescription, part: string | undefined): { turns: number; coil?: CoilDescription } | undefined {
  if (part === undefined) return undefined;
  if (part === 'aerial') return 'turns' in set.aerial ? { turns: set.aerial.turns as number } : undefined;
  const listed = LISTED.exec(part);
  const entry = listed && set.arrangement.kind === 'elements' ? set.arrangement.elements[Number(listed[1])] : undefined;
  const coil =
    entry?.kind === 'coil'
      ? set.coils.find((c) => c.name === entry.coil)
      : part.startsWith('coils.')
        ? set.coils[Number(part.slice(6))]
        : undefined;
  return coil && { turns: coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns, coil };
}

const tuningOf = (set: SetDescription, part: string | undefined): TuningDescription | undefined =>
  part === 'arrangement.aerialTuning' && set.arrangement.kind === 'two circuits'
    ? (set.arrangement.aerialTuning ?? set.tuning)
    : set.tuning;

function turnWords(set: SetDescription, turn: number, last: number): string {
  if (turn === 0) return 'start';
  if (Math.abs(turn - last) < 0.02) return 'end';
  const a = set.arrangement;
  if (a.kind === 'slider') {
    const fixed = a.detectorTap;
    if (fixed === undefined || Math.abs(turn - fixed) > 0.02) return 'slider';
  }
  return `tap ${formatNumber(turn, 4)}`;
}

function coilWordsOf(set: SetDescription, name: string, part: string | undefined, e: TwoEnded | undefined): string {
  const described = coilOf(set, part);
  if (part === 'aerial') return name === 'rod' ? 'ferrite rod' : 'frame aerial';
  if (described?.coil) return `coil “${printable(described.coil.name)}”`;
  const value = inductanceOf(e);
  return `${printable(wordsOf(name, e))}${value === undefined ? '' : `, ${formatQuantity(value, 'inductance')}`}`;
}

const inductanceOf = (e: TwoEnded | undefined): number | undefined =>
  e?.kind === 'inductor' ? e.inductance : undefined;

const wordsOf = (key: string, e: TwoEnded | undefined): string =>
  (e?.name ?? key).replace(/^phones /, '').replace(/^listed /, '');

const detectorKind = (set: SetDescription): string =>
  set.detector.kind === 'galena' || set.detector.kind === 'valve' ? `, ${set.detector.kind}` : '';
