import {
  joinStations,
  MOST_STATIONS,
  readStationTable,
  type TableQuestion,
  type TableReading,
  TableTooLargeError,
  type WrittenStation,
} from '../../engine/index.ts';
import { problemSentence, tableTooLarge } from '../../outputs/words/index.ts';
import { textOfFile } from '../state/text-of-file.ts';

/** A table as typed, as pasted or in a file. */
export interface TableSourceQuestion extends Omit<TableQuestion, 'text'> {
  readonly source: string | Blob;
}

/** @throws Error for a file that is not text. */
export async function readTableSource({ source, ...question }: TableSourceQuestion): Promise<TableReading> {
  if (typeof source === 'string') return tableOf({ ...question, text: source });
  const found = await textOfFile(source);
  if (found.text === undefined) throw new Error(problemSentence(found.problem));
  return tableOf({ ...question, text: found.text });
}

/** @throws Error with what a person is to read of it. */
function tableOf(question: TableQuestion): TableReading {
  try {
    return readStationTable(question);
  } catch (error) {
    throw error instanceof TableTooLargeError ? new Error(tableTooLarge(error.fact)) : error;
  }
}

export interface JoinQuestion {
  readonly about: 'join';
  /** The list as written. */
  readonly list: unknown;
  readonly added: readonly WrittenStation[];
}

export interface Joined {
  /** At most as many as a description holds. */
  readonly stations: readonly unknown[];
  readonly leftOut: number;
}

export function join({ list, added }: JoinQuestion): Joined {
  const joined = joinStations(list, added);
  const most = Math.max(MOST_STATIONS, Array.isArray(list) ? list.length : 0);
  return { stations: joined.slice(0, most), leftOut: Math.max(0, joined.length - most) };
}
