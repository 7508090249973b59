import {
  type Light,
  type LogAgainstPrediction,
  logAgainstPrediction,
  type ReadLog,
  type ReceivedOnBestBands,
  readLog,
  type SetDescription,
  TableTooLargeError,
} from '../engine/index.ts';
import { clean } from '../outputs/tables/index.ts';
import { logProblemText, tableTooLarge } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';

/**
 * A log against what is predicted for a set. What of it is not taken is said, a line each.
 * @param text of the log's file
 * @param at gives what the set receives by day and by night
 * @throws InputError for a log with too many rows
 */
export function logAgainst(
  set: SetDescription,
  text: string,
  at: (time: Light) => ReceivedOnBestBands,
  io: Io,
): { readonly answer: LogAgainstPrediction; readonly problems: ReadLog['problems']; readonly isEmpty: boolean } {
  const read = readLogText(text);
  const answer = logAgainstPrediction({ day: at('day'), night: at('night') }, set.place.position, read.entries);
  const problems = [...read.problems, ...answer.problems];
  for (const problem of problems) io.err(`${clean(logProblemText(problem))}\n`);
  return { answer, problems, isEmpty: read.entries.length === 0 };
}

function readLogText(text: string): ReadLog {
  try {
    return readLog(text);
  } catch (error) {
    if (error instanceof TableTooLargeError) throw new InputError(tableTooLarge(error.fact));
    throw error;
  }
}
