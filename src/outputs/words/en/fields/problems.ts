import type { Problem } from '../../../../engine/fields/problem.ts';
import type { ReadNote } from '../../../../engine/set/read.ts';
import { counted } from '../grammar.ts';
import { expectedText, type NameOf } from './expected.ts';
import { givenText } from './given.ts';
import { hintText } from './hints.ts';

/** One thing wrong with a description, in phrases for the columns of a table. */
export interface ProblemText {
  /** Where, as the file has it; "" for the whole file. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  readonly hint: string;
}

const others = (more: number): string => `and ${more} more of the same kind`;

const hintOf = ({ hint, more = 0 }: Problem, nameOf: NameOf): string => {
  const text = hint ? hintText(hint, nameOf) : '';
  if (more === 0) return text;
  return text === '' ? others(more) : `${text}; ${others(more)}`;
};

/** @param nameOf what a place of the description is called; as the file has it if left out. */
export const problemText = (problem: Problem, nameOf: NameOf = (path) => path): ProblemText => ({
  path: problem.path,
  expected: expectedText(problem.expected, nameOf),
  received: problem.given ? givenText(problem.given) : '',
  hint: hintOf(problem, nameOf),
});

/**
 * "expected …, got … (…)", for where the place stands by itself.
 * @param problem one problem of a description
 * @returns one line of text
 */
export function problemMessage(problem: Problem): string {
  const { expected, received, hint } = problemText(problem);
  return `expected ${expected}${received ? `, got ${received}` : ''}${hint ? ` (${hint})` : ''}`;
}

/**
 * "coils[0].turns: expected …, got … (…)".
 * @param problem one problem of a description
 * @returns one line of text
 */
export const problemSentence = (problem: Problem): string =>
  `${problem.path || 'the file'}: ${problemMessage(problem)}`;

/** Something to look at in a description that is right. */
export function readNote(note: ReadNote): string {
  switch (note.code) {
    case 'unknown-key':
      return note.near === undefined
        ? `${note.path} is not known here and is kept as it is`
        : `${note.path} is not known here and is kept as it is; did you mean "${note.near}"?`;
    case 'assumed-nowhere':
      return `assumed: "${note.path}" names nothing in this description`;
    case 'correlation-nowhere':
      return `correlations: "${note.path}" is no measured figure of this description that goes with another`;
    case 'more-unknown-keys':
      return `${counted(note.count, 'more key is', 'more keys are')} not known here and kept as written`;
  }
}
