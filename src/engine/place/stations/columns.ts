import { readCoordinate } from '../../units/coordinate.ts';
import { wholeNumber } from '../../units/number.ts';
import type { QuantityKind } from '../../units/parse.ts';
import { readPosition } from './coordinates.ts';
import type { TextTable } from './text-table.ts';

/** What a column of a table of stations may hold. */
export const STATION_FIELDS = [
  'name',
  'frequency',
  'power',
  'latitude',
  'longitude',
  'position',
  'distance',
  'bearing',
  'mastHeight',
  'mastGain',
  'fieldStrength',
  'modulation',
  'programme',
  'hours',
] as const;
/** What a column of a table of stations holds. */
export type StationField = (typeof STATION_FIELDS)[number];

/** What one column seems to hold. */
export interface ColumnGuess {
  /** Place in the row, from 0. */
  readonly index: number;
  /** As written; '' where the table has no heading. */
  readonly header: string;
  /** undefined: not used. */
  readonly field?: StationField;
  /** Unit of cells that are bare numbers. */
  readonly unit?: string;
  readonly by: 'header' | 'content' | 'nothing';
}

export interface TableGuess {
  readonly hasHeader: boolean;
  readonly columns: readonly ColumnGuess[];
}

/** Words of a heading, in several languages' usual lists; the longest that matches decides. */
const HEADINGS: Readonly<Record<StationField, readonly string[]>> = {
  name: [
    'name',
    'station',
    'programme name',
    'transmitter',
    'site',
    'call',
    'callsign',
    'call sign',
    'sender',
    'location',
  ],
  frequency: ['frequency', 'freq', 'f', 'qrg', 'frequenz', 'channel', 'khz', 'mhz'],
  power: ['power', 'pwr', 'p', 'tx power', 'transmitter power', 'leistung', 'kw', 'erp', 'emrp', 'watts'],
  latitude: ['latitude', 'lat'],
  longitude: ['longitude', 'long', 'lon', 'lng'],
  position: ['position', 'coordinates', 'coords', 'lat lon', 'lat long', 'latitude longitude', 'geo'],
  distance: ['distance', 'dist', 'range', 'km', 'miles'],
  bearing: ['bearing', 'azimuth', 'direction', 'az', 'brg', 'heading'],
  mastHeight: ['mast', 'mast height', 'height', 'antenna height', 'aerial height', 'tower'],
  mastGain: ['gain', 'mast gain', 'antenna gain', 'aerial gain'],
  fieldStrength: ['field strength', 'field', 'strength', 'measured', 'measured field', 'level'],
  modulation: ['modulation', 'depth', 'modulation depth', 'mod'],
  programme: ['programme', 'program', 'kind', 'type', 'format', 'content', 'programme kind'],
  hours: ['hours', 'times', 'time', 'schedule', 'on air', 'hours utc'],
};

/** Kind of each numeric field, the unit of bare numbers when nothing says otherwise, and units a heading may name. */
export const FIELD_UNITS: Readonly<
  Partial<
    Record<StationField, { readonly kind: QuantityKind; readonly usual: string; readonly units: readonly string[] }>
  >
> = {
  frequency: { kind: 'frequency', usual: 'kHz', units: ['Hz', 'kHz', 'MHz', 'kc/s', 'Mc/s'] },
  power: { kind: 'power', usual: 'kW', units: ['W', 'kW', 'MW'] },
  distance: { kind: 'length', usual: 'km', units: ['m', 'km', 'mi', 'miles'] },
  bearing: { kind: 'bearing', usual: '°', units: ['°', 'deg'] },
  mastHeight: { kind: 'length', usual: 'm', units: ['m', 'ft', 'feet', 'λ', 'wavelengths'] },
  mastGain: { kind: 'level', usual: 'dB', units: ['dB'] },
  fieldStrength: { kind: 'field strength', usual: 'mV/m', units: ['V/m', 'mV/m', 'µV/m', 'uV/m', 'dBµV/m', 'dBuV/m'] },
  modulation: { kind: 'ratio', usual: '%', units: ['%'] },
};

/** "Freq. (kHz)" → words "freq", unit text "kHz"; "power_kw" → "power", "kw". */
function heading(text: string): { words: string; tokens: string[] } {
  const tokens = text
    .slice(0, 60)
    .normalize('NFC')
    .split(/[\s_()[\],.:]+|(?<=[a-zA-Z])\/(?=[kMmW]?[a-zA-Z]{1,2}$)/)
    .filter((token) => token !== '');
  return { words: tokens.join(' ').toLowerCase(), tokens };
}

