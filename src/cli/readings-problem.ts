import type { ReadingsProblem } from '../engine/index.ts';
import { measureAnswer, problemSentence, unfitText } from '../outputs/words/index.ts';

/** What is wrong with a file of readings, in one sentence with its line where it has one. */
export function readingsProblem(problem: ReadingsProblem): string {
  const sentence = 'unfit' in problem ? `${problem.path}: ${unfitText(problem.unfit)}` : problemSentence(problem);
  return problem.line === undefined ? sentence : measureAnswer.problemLine(problem.line, sentence);
}
