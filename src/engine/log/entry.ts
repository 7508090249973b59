import type { Loudness } from '../reception/path/types.ts';
import type { Coded, NoFigures } from '../units/coded.ts';
import type { Degrees, Hertz, Ohms } from '../units/quantities.ts';
import type { QuantityHint } from '../units/refusal.ts';

/** How a station was heard, as whoever listened judged it. */
export type HeardAs = Loudness | 'masked';

/** Loudest first. */
export const HEARD: readonly HeardAs[] = ['loud', 'comfortable', 'quiet', 'faint', 'not heard', 'masked'];

/** The columns of a log that mean something; others are not read, and not written again. */
export const LOG_COLUMNS = [
  'time',
  'station',
  'frequency',
  'pointer',
  'heard',
  'shunt',
  'conditions',
  'spot',
  'remark',
] as const;
export type LogColumn = (typeof LOG_COLUMNS)[number];

/** A row as written, by its columns. */
export type LogCells = Readonly<Partial<Record<LogColumn, string>>>;

/** One thing heard, or not heard though it was sought. */
export interface LogEntry {
  /** As written. */
  readonly cells: LogCells;
  /** Of the table, from 1, heading counted and empty rows not. */
  readonly row: number;
  readonly time: Date;
  /** Of the clock that the time was written by, 0 to 23. */
  readonly localHour: number;
  readonly heard: HeardAs;
  /** By name, as written; undefined for an unknown one. */
  readonly station?: string;
  readonly frequency?: Hertz;
  /** Where the pointer stood. */
  readonly pointer?: Degrees;
  /** Across the phones when the station was just audible. */
  readonly shunt?: Ohms;
  readonly conditions?: string;
  readonly spot?: string;
  readonly remark?: string;
}

/** Why a row or a cell of a log is not taken. */
export interface LogProblemFacts {
  readonly 'no-column': { readonly column: LogColumn };
  readonly 'no-time': NoFigures;
  readonly 'time-without-zone': NoFigures;
  readonly 'not-heard-word': NoFigures;
  readonly 'not-a-quantity': { readonly hint: QuantityHint };
  readonly 'below-zero': NoFigures;
  /** Neither a station, nor a frequency, nor a pointer. */
  readonly 'heard-what': NoFigures;
  /** No station of the place has this name or frequency. */
  readonly 'unknown-station': NoFigures;
}

/** Something about a row of a log. */
export interface LogProblem {
  readonly row: number;
  readonly column?: LogColumn;
  readonly given?: string;
  readonly fact: Coded<LogProblemFacts>;
  /** The row is left out for it. */
  readonly isLeftOut: boolean;
  /** How many others of its kind are not listed. */
  readonly more: number;
}