function fieldOfHeading(text: string): { field: StationField; unit?: string } | undefined {
  const { words, tokens } = heading(text);
  let best: { field: StationField; size: number } | undefined;
  for (const field of STATION_FIELDS) {
    for (const word of HEADINGS[field]) {
      const isMatch = words === word || words.startsWith(`${word} `) || words.endsWith(` ${word}`);
      if (isMatch && word.length > (best?.size ?? 0)) best = { field, size: word.length };
    }
  }
  if (!best) return undefined;
  const units = FIELD_UNITS[best.field]?.units ?? [];
  // MW and mW differ, and headings are often all in one case: an exact match first, then any.
  const exact = units.find((unit) => tokens.includes(unit) || text.includes(`(${unit})`) || text.includes(`[${unit}]`));
  const loose = units.find((unit) => tokens.some((token) => token.toLowerCase() === unit.toLowerCase()));
  return { field: best.field, unit: exact ?? loose };
}

/**
 * Guess what each column of a table holds, by its heading, else by what its cells look like. A guess to be looked at and
 * corrected, never to be trusted blindly.
 */
export function guessColumns(rows: TextTable): TableGuess {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const first = rows[0] ?? [];
  const named = first.map(fieldOfHeading);
  const looksLikeData = first.some((cell) => /^\d+([.,]\d+)?\s*(kHz|MHz|Hz|kW|W)?$/i.test(cell));
  const digits = (row: readonly string[]) => row.some((cell) => /\d/.test(cell));
  // Unknown words over rows of figures are a heading too.
  const wordsOverFigures = rows.length > 1 && !digits(first) && rows.slice(1, 20).every(digits);
  const hasHeader = !looksLikeData && (wordsOverFigures || named.some((guess) => guess !== undefined));
  const body = rows.slice(hasHeader ? 1 : 0, 200);
  const fields = new Set<StationField>();
  const columns: ColumnGuess[] = [];
  for (let index = 0; index < width; index++) {
    const guess = hasHeader ? named[index] : undefined;
    const header = hasHeader ? (first[index] ?? '') : '';
    if (guess && !fields.has(guess.field)) {
      fields.add(guess.field);
      const unit = guess.unit ?? usualUnit(guess.field, numbersIn(body, index));
      columns.push({ index, header, field: guess.field, unit, by: 'header' });
    } else columns.push({ index, header, by: 'nothing' });
  }
  for (const [index, column] of columns.entries()) {
    if (column.field) continue;
    const field = fieldOfContent(
      body.map((row) => row[index] ?? ''),
      fields,
    );
    if (!field) continue;
    fields.add(field);
    columns[index] = { ...column, field, unit: usualUnit(field, numbersIn(body, index)), by: 'content' };
  }
  return { hasHeader, columns };
}

const numbersIn = (body: TextTable, index: number): number[] =>
  body.flatMap((row) => wholeNumber(row[index] ?? '') ?? []);

/** Unit of bare numbers in a column without one: by size where people differ. */
export function usualUnit(field: StationField, numbers: readonly number[]): string | undefined {
  const usual = FIELD_UNITS[field]?.usual;
  const most = Math.max(...numbers);
  if (field === 'frequency' && numbers.length > 0) return most < 30 ? 'MHz' : most > 30_000 ? 'Hz' : 'kHz';
  if (field === 'power' && numbers.length > 0 && most > 2500) return 'W';
  if (field === 'modulation' && numbers.length > 0 && most <= 1.5) return '';
  return usual;
}

function fieldOfContent(cells: readonly string[], used: ReadonlySet<StationField>): StationField | undefined {
  const written = cells.filter((cell) => cell !== '');
  if (written.length === 0) return undefined;
  const mostly = (test: (cell: string) => boolean) => written.filter(test).length >= 0.8 * written.length;
  const free = (field: StationField) => !used.has(field);
  const number = (cell: string) => wholeNumber(cell.replace(/\s*kHz$/i, '')) ?? Number.NaN;
  const isBand = (cell: string) => number(cell) >= 148 && number(cell) <= 1710;
  if (free('frequency') && mostly(isBand)) return 'frequency';
  if (free('frequency') && mostly((cell) => /\d\s*[kM]Hz$/i.test(cell))) return 'frequency';
  if (free('power') && mostly((cell) => /\d\s*[kM]?W$/.test(cell))) return 'power';
  if (free('fieldStrength') && mostly((cell) => /\d\s*([mµu]?V\/m|dB[µu]V\/m)$/.test(cell))) return 'fieldStrength';
  if (free('hours') && mostly((cell) => /^\d{1,2}:?\d{2}\s*[-–]\s*\d{1,2}:?\d{2}/.test(cell))) return 'hours';
  const marked = (cell: string) => /[NSEW°]/i.test(cell);
  const unplaced = free('latitude') && free('position');
  if (unplaced && mostly((cell) => readPosition(cell) !== undefined)) return 'position';
  if (unplaced && mostly((cell) => marked(cell) && readCoordinate(cell, 'latitude') !== undefined)) return 'latitude';
  if (free('longitude') && mostly((cell) => marked(cell) && readCoordinate(cell, 'longitude') !== undefined))
    return 'longitude';
  if (free('distance') && mostly((cell) => /\d\s*(km|mi|miles)$/i.test(cell))) return 'distance';
  if (free('name') && mostly((cell) => /\p{L}{2}/u.test(cell))) return 'name';
  return undefined;
}
