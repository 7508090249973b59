import {
  joinStations,
  MOST_STATIONS,
  readStationTable,
  type TableQuestion,
  type TableReading,
  type WrittenStation,
} from '../../engine/index.ts';
import { refusalSentence, textOfFile } from '../state/text-of-file.ts';

/** A table as typed, as pasted or in a file. */
export interface TableSourceQuestion extends Omit<TableQuestion, 'text'> {
  readonly source: string | Blob;
}

/** @throws Error for a file that is not text. */
export async function readTable({ source, ...question }: TableSourceQuestion): Promise<TableReading> {
  if (typeof source === 'string') return readStationTable({ ...question, text: source });
  const found = await textOfFile(source);
  if (found.text === undefined) throw new Error(refusalSentence(found));
  return readStationTable({ ...question, text: found.text });
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
