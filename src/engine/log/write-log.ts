import { writeTable } from '../place/stations/text-table.ts';
import { LOG_COLUMNS, type LogCells, type LogEntry } from './entry.ts';

/**
 * A log as text for a file: the columns of the log with a heading, commas between the cells (RFC 4180).
 * @param entries rows as written, or entries as read
 * @returns text that `readLog` reads as the same entries; columns that mean nothing to a log are left out
 */
export function writeLog(entries: readonly (LogCells | LogEntry)[]): string {
  const rows = entries.map((entry) => ('cells' in entry ? entry.cells : entry) as LogCells);
  return writeTable([LOG_COLUMNS, ...rows.map((row) => LOG_COLUMNS.map((column) => row[column] ?? ''))]);
}
