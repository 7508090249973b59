import { type LogCells, readLog, withinLogSize, writeLog } from '../../../engine/index.ts';

const rowsOf = (text: string | undefined): readonly LogCells[] =>
  text === undefined ? [] : readLog(text).entries.map(({ cells }) => cells);

/** What both logs hold, each entry once. @throws TableTooLargeError for more than a log may have */
export function joinedLogs(here: string | undefined, other: string): string {
  const rows = new Map([...rowsOf(here), ...rowsOf(other)].map((cells) => [writeLog([cells]), cells]));
  return writeLog([...rows.values()]);
}

/** The line of an entry, as `writeLog` writes it. */
const lineOf = (cells: LogCells): string => writeLog([cells]).slice(writeLog([]).length);

/** A log with one more entry. @throws TableTooLargeError for more than a log may have */
export function withEntry(text: string | undefined, cells: LogCells): string {
  return withinLogSize((text ?? writeLog([])) + lineOf(cells));
}

/** A log without one of its entries, the latest of those alike. */
export function withoutEntry(text: string | undefined, cells: LogCells): string {
  const line = lineOf(cells);
  const at = text?.lastIndexOf(`\n${line}`) ?? -1;
  return text === undefined || at < 0 ? (text ?? '') : text.slice(0, at + 1) + text.slice(at + 1 + line.length);
}
