import { callProblems } from '../outputs/words/index.ts';

/** Everything that is wrong with a file, a line each under its name. @param problems one or more sentences. */
export const problemsOfFile = (file: string, problems: readonly string[]): string =>
  `${callProblems.inFile(file, problems.length)}\n${problems.map((one) => `  ${one}`).join('\n')}`;
