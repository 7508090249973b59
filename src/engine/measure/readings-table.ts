import { parseQuantity } from '../units/parse.ts';
import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';
import type { Fields, ScalarField } from './reading-fields.ts';

/** A measurement as a table: "# key: value" lines, a heading of columns with units or none, and a reading a line. */
export interface ReadingsTable {
  /** As JSON would have it. */
  readonly value: Readonly<Record<string, unknown>>;
  /** The line of the file, from 1, by path. */
  readonly lines: ReadonlyMap<string, number>;
  /** Keys of columns that the heading has not, and where it stands. */
  readonly missing: readonly string[];
  readonly headingLine?: number;
  /** Headings of columns that are none of the kind's, as written. */
  readonly others: readonly string[];
  /** Lines with more cells than the heading, and how many there are in each. */
  readonly tooLong: readonly {
    readonly path: string;
    readonly line: number;
    readonly cells: number;
    readonly most: number;
  }[];
}

const kindOf = (kind: unknown): (typeof MEASUREMENTS)[MeasurementKind] | undefined =>
  typeof kind === 'string' && Object.hasOwn(MEASUREMENTS, kind) ? MEASUREMENTS[kind as MeasurementKind] : undefined;

/** Which field of a kind its readings are; of a kind that is none, any. */
const listOf = (kind: unknown): string => kindOf(kind)?.readings ?? 'points';

/** The columns of a kind; none where its readings are no list. */
function columnsOf(kind: unknown): Fields<ScalarField> {
  const list = kindOf(kind)?.fields[listOf(kind)];
  return list?.type === 'list' ? list.columns : {};
}

/** Semicolons or tabs where the heading has them: a comma may then be a decimal one. */
const separatorOf = (heading: string): string => (heading.includes('\t') ? '\t' : heading.includes(';') ? ';' : ',');

const cellsOf = (line: string, separator: string): string[] =>
  line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));

const DECIMAL_COMMA = /^[-+]?\d*,\d+(e[-+]?\d+)?$/i;
const DECIMAL_POINT = /^[-+]?\d*\.\d+(e[-+]?\d+)?$/i;

