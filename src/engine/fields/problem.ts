import type { ImpossibleReason } from '../facts/impossible-values.ts';
import type { Coded, NoFigures } from '../units/coded.ts';
import type { GivenValue } from '../units/refusal.ts';
import type { Expectations, FieldHints } from './refusal.ts';

/** What a whole description should have been, or what parts should be to each other. Figures SI. */
export interface DescriptionExpectations extends Expectations {
  readonly 'file.at-most': { readonly megabytes: number };
  readonly description: NoFigures;
  readonly box: NoFigures;
  readonly readings: NoFigures;
  readonly 'set-link': NoFigures;
  readonly json: NoFigures;
  readonly 'utf-8': NoFigures;
  readonly 'readable-file': NoFigures;
  readonly 'name-of-its-own': NoFigures;
  readonly 'coil-of-its-own': NoFigures;
  readonly 'trap-coil': NoFigures;
  readonly 'trap-capacitor': NoFigures;
  readonly 'coil-name': { readonly names: readonly string[] };
  /** The first stations of a place, and how many more there are. */
  readonly 'station-name': { readonly names: readonly string[]; readonly more: number };
  readonly 'another-station': NoFigures;
  readonly 'part-or-place': { readonly parts: readonly string[] };
  readonly 'turns.at-most': { readonly turns: number };
  /** A band's own arrangement: only the band that the switch stands on has none. */
  readonly 'band-arrangement': NoFigures;
  readonly 'standing-band': NoFigures;
  readonly 'another-node': NoFigures;
  readonly winding: { readonly another: boolean };
  /** Less than another field says. */
  readonly 'less-than-field': { readonly max: number; readonly field: string };
  readonly 'mutual.less-than': { readonly max: number };
  readonly buildable: NoFigures;
  readonly 'turn-spacing.at-least': { readonly wire: number };
  readonly 'size-for-wire.at-least': { readonly size: number };
  readonly 'posts.at-most': { readonly count: number; readonly circle: number };
}

/** What was given in place of a description, or a size in place of another. */
export interface GivenFacts extends GivenValue {
  readonly 'empty-file': NoFigures;
  readonly megabytes: { readonly size: number };
  readonly 'nested-too-deep': NoFigures;
  readonly 'utf-16-without-mark': NoFigures;
  readonly 'eight-bit-text': { readonly byte: number; readonly line: number };
  readonly capacitance: { readonly value: number };
  readonly length: { readonly value: number };
  readonly frequency: { readonly value: number };
}

/** A way out. */
export interface Hints extends FieldHints {
  readonly 'other-file': NoFigures;
  readonly 'no-set': NoFigures;
  readonly 'start-from-example': NoFigures;
  readonly 'start-from-example-box': NoFigures;
  readonly 'cut-short': NoFigures;
  readonly 'copy-whole-link': NoFigures;
  /** A link that a later version of the tool made. */
  readonly 'link-of-newer-form': NoFigures;
  readonly 'closing-bracket': NoFigures;
  readonly 'not-json': NoFigures;
  readonly 'breaks-at': { readonly line: number; readonly column: number };
  readonly 'save-as-utf-8': NoFigures;
  readonly 'may-have-moved': NoFigures;
  /** What stopped the reading, in the words of the system. */
  readonly 'system-message': { readonly message: string };
  readonly 'leave-others-out': NoFigures;
  readonly missing: NoFigures;
  /** Something like the key that is missing is written there. */
  readonly misspelt: { readonly written: string; readonly key: string };
  /** The item of the same list that has the name already. */
  readonly 'name-taken': { readonly by: string };
  readonly 'name-a-coil': NoFigures;
  readonly 'add-a-coil': NoFigures;
  readonly 'station-or-frequency': NoFigures;
  readonly 'not-on-mains': NoFigures;
  readonly 'places-of-parts': NoFigures;
  readonly 'second-coil': { readonly taken: string };
  readonly 'taps-from-earth': NoFigures;
  readonly 'switch-stands-once': NoFigures;
  readonly 'switch-changes': NoFigures;
  readonly 'frame-tunes': NoFigures;
  readonly 'rod-tunes': NoFigures;
  readonly 'loop-is-coil': NoFigures;
  readonly 'full-wave-needs-centre': NoFigures;
  readonly 'both-ends-on-one-node': NoFigures;
  readonly 'mutual-between-two': NoFigures;
  readonly 'lower-or-raise': { readonly field: string };
  readonly 'coupling-too-close': NoFigures;
  readonly 'close-or-thinner': NoFigures;
  readonly 'thinner-or-wider': NoFigures;
  readonly 'fewer-or-larger': NoFigures;
  readonly unbuildable: { readonly reason: ImpossibleReason };
}

export type Expected = Coded<DescriptionExpectations>;
export type Given = Coded<GivenFacts>;
export type Hint = Coded<Hints>;

/** One thing wrong with a description, as facts; `outputs/words` makes the sentence. */
export interface Problem {
  /** Where, as "coils[0].turns"; "" for the whole file. */
  readonly path: string;
  readonly expected: Expected;
  readonly given?: Given;
  readonly hint?: Hint;
  /** How many others of its kind are not listed. */
  readonly more?: number;
}

/** No set nests deeper; walking something far deeper could exhaust the stack. */
const DEEPEST = 100;

/**
 * Whether lists and objects nest beyond all sense. Goes level by level, so that depth cannot hurt it.
 * @param value a parsed file
 * @param deepest how many levels are sensible; default 100
 * @returns true when there are more
 */
export function tooDeep(value: unknown, deepest = DEEPEST): boolean {
  const nested = (x: unknown): x is object => typeof x === 'object' && x !== null;
  let level: object[] = nested(value) ? [value] : [];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest) return true;
    level = level.flatMap((x) => Object.values(x).filter(nested));
  }
  return false;
}
