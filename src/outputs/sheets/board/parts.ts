import { type BuiltSet, builtSet, type Coupling, type Part, type Terminal } from '../../../engine/built/built-set.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { PartId } from '../../../engine/network/ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { partWords, terminalWords } from '../../words/index.ts';

export type PartKind =
  | 'switch'
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
export interface BoardPart extends Pick<Part, 'id'> {
  readonly role: Part['role'] | 'band-switch';
  /** None of a switch. */
  readonly values?: Part['values'];
  /** "L1", "C2"; terminals and outputs are "A", "E", "P". */
  readonly tag: string;
  readonly kind: PartKind;
  /** "coil “main”, 56 turns". */
  readonly words: string;
  /** As a wiring list calls them: "L1 start". */
  readonly terminals: readonly string[];
  /** The same as the set has them, one for one. */
  readonly ends: readonly Terminal[];
  /** As they are marked at the part, one for one: "start". */
  readonly marks: readonly string[];
  /** Of a part of one band's aerial lead or trap, which a band switch puts in: the band's name. */
  readonly band?: string;
  readonly coil?: CoilDescription;
  readonly tuning?: TuningDescription;
  /** None of a switch. */
  readonly part?: Part;
}

export interface BoardParts {
  readonly parts: readonly BoardPart[];
  /** Pairs of tags whose coils must reach each other. */
  readonly couplings: readonly (readonly [string, string])[];
  /** The same with how they stand, one for one. Distance m, tilt °. */
  readonly standing: readonly CoupledTags[];
  readonly built: BuiltSet;
}

/** Two coils that reach each other, by their tags. */
interface CoupledTags extends Pick<Coupling, 'distance' | 'tilt'> {
  readonly first: string;
  readonly second: string;
}

/** A set's parts as they stand on a board: with tags, and names for their terminals. */
export function boardParts(set: SetDescription): BoardParts {
  const built = builtSet(set);
  const numbers = new Map<string, number>();
  const tagFor = (kind: PartKind): string => {
    const letter = TAG_LETTERS[kind];
    if (kind === 'aerial terminal' || kind === 'earth terminal' || kind === 'outputs') return letter;
    const n = (numbers.get(letter) ?? 0) + 1;
    numbers.set(letter, n);
    return `${letter}${n}`;
  };
  const parts = [...built.parts.values()].map((part): BoardPart => {
    const kind = kindOf(part);
    const tag = tagFor(kind);
    const { id, role, values, terminals } = part;
    const marks = terminals.map((t, i) => (kind === 'outputs' ? `${tag}${i + 1}` : terminalWords(t, part)));
    const isPost = kind === 'aerial terminal' || kind === 'earth terminal';
    return {
      id,
      role,
      values,
      tag,
      kind,
      words: partWords(part, set),
      terminals: marks.map((mark) => (isPost ? tag : kind === 'outputs' ? mark : `${tag} ${mark}`)),
      ends: terminals,
      marks,
      coil: values.kind === 'coil' && values.coil !== undefined ? set.coils[values.coil] : undefined,
      tuning: values.kind === 'variable' ? values.tuning : undefined,
      part,
    };
  });
  const tagOf = new Map<PartId, string>(parts.map((p) => [p.id, p.tag]));
  const standing = built.couplings.flatMap(({ between: [a, b], distance, tilt }): CoupledTags[] => {
    const [first, second] = [tagOf.get(a), tagOf.get(b)];
    return first && second ? [{ first, second, distance, tilt }] : [];
  });
  const couplings = standing.map(({ first, second }) => [first, second] as const);
  return { parts, couplings, standing, built };
}

/** What a part's tag begins with. */
export const TAG_LETTERS: Record<PartKind, string> = {
  switch: 'S',
  'aerial terminal': 'A',
  'earth terminal': 'E',
  coil: 'L',
  loop: 'L',
  variable: 'C',
  capacitor: 'C',
  resistor: 'R',
  detector: 'D',
  cell: 'B',
  transformer: 'T',
  outputs: 'P',
};

function kindOf({ values, role }: Part): PartKind {
  switch (values.kind) {
    case 'outdoors':
      return role === 'earth' ? 'earth terminal' : 'aerial terminal';
    case 'coil':
      return role === 'frame' || role === 'rod' ? 'loop' : 'coil';
    case 'load':
      return 'outputs';
    default:
      return values.kind;
  }
}
