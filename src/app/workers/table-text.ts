import { checkStations } from '../../engine/place/stations/check.ts';
import type { ColumnGuess } from '../../engine/place/stations/columns.ts';
import { openStationTable, stationsFromTable } from '../../engine/place/stations/import.ts';
import type { Delimiter, TextTable } from '../../engine/place/stations/table.ts';
import { readStations, type WrittenStation, writeStations } from '../../engine/set/written-stations.ts';

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
  /** Only those a description can hold: one that it refuses would hold up the whole set. */
  readonly stations: readonly WrittenStation[];
  /** Whole sentences, with the row they are about. */
  readonly problems: readonly string[];
}

const PREVIEW_ROWS = 5;

/** @throws RangeError for text that is too long. */
export function readTableText({ text, delimiter, columns, hasHeader }: TableQuestion): TableReading {
  const opened = openStationTable(text, delimiter);
  const taken = columns ?? opened.columns;
  const headed = hasHeader ?? opened.hasHeader;
  const { stations, problems, rowOf } = stationsFromTable(opened.rows, taken, headed);
  const { stations: written, problems: doubtful } = writeStations(stations);
  const read = readStations(written);
  const isTaken = (index: number): boolean => read[index] !== undefined;
  const rowWords = (index: number): string => `Row ${rowOf[index]}${isTaken(index) ? '' : ' is left out'}`;
  return {
    delimiter: opened.delimiter,
    columns: taken,
    hasHeader: headed,
    preview: opened.rows.slice(0, PREVIEW_ROWS + (headed ? 1 : 0)),
    stations: written.filter((_, index) => isTaken(index)),
    problems: [
      ...problems.map(({ row, column, message }) => `Row ${row}${column ? `, ${column}` : ''}: ${message}`),
      ...doubtful.map(({ index, message }) => `${rowWords(index)}: ${message}`),
      ...checkStations(stations)
        .filter(({ index }) => isTaken(index))
        .map(({ index, message }) => `${rowWords(index)}: ${message}`),
    ],
  };
}
