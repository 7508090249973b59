import type { Coded } from '../../units/coded.ts';
import { readCoordinate } from '../../units/coordinate.ts';
import { leadingNumber, wholeNumber } from '../../units/number.ts';
import { parseQuantity } from '../../units/parse.ts';
import { LIGHT_SPEED } from '../../units/quantities.ts';
import type { Position } from '../geodesy.ts';
import { type ColumnGuess, FIELD_UNITS, guessColumns, type StationField, usualUnit } from './columns.ts';
import { readPosition } from './coordinates.ts';
import type { Station } from './station.ts';
import type { TableProblem, TableProblemFacts } from './table-problems.ts';
import { type Delimiter, readTable, type TextTable, unguard } from './text-table.ts';

export interface StationTable {
  readonly stations: readonly Station[];
  /** Row of the table (from 1) each station came from. */
  readonly rowOf: readonly number[];
  readonly problems: readonly TableProblem[];
}

/** Text → rows, and a guess at what they hold, for a person to look over. */
export function openStationTable(text: string, delimiter?: Delimiter) {
  const { rows, delimiter: separator } = readTable(text, delimiter);
  return { rows, delimiter: separator, ...guessColumns(rows) };
}

/**
 * Change what one column is taken for; another column that held the same is let go.
 * @param columns what each column is taken for
 * @param index which column, from 0
 * @param field what it is to be; undefined for nothing
 * @param unit of its figures; undefined for the usual
 * @returns a new list
 */
export function assignColumn(
  columns: readonly ColumnGuess[],
  index: number,
  field: StationField | undefined,
  unit = field && usualUnit(field, []),
): ColumnGuess[] {
  return columns.map((column) =>
    column.index === index
      ? { ...column, field, unit, by: field ? 'header' : 'nothing' }
      : field && column.field === field
        ? { ...column, field: undefined, unit: undefined, by: 'nothing' }
        : column,
  );
}

/**
 * Rows → stations by the columns agreed on. A row without a readable frequency is left out; any other cell that cannot be
 * read is left out of its station. Every such case is in `problems`.
 */
export function stationsFromTable(rows: TextTable, columns: readonly ColumnGuess[], hasHeader: boolean): StationTable {
  const stations: Station[] = [];
  const rowOf: number[] = [];
  const problems: TableProblem[] = [];
  if (!columns.some(({ field }) => field === 'frequency'))
    return {
      stations,
      rowOf,
      problems: [{ row: 1, kind: 'no-frequency', fact: { code: 'no-frequency-column' } }],
    };
  const commas = hasDecimalCommas(rows, columns);
  for (const [n, cells] of rows.entries()) {
    if (n === 0 && hasHeader) continue;
    const row = n + 1;
    const cellOf = new Map<StationField, { text: string; column: ColumnGuess }>();
    for (const column of columns) {
      const text = unguard((cells[column.index] ?? '').trim());
      const blank = text === '' || (column.field !== 'name' && /^[-–—?]+$/.test(text));
      if (column.field && !blank) cellOf.set(column.field, { text, column });
    }
    if (cellOf.size === 0) continue;
    const complain = (field: StationField, fact: Coded<TableProblemFacts>) =>
      problems.push({
        row,
        column: cellOf.get(field)?.column,
        kind: `cell.${field}`,
        fact,
        ...(field === 'frequency' ? { isLeftOut: true } : {}),
      });
    const number = (field: StationField): number | undefined => {
      const cell = cellOf.get(field);
      if (!cell) return undefined;
      const read = readCell(cell.text, field, cell.column.unit, commas);
      if (typeof read === 'number') return read;
      complain(field, read);
      return undefined;
    };
    const frequency = number('frequency');
    const { min, max } = FREQUENCIES;
    if (frequency === undefined || !(frequency >= min && frequency <= max)) {
      if (frequency !== undefined) complain('frequency', { code: 'frequency-range', min, max });
      else if (!cellOf.has('frequency'))
        problems.push({ row, kind: 'no-frequency', fact: { code: 'no-frequency' }, isLeftOut: true });
      continue;
    }
    stations.push(
      tidy({
        name: (cellOf.get('name')?.text ?? `${Math.round(frequency / 100) / 10} kHz`).slice(0, 80),
        frequency,
        power: number('power'),
        position: positionOf(cellOf, complain),
        distance: number('distance'),
        bearing: number('bearing'),
        mastHeight: mastHeight(number('mastHeight'), cellOf.get('mastHeight'), frequency),
        mastGain: number('mastGain'),
        fieldStrength: number('fieldStrength'),
        modulation: number('modulation'),
        programme: cellOf.get('programme')?.text.slice(0, 40),
        hours: cellOf.get('hours')?.text.slice(0, 40),
      }),
    );
    rowOf.push(row);
  }
  return { stations, rowOf, problems };
}

