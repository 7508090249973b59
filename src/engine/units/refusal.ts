import type { BaseIssue } from 'valibot';
import { brief } from './brief.ts';
import type { Coded, NoFigures } from './coded.ts';
import type { Gauge } from './gauge.ts';
import type { QuantityKind } from './quantity-kind.ts';

/** What a quantity is of, and least and greatest of the sizes usual in its field, SI; left out where no field is known. */
export interface QuantityOfField {
  readonly kind: QuantityKind;
  readonly usual?: readonly [number, number];
}

/** What would be accepted in place of a quantity or a number. Figures SI. */
export interface QuantityExpectations {
  readonly quantity: QuantityOfField;
  readonly 'quantity.at-least': { readonly kind: QuantityKind; readonly min: number };
  readonly 'quantity.above': { readonly kind: QuantityKind; readonly above: number };
  readonly 'quantity.at-most': { readonly kind: QuantityKind; readonly max: number };
  /** 0, or at least so large. */
  readonly 'quantity.not-tiny': { readonly kind: QuantityKind; readonly least: number };
  readonly 'whole-number': { readonly min: number; readonly max: number };
  readonly 'at-least': { readonly min: number };
  readonly 'at-most': { readonly max: number };
}

/** Why a text is no number. */
export interface NumberHints {
  readonly 'too-long': NoFigures;
  readonly 'not-finite': NoFigures;
  /** So small that it would be read as 0. */
  readonly 'too-small': NoFigures;
  /** Separators that can be read in two ways or in none. */
  readonly 'number-unclear': { readonly number: string };
  /** One comma and three digits after it. */
  readonly 'thousand-or-fraction': { readonly number: string; readonly whole: string; readonly fraction: string };
}

/** Why a text is no quantity of a kind, and what to write instead. */
export interface QuantityHints extends NumberHints {
  readonly 'write-example': QuantityOfField;
  readonly empty: NoFigures;
  readonly 'gauge-is-a-length': QuantityOfField & { readonly gauge: Gauge };
  readonly 'gauge-range': { readonly gauge: Gauge };
  readonly 'begin-with-number': QuantityOfField;
  readonly 'too-large-or-small': NoFigures;
  readonly 'add-a-unit': QuantityOfField;
  /** The unit that makes a usual size of the number. */
  readonly 'add-this-unit': { readonly number: string; readonly unit: string };
  /** A unit that people mean in two ways. */
  readonly 'unit-unclear': {
    readonly number: string;
    readonly unit: string;
    readonly units: readonly [string, string];
  };
  readonly 'unit-of-another-kind': QuantityOfField & { readonly unit: string; readonly other: QuantityKind };
  readonly 'unit-not-known': QuantityOfField & { readonly unit: string };
}

export type NumberHint = Coded<NumberHints>;
export type QuantityHint = Coded<QuantityHints>;

/** What was given: the start of it as JSON. */
export interface GivenValue {
  readonly nothing: NoFigures;
  readonly value: { readonly json: string };
}

/**
 * A value as it was given, short enough for a sentence.
 * @param value anything, of any size
 * @returns its code, and the value as JSON, cut off
 */
export const givenValue = (value: unknown): Coded<GivenValue> =>
  value === undefined ? { code: 'nothing' } : { code: 'value', json: brief(value) };

/** Why a schema refuses a value, as facts. */
export interface RefusalOf<Expected, Hint, Given = Coded<GivenValue>> {
  /** What would be accepted. */
  readonly expected: Expected;
  /** Left out: the value itself. */
  readonly given?: Given;
  /** A way out; left out where what is expected says it all. */
  readonly hint?: Hint;
}

export type QuantityRefusal = RefusalOf<Coded<QuantityExpectations>, QuantityHint>;

interface Fact {
  readonly code: string;
}
type AnyRefusal = RefusalOf<Fact, Fact, Fact>;

const REFUSAL = Symbol('refusal');

/**
 * A message of a schema that keeps its facts: `refusalIn` gives them back from the issue. The message itself is the code
 * of what was expected.
 * @param why the refusal of every value, or made from the issue.
 * @returns the message, to be given to a schema
 */
export const refuseWith =
  <R extends AnyRefusal, I extends BaseIssue<unknown>>(why: R | ((issue: I) => R)) =>
  (issue: I): string => {
    const refusal = typeof why === 'function' ? why(issue) : why;
    Object.assign(issue, { [REFUSAL]: refusal });
    return refusal.expected.code;
  };

/**
 * The refusal that an issue keeps.
 * @param issue of valibot
 * @returns what was expected, as facts; undefined where the schema gives none
 */
export const refusalIn = (issue: object): AnyRefusal | undefined => (issue as { [REFUSAL]?: AnyRefusal })[REFUSAL];
