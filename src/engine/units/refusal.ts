import type { BaseIssue } from 'valibot';

/** Why a schema refuses a value, part by part. */
export interface Refusal {
  /** What would be accepted, as "a length of at least 20 µm". */
  readonly expected: string;
  /** What was given, shortened; left out: the value itself. */
  readonly received?: string;
  /** A way out; left out where the expected says it all. */
  readonly hint?: string;
}

const REFUSAL = Symbol('refusal');

/**
 * A message of a schema that keeps its parts: `refusalOf` gives them back from the issue.
 * @param why the refusal of every value, or made from the issue.
 */
export const refuse =
  <I extends BaseIssue<unknown>>(why: string | Refusal | ((issue: I) => Refusal)) =>
  (issue: I): string => {
    const refusal = typeof why === 'function' ? why(issue) : typeof why === 'string' ? { expected: why } : why;
    Object.assign(issue, { [REFUSAL]: refusal });
    const { expected, received, hint } = refusal;
    return `expected ${expected}${received === undefined ? '' : `, received ${received}`}${hint ? `: ${hint}` : ''}`;
  };

/** The parts of a refusal, where the issue comes from a schema that gives them. */
export const refusalOf = (issue: object): Refusal | undefined => (issue as { [REFUSAL]?: Refusal })[REFUSAL];
