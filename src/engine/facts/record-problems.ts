import type { Coded, NoFigures } from '../units/coded.ts';

/** What is wrong with a table of samples; rows are counted from 1, with the headings. */
export interface RecordProblemFacts {
  readonly 'no-rows': { readonly least: number };
  readonly 'too-large': NoFigures;
  readonly 'two-numbers': { readonly row: number; readonly given: string };
  readonly 'time-not-even': { readonly row: number };
}

export type RecordProblem = Coded<RecordProblemFacts>;
