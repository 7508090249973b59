import {
  type ListeningCalendar,
  type LogAgainstPrediction,
  type LogEntry,
  type LogProblem,
  listeningCalendar,
  logAgainstPrediction,
  readLog,
  receiveOnBestBands,
  type SetDescription,
  TableTooLargeError,
} from '../../../engine/index.ts';
import { errorText, tableTooLarge } from '../../../outputs/words/index.ts';
import { joinedLogs } from '../../state/shelf/log-text.ts';
import { coastFor } from '../../workers/coast.ts';
import type { Reply } from '../../workers/latest.ts';
import { type LogColumns, logColumnsOf } from './log-columns.ts';

/** Beside what was predicted; or with the entries of another table added. */
export interface LogQuestion {
  readonly set: SetDescription;
  readonly log: string;
  readonly added?: string;
  /** As many of the latest entries are shown. */
  readonly most: number;
}

export interface LogAnswer {
  /** As it was asked about. */
  readonly before: string;
  /** With the entries that were to be added. */
  readonly log: string;
  readonly added?: string;
  readonly beside: Omit<LogAgainstPrediction, 'entries'>;
  /** How many entries there are. */
  readonly count: number;
  readonly latest: readonly LogEntry[];
  readonly columns: LogColumns;
  readonly nights: ListeningCalendar['nights'];
  /** What is wrong with the table that was added. */
  readonly addedProblems: readonly LogProblem[];
}

/** A log as it was worked out last: of it any number of entries is shown. */
interface WorkedOut {
  readonly of: Pick<LogQuestion, 'log' | 'added'> & { readonly key: string };
  readonly log: string;
  readonly beside: LogAnswer['beside'];
  readonly entries: LogAgainstPrediction['entries'];
  readonly calendar: ListeningCalendar;
  readonly latestFirst: readonly LogEntry[];
  readonly addedProblems: readonly LogProblem[];
}

let predicted: { readonly key: string; readonly at: Parameters<typeof logAgainstPrediction>[0] } | undefined;

let last: WorkedOut | undefined;

async function workedOut({ set, log: text, added }: Omit<LogQuestion, 'most'>): Promise<WorkedOut> {
  const key = JSON.stringify(set);
  if (last && last.of.key === key && last.of.log === text && last.of.added === added) return last;
  if (predicted?.key !== key) {
    const options = { coast: await coastFor(set.place) };
    const at = (time: 'day' | 'night') => receiveOnBestBands(set, { ...options, time });
    predicted = { key, at: { day: at('day'), night: at('night') } };
  }
  const log = added === undefined ? text : joinedLogs(text || undefined, added);
  const { entries, ...beside } = logAgainstPrediction(predicted.at, set.place.position, readLog(log).entries);
  const calendar = listeningCalendar(entries, set.place.position);
  last = {
    of: { key, log: text, added },
    log,
    beside,
    entries,
    calendar,
    latestFirst: entries.map(({ entry }) => entry).sort((a, b) => b.time.getTime() - a.time.getTime()),
    addedProblems: added === undefined ? [] : readLog(added).problems,
  };
  return last;
}

async function answer({ most, ...question }: LogQuestion): Promise<LogAnswer> {
  const { log, beside, entries, calendar, latestFirst, addedProblems } = await workedOut(question);
  return {
    before: question.log,
    log,
    added: question.added,
    beside,
    count: entries.length,
    latest: latestFirst.slice(0, most),
    // Anew each time: their buffers are handed over.
    columns: logColumnsOf(entries, calendar),
    nights: calendar.nights,
    addedProblems,
  };
}

addEventListener('message', async ({ data }: MessageEvent<LogQuestion>) => {
  let reply: Reply<LogAnswer>;
  try {
    reply = { answer: await answer(data) };
  } catch (error) {
    reply = { error: error instanceof TableTooLargeError ? tableTooLarge(error.fact) : errorText(error) };
  }
  const columns = 'answer' in reply ? Object.values<LogColumns[keyof LogColumns]>({ ...reply.answer.columns }) : [];
  postMessage(reply, { transfer: columns.map(({ buffer }) => buffer) });
});
