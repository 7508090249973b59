import { fewOfEach } from '../numerics/few-of-each.ts';
import { TableTooLargeError } from '../place/stations/table-problems.ts';
import { LONGEST_TABLE, readTable, type TextTable, unguard } from '../place/stations/text-table.ts';
import { brief } from '../units/brief.ts';
import { parseQuantity, type QuantityKind } from '../units/parse.ts';
import {
  HEARD,
  type HeardAs,
  LOG_COLUMNS,
  type LogCells,
  type LogColumn,
  type LogEntry,
  type LogProblem,
} from './entry.ts';

/** A log as read. */
export interface ReadLog {
  readonly entries: readonly LogEntry[];
  /** The first few of each kind. */
  readonly problems: readonly LogProblem[];
}

type Fact = LogProblem['fact'];

/** A moment, with its zone or without (ISO 8601; a space may stand for the T, and before the zone). */
const MOMENT = /^(\d{4}-\d\d-\d\d)[T ](\d\d):(\d\d(?::\d\d(?:\.\d+)?)?) ?(Z|UTC|[+-]\d\d:?\d\d)?$/i;

/** Units that a bare number of a column has. */
const BARE: Partial<Record<LogColumn, { readonly kind: QuantityKind; readonly unit: string }>> = {
  frequency: { kind: 'frequency', unit: 'kHz' },
  pointer: { kind: 'angle', unit: '°' },
  shunt: { kind: 'resistance', unit: 'Ω' },
};

/** Rows with the heading; more than one listener writes in a lifetime. */
const MOST_ENTRIES = 50_000;

/**
 * What is about to be kept as a log is checked, so that it can be read again.
 * @param text of a table
 * @returns the same text
 * @throws TableTooLargeError as `readLog`
 */
export function withinLogSize(text: string): string {
  if (text.length > LONGEST_TABLE) throw new TableTooLargeError({ code: 'too-many-characters', most: LONGEST_TABLE });
  let lines = 1;
  for (let at = 0; at < text.length; at++) if (text[at] === '\n' || text[at] === '\r') lines++;
  // Ends of lines may be part of a cell, or of nothing: where there are many, the rows are counted as they are read.
  if (lines > MOST_ENTRIES && rowsOf(text).length > MOST_ENTRIES)
    throw new TableTooLargeError({ code: 'too-many-rows', most: MOST_ENTRIES });
  return text;
}

/**
 * Read a log: a table with a heading, its columns in any order, of which `time` and `heard` must be there; comma, semicolon
 * or tab between them (RFC 4180). A row that cannot be used is named and left out; so is a cell where the row will do
 * without it. The log itself is never changed.
 * @param text of the file
 * @returns entries in the order of the rows, times as moments, frequencies in hertz, and what was left out and why
 * @throws TableTooLargeError for more than 5 million characters or 50 000 rows.
 */
export function readLog(text: string): ReadLog {
  const [heading = [], ...body] = rowsOf(text);
  const columns = heading.map(columnOf);
  const few = fewOfEach<Omit<LogProblem, 'more'>>();
  for (const column of ['time', 'heard'] as const)
    if (!columns.includes(column))
      few.add(`no-column ${column}`, () => ({ row: 1, column, fact: { code: 'no-column', column }, isLeftOut: true }));
  const entries: LogEntry[] = [];
  if (few.all().length === 0) {
    for (const [i, cells] of body.entries()) {
      const row = i + 2;
      const about: About = (column, fact, isLeftOut, given) =>
        few.add(`${fact.code} ${column ?? ''}`, () => ({ row, column, fact, isLeftOut, given: given && brief(given) }));
      const entry = entryOf(row, rowOf(columns, cells), about);
      if (entry) entries.push(entry);
    }
  }
  return { entries, problems: few.all().map(({ item, more }) => ({ ...item, more })) };
}

const rowsOf = (text: string): TextTable => readTable(text, undefined, MOST_ENTRIES).rows;

const columnOf = (heading: string): LogColumn | undefined => {
  const name = heading.trim().toLowerCase();
  return LOG_COLUMNS.find(
    (column) => name === column || name.startsWith(`${column} [`) || name.startsWith(`${column} (`),
  );
};

function rowOf(columns: readonly (LogColumn | undefined)[], cells: TextTable[number]): LogCells {
  const row: Partial<Record<LogColumn, string>> = {};
  for (const [i, column] of columns.entries()) {
    const cell = unguard(cells[i] ?? '');
    if (column && cell !== '') row[column] ??= cell;
  }
  return row;
}

type About = (column: LogColumn | undefined, fact: Fact, isLeftOut: boolean, given?: string) => void;

function entryOf(row: number, cells: LogCells, about: About): LogEntry | undefined {
  const moment = momentOf(cells.time);
  if (!('time' in moment)) about('time', moment, true, cells.time);
  const heard = heardOf(cells.heard);
  if (!heard) about('heard', { code: 'not-heard-word' }, true, cells.heard);
  const quantity = (column: 'frequency' | 'pointer' | 'shunt'): number | undefined => {
    const text = cells[column];
    const bare = BARE[column];
    if (text === undefined || !bare) return undefined;
    const read = parseQuantity(/^[-+]?[\d.,\s]+$/.test(text) ? `${text} ${bare.unit}` : text, bare.kind);
    if (!read.ok) about(column, { code: 'not-a-quantity', hint: read.hint }, false, text);
    else if (!(read.value >= 0)) about(column, { code: 'below-zero' }, false, text);
    else return read.value;
    return undefined;
  };
  const frequency = quantity('frequency');
  const pointer = quantity('pointer');
  const shunt = quantity('shunt');
  const { station, conditions, spot, remark } = cells;
  const isPlaced = station !== undefined || frequency !== undefined || pointer !== undefined;
  if (!isPlaced) about(undefined, { code: 'heard-what' }, true);
  if (!('time' in moment) || !heard || !isPlaced) return undefined;
  return { cells, row, ...moment, heard, station, frequency, pointer, shunt, conditions, spot, remark };
}

/** A moment, and the hour of the clock that it was written by. */
interface Moment {
  readonly time: Date;
  readonly localHour: number;
}

function momentOf(text = ''): Moment | Fact {
  const [, date, hour, rest, zone] = MOMENT.exec(text) ?? [];
  if (date === undefined) return { code: 'no-time' };
  // It would be the clock of whoever reads it.
  if (zone === undefined) return { code: 'time-without-zone' };
  const time = new Date(`${date}T${hour}:${rest}${isoZone(zone)}`);
  // Dates that no month has would be days of the next.
  const isDate = new Date(`${date}T00:00Z`).toJSON()?.startsWith(date);
  return isDate && !Number.isNaN(time.getTime()) ? { time, localHour: Number(hour) } : { code: 'no-time' };
}

const isoZone = (zone: string): string =>
  /^(z|utc)$/i.test(zone) ? 'Z' : zone.includes(':') ? zone : `${zone.slice(0, 3)}:${zone.slice(3)}`;

const heardOf = (text = ''): HeardAs | undefined => {
  const word = text.trim().toLowerCase().replaceAll('-', ' ');
  return HEARD.find((one) => one === word) ?? (word === 'nothing' ? 'not heard' : undefined);
};
