import { fewOfEach } from '../numerics/few-of-each.ts';
import { checkStations } from '../place/stations/check.ts';
import type { ColumnGuess } from '../place/stations/columns.ts';
import { openStationTable, stationsFromTable } from '../place/stations/import.ts';
import type { Delimiter, TextTable } from '../place/stations/table.ts';
import { MOST_STATIONS, type StationDescription } from './place.ts';
import { type WrittenStation, writeStation } from './written-stations.ts';

export interface TableQuestion {
  readonly about: 'table';
  readonly text: string;
  readonly delimiter?: Delimiter;
  /** As corrected by the person; guessed when left out. */
  readonly columns?: readonly ColumnGuess[];
  readonly hasHeader?: boolean;
}

/** What a table of text would give. */
export interface TableReading {
  readonly delimiter: Delimiter;
  readonly columns: readonly ColumnGuess[];
  readonly hasHeader: boolean;
  /** The first rows, heading included. */
  readonly preview: TextTable;
  /** Only those a description can hold, at most as many as it holds: one that it refuses would hold up the whole set. */
  readonly stations: readonly WrittenStation[];
  /** Rows after the last station that a description can hold; they are not looked at. */
  readonly leftOut: number;
  /** Whole sentences, with the row they are about; the first few of each kind, and how many others there are. */
  readonly problems: readonly string[];
}

const PREVIEW_ROWS = 5;

/**
 * A table of text → stations as a description holds them. A row that a description would refuse is left out and named;
 * so is a cell, where the row will do without it. Work and answer grow no faster than the text.
 * @throws RangeError for text that is too long.
 */
export function readStationTable({ text, delimiter, columns, hasHeader }: TableQuestion): TableReading {
  const opened = openStationTable(text, delimiter);
  const taken = columns ?? opened.columns;
  const headed = hasHeader ?? opened.hasHeader;
  const table = stationsFromTable(opened.rows, taken, headed);
  const problems = fewOfEach<string>();
  for (const { row, column, kind, message, isLeftOut } of table.problems)
    problems.add(kind, () => sentence(row, isLeftOut, message, column));
  const written: WrittenStation[] = [];
  const read: StationDescription[] = [];
  const rowOf: number[] = [];
  let last = 0;
  let leftOut = 0;
  for (const [index, station] of table.stations.entries()) {
    const row = table.rowOf[index];
    if (written.length === MOST_STATIONS) {
      leftOut++;
      problems.add('too many', () => sentence(row, true, `A description holds at most ${MOST_STATIONS} stations.`));
      continue;
    }
    const made = writeStation(station);
    for (const { kind, message } of made.problems) problems.add(kind, () => sentence(row, !made.read, message));
    if (!made.read) continue;
    written.push(made.written);
    read.push(made.read);
    rowOf.push(row);
    last = index;
  }
  const kept = new Set(rowOf);
  const checked = table.stations.slice(0, last + 1).filter((_, index) => kept.has(table.rowOf[index]));
  for (const { index, kind, message } of checkStations(checked, { numbers: rowOf }))
    problems.add(kind, () => sentence(rowOf[index], false, message));
  return {
    delimiter: opened.delimiter,
    columns: taken,
    hasHeader: headed,
    preview: opened.rows.slice(0, PREVIEW_ROWS + (headed ? 1 : 0)),
    stations: written,
    leftOut,
    problems: problems.all().map(({ item, more }) => (more > 0 ? `${item} And ${more} more of the same kind.` : item)),
  };
}

const sentence = (row: number, isLeftOut: boolean | undefined, message: string, column?: string): string =>
  `Row ${row}${column ? `, ${column},` : ''}${isLeftOut ? ' is left out' : ''}: ${message}`.replace(',:', ':');
