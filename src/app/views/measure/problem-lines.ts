import type { ReadingsProblem } from '../../../engine/index.ts';
import { measureAnswer, problemSentence, unfitText } from '../../../outputs/words/index.ts';

/** What is wrong with readings, in one sentence with its place, as the command line says it. */
export function problemLine(problem: ReadingsProblem): string {
  const path = problem.path.replace(/^measurements\[\d+\]\.?/, '');
  const sentence =
    'unfit' in problem ? measureAnswer.unfitAt(path, unfitText(problem.unfit)) : problemSentence({ ...problem, path });
  return problem.line === undefined ? sentence : measureAnswer.problemLine(problem.line, sentence);
}
