import type { RecordProblem, RecordProblemFacts } from '../../../../engine/facts/record-problems.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const PROBLEMS: SentencesFor<RecordProblemFacts> = {
  'no-rows': ({ least }) => `expected at least ${least} rows of two numbers`,
  'too-large': () => 'the table is too large: keep the part after the edge',
  'two-numbers': ({ row, given }) => `line ${row}: expected a time and a voltage, got "${given}"`,
  'time-not-even': ({ row }) => `line ${row}: expected times that rise by equal steps`,
  'no-time': ({ row }) =>
    `line ${row}: samples are counted, but no heading says how far apart they are: expected times, or an interval`,
};

/** "line 3: expected a time and a voltage, got …". */
export const recordProblem = (problem: RecordProblem): string =>
  (PROBLEMS[problem.code] as (figures: RecordProblem) => string)(problem);
