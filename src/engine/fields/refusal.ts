import type { BaseIssue } from 'valibot';
import type { RecordProblem } from '../facts/record-problems.ts';
import type { TouchstoneProblem } from '../facts/touchstone-problems.ts';
import type { Coded, NoFigures } from '../units/coded.ts';
import {
  type GivenValue,
  type QuantityExpectations,
  type QuantityHints,
  type RefusalOf,
  refusalIn,
  refuseWith,
} from '../units/refusal.ts';

/** What a list is of. */
export type ListOf =
  | 'corners'
  | 'impedance-points'
  | 'traps'
  | 'elements'
  | 'detector-points'
  | 'scale-points'
  | 'coils'
  | 'sections'
  | 'stations'
  | 'rows'
  | 'scenes'
  | 'bands'
  | 'wants'
  | 'assumed'
  | 'kept'
  | 'readings'
  | 'correlations'
  | 'formers'
  | 'reels'
  | 'capacitors'
  | 'sheets'
  | 'detectors'
  | 'loads'
  | 'transformers'
  | 'switches'
  | 'aerials'
  | 'earths'
  | 'arrangements';

/** What would be accepted where something else stands. Figures SI. */
export interface Expectations extends QuantityExpectations {
  readonly number: { readonly min: number; readonly max: number };
  readonly 'one-of': { readonly options: readonly string[] };
  /** One of a few words, or an object with these keys. */
  readonly 'one-of-or-object': { readonly options: readonly string[]; readonly keys: readonly string[] };
  /** The key that chooses a kind. */
  readonly kind: { readonly key: string; readonly options: readonly string[] };
  readonly 'object-with': { readonly key: string };
  readonly object: NoFigures;
  readonly literal: { readonly value: string };
  readonly value: NoFigures;
  readonly 'another-value': NoFigures;
  readonly 'any-list': NoFigures;
  readonly list: { readonly of: ListOf };
  readonly 'list.at-least': { readonly of: ListOf; readonly count: number };
  readonly 'list.at-most': { readonly of: ListOf; readonly count: number };
  /** A list longer than the schema allows; it is named by its path. */
  readonly 'items.at-most': { readonly count: number };
  readonly 'items.at-least': { readonly count: number };
  /** A list of plain numbers where no keys are given. */
  readonly 'list-of': { readonly keys: readonly string[] };
  readonly 'object-of': { readonly keys: readonly string[] };
  /** Two figures of which the first is the smaller. */
  readonly rising: { readonly lower: string; readonly upper: string };
  readonly 'finite-number': NoFigures;
  readonly text: NoFigures;
  readonly 'text.at-most': { readonly characters: number };
  readonly 'a-name': NoFigures;
  readonly 'true-or-false': NoFigures;
  readonly 'rising-scale': NoFigures;
  readonly 'rising-voltages': NoFigures;
  readonly 'touchstone-file': NoFigures;
  readonly 'network-file': NoFigures;
  readonly 'record-file': NoFigures;
  readonly 'field-or-power': NoFigures;
  readonly 'scene-content': NoFigures;
}

/** A way out of a refusal by a field. */
export interface FieldHints extends QuantityHints {
  readonly 'did-you-mean': { readonly option: string };
  readonly 'write-wire': NoFigures;
  /** Problems of a file kept as text. */
  readonly 'touchstone-problems': { readonly problems: readonly TouchstoneProblem[] };
  readonly 'touchstone-empty': NoFigures;
  readonly 'record-problems': { readonly problems: readonly RecordProblem[] };
}

export type Refusal = RefusalOf<Coded<Expectations>, Coded<FieldHints>, Coded<GivenValue>>;

/**
 * A message of a schema of a description that keeps its facts; `refusalOf` gives them back from the issue.
 * @param why what was expected, the whole refusal, or how it is made from the issue
 * @returns the message, to be given to a schema
 */
export const refuse = <I extends BaseIssue<unknown>>(
  why: Coded<Expectations> | Refusal | ((issue: I) => Refusal),
): ((issue: I) => string) =>
  refuseWith<Refusal, I>(typeof why === 'function' ? why : 'code' in why ? { expected: why } : why);

/**
 * The refusal that an issue keeps: every schema of a description refuses by `refuse`.
 * @param issue of valibot
 * @returns what was expected and a hint, as codes; undefined where the schema gives none
 */
export const refusalOf = (issue: object): Refusal | undefined => refusalIn(issue) as Refusal | undefined;
