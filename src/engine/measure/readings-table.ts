import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';

/** A measurement as a table: "# key: value" lines, a heading of columns with units or none, and a reading a line. */
export interface ReadingsTable {
  /** As JSON would have it. */
  readonly value: Readonly<Record<string, unknown>>;
  /** The line of the file, from 1, by path. */
  readonly lines: ReadonlyMap<string, number>;
}

/** Which field of a kind its readings are; of a kind that is none, any. */
const listOf = (kind: unknown): string =>
  typeof kind === 'string' && Object.hasOwn(MEASUREMENTS, kind)
    ? MEASUREMENTS[kind as MeasurementKind].readings
    : 'points';

/** Semicolons or tabs where the heading has them: a comma may then be a decimal one, which is refused with a way out. */
const separatorOf = (heading: string): string => (heading.includes('\t') ? '\t' : heading.includes(';') ? ';' : ',');

const cellsOf = (line: string, separator: string): string[] =>
  line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));

/** A number without a unit is a number; all else is text, as a description has it. */
const asWritten = (cell: string): string | number =>
  /^[-+]?\d+(\.\d+)?(e[-+]?\d+)?$/i.test(cell) ? Number(cell) : cell;

/**
 * Read a table of readings: lines "# kind: dial" or "# capacitor.minimum: 15 pF" say what belongs to all, then a heading
 * ("position,frequency [kHz]") and the readings, separated by commas, semicolons or tabs. A unit in brackets after a
 * column's name goes with every number below it.
 * @param text of the file
 * @param kind of the measurement where the table does not say it
 * @returns the measurement, and the line of every value in it
 */
export function readingsTable(text: string, kind?: string): ReadingsTable {
  const value: Record<string, unknown> = kind === undefined ? {} : { kind };
  const lines = new Map<string, number>();
  const rows: Record<string, unknown>[] = [];
  let separator: string | undefined;
  let heading: { key: string; unit: string }[] | undefined;
  text.split(/\r\n|\n|\r/).forEach((line, i) => {
    const number = i + 1;
    if (line.trim() === '') return;
    const remark = /^\s*#\s*([\w.]+)\s*:\s*(.*)$/.exec(line);
    if (remark) {
      const [, path, written] = remark;
      put(value, path.split('.'), asWritten(written.trim()));
      lines.set(path, number);
      return;
    }
    if (/^\s*#/.test(line)) return;
    separator ??= separatorOf(line);
    const cells = cellsOf(line, separator);
    if (!heading) {
      heading = cells.map((cell) => {
        const [, key, unit = ''] = /^([^[(]+?)\s*(?:[[(](.+?)[\])])?$/.exec(cell) ?? [cell, cell];
        return { key, unit };
      });
      return;
    }
    const row: Record<string, unknown> = {};
    heading.forEach(({ key, unit }, k) => {
      const cell = cells[k] ?? '';
      if (cell === '') return;
      const written = asWritten(cell);
      row[key] = unit !== '' && typeof written === 'number' ? `${cell} ${unit}` : written;
      lines.set(`${listOf(value.kind)}[${rows.length}].${key}`, number);
    });
    lines.set(`${listOf(value.kind)}[${rows.length}]`, number);
    rows.push(row);
  });
  if (rows.length > 0) value[listOf(value.kind)] = rows;
  return { value, lines };
}

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
