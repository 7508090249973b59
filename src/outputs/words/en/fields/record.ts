import type { RecordProblem, RecordProblemFacts } from '../../../../engine/facts/record-problems.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const PROBLEMS: SentencesFor<RecordProblemFacts> = {
  'no-rows': ({ least }) => `expected at least ${least} rows of two numbers`,
  'too-large': () => 'the table is too large: keep the part after the edge',
  'two-numbers': ({ row, given }) => `row ${row}: expected a time and a voltage, got "${given}"`,
  'time-not-even': ({ row }) => `row ${row}: expected times that rise by equal steps`,
};

/** "row 3: expected a time and a voltage, got …". */
export const recordProblem = (problem: RecordProblem): string =>
  (PROBLEMS[problem.code] as (figures: RecordProblem) => string)(problem);
