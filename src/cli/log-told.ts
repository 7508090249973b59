import { type ReadLog, readLog, TableTooLargeError } from '../engine/index.ts';
import { clean } from '../outputs/tables/index.ts';
import { logProblemText, tableTooLarge } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';

/** A log as read. @throws InputError for one with too many rows. */
export function readLogText(text: string): ReadLog {
  try {
    return readLog(text);
  } catch (error) {
    if (error instanceof TableTooLargeError) throw new InputError(tableTooLarge(error.fact));
    throw error;
  }
}

/** Says what of a log is not taken, a line each. */
export function tellLogProblems(problems: ReadLog['problems'], io: Io): void {
  for (const problem of problems) io.err(`${clean(logProblemText(problem))}\n`);
}