/** Hz. */
const FREQUENCIES = { min: 1e4, max: 3e7 };

/** Only what was written: undefined fields are left out. */
const tidy = (station: Station): Station =>
  Object.fromEntries(Object.entries(station).filter(([, value]) => value !== undefined)) as unknown as Station;

/** Enough of a cell to find it again. */
const beginning = (text: string): string => text.slice(0, 40);

const WAVELENGTHS = /\s*(λ|wavelengths?|wl|waves?)\s*$/i;

const isNumeric = (field: StationField | undefined): boolean =>
  field !== undefined && (FIELD_UNITS[field] !== undefined || field === 'latitude' || field === 'longitude');

/** Whether the table's numbers have a comma before their decimals: one shows it, and none shows the contrary. */
function hasDecimalCommas(rows: TextTable, columns: readonly ColumnGuess[]): boolean {
  let commas = false;
  for (const { index, field } of columns) {
    if (!isNumeric(field)) continue;
    for (const cells of rows) {
      const cell = cells[index] ?? '';
      if (!/[.,]/.test(cell)) continue;
      const read = leadingNumber(cell);
      if (!read.ok || read.pointBeforeThree) continue;
      if (read.decimals === 'point') return false;
      if (read.decimals === 'comma') commas = true;
    }
  }
  return commas;
}

/** @returns the SI value (wavelengths for a mast given so), or what is wrong. */
function readCell(
  text: string,
  field: StationField,
  unit: string | undefined,
  commas: boolean,
): number | Coded<TableProblemFacts> {
  const info = FIELD_UNITS[field];
  if (!info) return { code: 'no-numbers' };
  const given = beginning(text);
  const plain = text.replace(WAVELENGTHS, '');
  const number = leadingNumber(plain);
  if (number.ok && number.pointBeforeThree && commas) return { code: 'thousand-or-fraction', given };
  const kind = isInWavelengths(text, field, unit) ? 'ratio' : info.kind;
  const isBare = number.ok && number.rest === '' && kind === info.kind;
  const read = parseQuantity(isBare ? `${plain} ${unit ?? info.usual}`.trim() : plain, kind);
  if (!read.ok) return { code: 'not-a-quantity', given, kind, hint: read.hint };
  if (NEVER_NEGATIVE.has(field) && !(read.value >= 0)) return { code: 'below-zero', given };
  return read.value;
}

/** A mast's height as a part of the wavelength: its cell says so, or a bare number's column does. */
const isInWavelengths = (text: string, field: StationField, unit: string | undefined): boolean =>
  field === 'mastHeight' &&
  (WAVELENGTHS.test(text) || (/^(λ|wavelengths)$/.test(unit ?? '') && wholeNumber(text) !== undefined));

const NEVER_NEGATIVE: ReadonlySet<StationField> = new Set([
  'frequency',
  'power',
  'distance',
  'mastHeight',
  'fieldStrength',
  'modulation',
]);

function mastHeight(
  value: number | undefined,
  cell: { text: string; column: ColumnGuess } | undefined,
  frequency: number,
): number | undefined {
  if (value === undefined || !cell) return undefined;
  const waves = isInWavelengths(cell.text, 'mastHeight', cell.column.unit);
  return waves ? (value * LIGHT_SPEED) / frequency : value;
}

function positionOf(
  cellOf: ReadonlyMap<StationField, { text: string }>,
  complain: (field: StationField, fact: Coded<TableProblemFacts>) => void,
): Position | undefined {
  const whole = cellOf.get('position');
  if (whole) {
    const position = readPosition(whole.text);
    if (!position) complain('position', { code: 'not-a-position', given: beginning(whole.text) });
    return position;
  }
  const [lat, lon] = [cellOf.get('latitude'), cellOf.get('longitude')];
  if (!lat && !lon) return undefined;
  if (!lat || !lon) {
    complain(lat ? 'latitude' : 'longitude', { code: 'half-a-position' });
    return undefined;
  }
  const latitude = readCoordinate(lat.text, 'latitude');
  const longitude = readCoordinate(lon.text, 'longitude');
  if (latitude === undefined) complain('latitude', { code: 'not-a-latitude', given: beginning(lat.text) });
  if (longitude === undefined) complain('longitude', { code: 'not-a-longitude', given: beginning(lon.text) });
  return latitude === undefined || longitude === undefined ? undefined : { latitude, longitude };
}
