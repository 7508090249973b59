import type { Coded, NoFigures } from '../units/coded.ts';

/** What is wrong with a table of samples; rows are lines of the file, from 1. */
export interface RecordProblemFacts {
  readonly 'no-rows': { readonly least: number };
  readonly 'too-large': NoFigures;
  readonly 'two-numbers': { readonly row: number; readonly given: string };
  readonly 'time-not-even': { readonly row: number };
  /** Samples are counted, and no heading says how far apart they are. */
  readonly 'no-time': { readonly row: number };
}

export type RecordProblem = Coded<RecordProblemFacts>;