/** A number without a unit is a number; all else is text, as a description has it. */
const asWritten = (cell: string): string | number =>
  /^[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(cell) ? Number(cell) : cell;

/** A heading, or its cell: the column it names, and the unit of the numbers below it. */
interface Heading {
  readonly name: string;
  readonly unit: string;
}

/** "frequency [kHz]", "Frequency (kHz)", "f / kHz", or the unit alone. */
function headingOf(cell: string): Heading {
  const [, name = cell, unit = ''] =
    /^([^[(]+?)\s*[[(](.+?)[\])]$/.exec(cell) ?? /^(.+?)\s*\/\s*(\S+)$/.exec(cell) ?? [];
  return { name, unit };
}

/** Whether numbers of a column may be in this unit. */
const isUnitOf = (unit: string, field: ScalarField): boolean =>
  unit !== '' && field.type === 'quantity' && parseQuantity(`1 ${unit}`, field.quantity).ok;

const plainName = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '');

/** Which column each heading is of: by its name, or by its unit where only one column has such a one. */
function keysOf(headings: readonly Heading[], columns: Fields<ScalarField>): (string | undefined)[] {
  const all = Object.keys(columns);
  if (all.length === 0) return headings.map(({ name }) => name);
  const byName = headings.map(({ name }) => all.find((key) => plainName(key) === plainName(name)));
  const left = all.filter((key) => !byName.includes(key));
  const byUnit = headings.map(({ name, unit }, i) => {
    if (byName[i] !== undefined) return undefined;
    const fitting = left.filter((key) => isUnitOf(unit === '' ? name : unit, columns[key]));
    return fitting.length === 1 ? fitting[0] : undefined;
  });
  const isAlone = (key: string): boolean => byUnit.filter((one) => one === key).length === 1;
  return headings.map((_, i) => byName[i] ?? (byUnit[i] !== undefined && isAlone(byUnit[i]) ? byUnit[i] : undefined));
}

interface Line {
  readonly number: number;
  readonly cells: readonly string[];
}

/** A row of units below the heading: no numbers, and at least one unit of a column of the kind. */
const isUnits = ({ cells }: Line, columns: Fields<ScalarField>): boolean =>
  cells.every((cell) => typeof asWritten(cell) === 'string') &&
  cells.some((cell) => Object.values(columns).some((field) => isUnitOf(bareUnit(cell), field)));

const bareUnit = (cell: string): string => cell.replace(/^[[(](.*)[\])]$/, '$1');

/**
 * Read a table of readings: lines "# kind: dial" or "# capacitor.minimum: 15 pF" say what belongs to all, then a heading
 * ("position,frequency [kHz]") and the readings, separated by commas, semicolons or tabs. A unit in brackets after a
 * column's name, or in a row below the heading, goes with every number of the column; a heading that is no name of a
 * column is the one that its unit fits alone. Decimal commas are read where nothing else has commas.
 * @param text of the file
 * @param kind of the measurement where the table does not say it
 * @returns the measurement, the line of every value in it, and what of the table is not of its kind
 */
export function readingsTable(text: string, kind?: string): ReadingsTable {
  const value: Record<string, unknown> = kind === undefined ? {} : { kind };
  const lines = new Map<string, number>();
  const table: { readonly number: number; readonly line: string }[] = [];
  text.split(/\r\n|\n|\r/).forEach((line, i) => {
    if (line.trim() === '') return;
    const remark = /^\s*#\s*([\w.]+)\s*:\s*(.*)$/.exec(line);
    if (remark) {
      const [, path, written] = remark;
      put(value, path.split('.'), asWritten(written.trim()));
      lines.set(path, i + 1);
    } else if (!/^\s*#/.test(line)) table.push({ number: i + 1, line });
  });
  const [first, ...below] = table;
  if (!first) return { value, lines, missing: [], others: [], tooLong: [] };
  const separator = separatorOf(first.line);
  const columns = columnsOf(value.kind);
  const written = below.map(({ number, line }): Line => ({ number, cells: cellsOf(line, separator) }));
  const units = written.length > 0 && isUnits(written[0], columns) ? written.shift() : undefined;
  const headings = cellsOf(first.line, separator)
    .map(headingOf)
    .map((one, k) => (units?.cells[k] ? { ...one, unit: bareUnit(units.cells[k]) } : one));
  const keys = keysOf(headings, columns);
  const all = written.flatMap(({ cells }) => cells);
  const hasCommas =
    separator !== ',' && all.some((c) => DECIMAL_COMMA.test(c)) && !all.some((c) => DECIMAL_POINT.test(c));
  const list = listOf(value.kind);
  const tooLong: ReadingsTable['tooLong'][number][] = [];
  const rows = written.map(({ number, cells }, i) => {
    const row: Record<string, unknown> = {};
    keys.forEach((key, k) => {
      const cell = hasCommas && DECIMAL_COMMA.test(cells[k] ?? '') ? cells[k].replace(',', '.') : (cells[k] ?? '');
      if (key === undefined || cell === '') return;
      const one = asWritten(cell);
      row[key] = headings[k].unit !== '' && typeof one === 'number' ? `${cell} ${headings[k].unit}` : one;
      if (typeof one === 'number' && headings[k].unit === '' && isUnitOf(headings[k].name, columns[key] ?? NO_FIELD))
        row[key] = `${cell} ${headings[k].name}`;
      lines.set(`${list}[${i}].${key}`, number);
    });
    lines.set(`${list}[${i}]`, number);
    if (cells.slice(headings.length).some((cell) => cell !== ''))
      tooLong.push({ path: `${list}[${i}]`, line: number, cells: cells.length, most: headings.length });
    return row;
  });
  if (rows.length > 0) value[list] = rows;
  return {
    value,
    lines,
    missing: Object.keys(columns).filter((key) => !columns[key].optional && !keys.includes(key)),
    headingLine: first.number,
    others: headings.flatMap(({ name }, k) => (keys[k] === undefined && name !== '' ? [name] : [])),
    tooLong,
  };
}

const NO_FIELD = { type: 'choice', options: [] } as const;

const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

function put(into: Record<string, unknown>, [key, ...rest]: readonly string[], written: unknown): void {
  if (FORBIDDEN.has(key)) return;
  if (rest.length === 0) {
    into[key] = written;
    return;
  }
  const inner = into[key];
  const group = typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>) : {};
  into[key] = group;
  put(group, rest, written);
}
