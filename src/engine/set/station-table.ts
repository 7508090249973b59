import { fewOfEach } from '../numerics/few-of-each.ts';
import { checkStations, type StationDoubt } from '../place/stations/check.ts';
import type { ColumnGuess } from '../place/stations/columns.ts';
import { openStationTable, stationsFromTable } from '../place/stations/import.ts';
import type { TableProblem } from '../place/stations/table-problems.ts';
import type { Delimiter, TextTable } from '../place/stations/text-table.ts';
import { MOST_STATIONS, type StationDescription } from './place.ts';
import { type WrittenProblem, type WrittenStation, writeStation } from './written-stations.ts';

/** A table of stations to be read. */
export interface TableQuestion {
  readonly about: 'table';
  readonly text: string;
  readonly delimiter?: Delimiter;
  /** As corrected by the person; guessed when left out. */
  readonly columns?: readonly ColumnGuess[];
  readonly hasHeader?: boolean;
}

/** Something about a row of a table. */
export interface RowProblem {
  /** From 1, heading counted. */
  readonly row: number;
  readonly column?: TableProblem['column'];
  /** The whole row is left out for it. */
  readonly isLeftOut: boolean;
  readonly about:
    | { readonly of: 'cell'; readonly fact: TableProblem['fact'] }
    | { readonly of: 'written'; readonly name: string; readonly fact: WrittenProblem['fact'] }
    | { readonly of: 'doubt'; readonly name: string; readonly fact: StationDoubt['fact'] }
    | { readonly of: 'too-many'; readonly most: number };
  /** How many others of its kind are not listed. */
  readonly more: number;
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
  /** The first few of each kind. */
  readonly problems: readonly RowProblem[];
}

const PREVIEW_ROWS = 5;

/**
 * A table of text → stations as a description holds them. A row that a description would refuse is left out and named;
 * so is a cell, where the row will do without it. Work and answer grow no faster than the text.
 * @param options the text, what separates columns, and what each column is, where known
 * @returns the stations, what the columns were taken for, and what was left out
 * @throws TableTooLargeError
 */
export function readStationTable({ text, delimiter, columns, hasHeader }: TableQuestion): TableReading {
  const opened = openStationTable(text, delimiter);
  const meanings = columns ?? opened.columns;
  const header = hasHeader ?? opened.hasHeader;
  const table = stationsFromTable(opened.rows, meanings, header);
  const problems = fewOfEach<Omit<RowProblem, 'more'>>();
  for (const { row, column, kind, fact, isLeftOut = false } of table.problems)
    problems.add(kind, () => ({ row, column, isLeftOut, about: { of: 'cell', fact } }));
  const written: WrittenStation[] = [];
  const read: StationDescription[] = [];
  const rowOf: number[] = [];
  let last = 0;
  let leftOut = 0;
  for (const [index, station] of table.stations.entries()) {
    const row = table.rowOf[index];
    if (written.length === MOST_STATIONS) {
      leftOut++;
      problems.add('too-many', () => ({ row, isLeftOut: true, about: { of: 'too-many', most: MOST_STATIONS } }));
      continue;
    }
    const entry = writeStation(station);
    for (const { kind, name, fact } of entry.problems)
      problems.add(kind, () => ({ row, isLeftOut: !entry.read, about: { of: 'written', name, fact } }));
    if (!entry.read) continue;
    written.push(entry.written);
    read.push(entry.read);
    rowOf.push(row);
    last = index;
  }
  const rows = new Set(rowOf);
  const checked = table.stations.slice(0, last + 1).filter((_, index) => rows.has(table.rowOf[index]));
  for (const { index, name, kind, fact } of checkStations(checked, { numbers: rowOf }))
    problems.add(kind, () => ({ row: rowOf[index], isLeftOut: false, about: { of: 'doubt', name, fact } }));
  return {
    delimiter: opened.delimiter,
    columns: meanings,
    hasHeader: header,
    preview: opened.rows.slice(0, PREVIEW_ROWS + (header ? 1 : 0)),
    stations: written,
    leftOut,
    problems: problems.all().map(({ item, more }) => ({ ...item, more })),
  };
}
