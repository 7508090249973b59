import * as v from 'valibot';
import { isRecord } from '../fields/introspect.ts';
import { type Problem, tooDeep } from '../fields/problem.ts';
import { refuse } from '../fields/refusal.ts';
import type { SetDescription } from '../set/description.ts';
import { issueProblems, LARGEST_FILE, tooLarge } from '../set/read.ts';
import { givenValue } from '../units/refusal.ts';
import { quantity } from '../units/schema.ts';
import { withoutMeasured } from './measurable.ts';
import type { Measured } from './measurement.ts';
import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';
import { boundsOf, PROPERTIES, PROPERTY_IDS, type PropertyId, propertyOf } from './properties.ts';
import { fieldEntries } from './reading-fields.ts';
import { namesNotOf } from './reading-names.ts';
import { type ReadingsTable, readingsTable } from './readings-table.ts';
import { UnfitReadings, type UnfitReason } from './unfit.ts';

const READINGS_FORMAT = 'faintwave-readings/1';

/** Something wrong with a file of readings; of a table, with the line it stands in. */
export type ReadingsProblem = (Problem | { readonly path: string; readonly unfit: UnfitReason }) & {
  readonly line?: number;
};

/** A measurement as read. */
export interface TakenMeasurement {
  /** One of `MEASUREMENTS`, or a figure read off an instrument. */
  readonly kind: MeasurementKind | 'value';
  /** Which coil it is of, by name; left out: the first. */
  readonly coil?: string;
  /** Which station it is of, by name. */
  readonly station?: string;
  readonly date?: string;
  readonly note?: string;
  /** As its fields are read, SI. */
  readonly values: Readonly<Record<string, unknown>>;
  /** What follows from a measurement of several readings. */
  readonly fit?: Measured;
  /** What was read off an instrument, its standard error in the value's unit. */
  readonly figure?: { readonly property: PropertyId; readonly value: number; readonly standardError: number };
  /** As written, to be kept. */
  readonly written: unknown;
}

/** Measurements as read, or every problem there is. */
export type ReadingsRead =
  | {
      readonly ok: true;
      readonly measurements: readonly TakenMeasurement[];
      /** Of a table: headings of columns that its kind has not, as written; left out where there are none. */
      readonly notRead?: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ReadingsProblem[] };

const MOST_MEASUREMENTS = 200;
/** Standard error as a share of the value. */
const MOST_ERROR = 10;
const KINDS = Object.keys(MEASUREMENTS) as MeasurementKind[];

const text = v.optional(
  v.pipe(v.string(refuse({ code: 'text' })), v.maxLength(500, refuse({ code: 'text.at-most', characters: 500 }))),
);
const about = { coil: text, station: text, date: text, note: text };

const fitted = (kind: MeasurementKind) =>
  v.object({ kind: v.literal(kind), ...about, ...fieldEntries(MEASUREMENTS[kind].fields) });

function readingOf(id: PropertyId) {
  const { quantity: of, isAmount } = propertyOf(id);
  const plain = refuse({ code: 'number', min: 0, max: 1e6 });
  return v.object({
    kind: v.literal('value'),
    ...about,
    of: v.literal(id),
    value: of
      ? quantity(of, boundsOf(of))
      : v.pipe(
          v.number(plain),
          v.check((x) => x > 0, plain),
        ),
    error: v.optional(
      isAmount && of
        ? quantity(of, { above: 0, max: boundsOf(of).max })
        : quantity('ratio', { above: 0, max: MOST_ERROR }),
    ),
  });
}

const variantOf = <const K extends string>(key: K, options: readonly v.GenericSchema[], names: readonly string[]) =>
  v.variant(
    key,
    options as unknown as Parameters<typeof v.variant>[1],
    refuse({ code: 'kind', key, options: names }),
  ) as unknown as v.GenericSchema;

const schema = variantOf(
  'kind',
  [...KINDS.map(fitted), variantOf('of', PROPERTY_IDS.map(readingOf), PROPERTY_IDS)],
  [...KINDS, 'value'],
);

const single = (problem: Problem): ReadingsRead => ({ ok: false, problems: [problem] });

/**
 * Read a file of readings: JSON of one or several measurements, or a table of one. Never throws.
 * @param text of the file, up to 2 MB
 * @param kind of the measurement of a table that does not say it
 * @param set that the readings are of: its parts are as it has them where readings do not say it
 * @returns the measurements with what follows from each, or every problem with its path and, of a table, its line
 */
export function readReadings(text: string, kind?: MeasurementKind | 'value', set?: SetDescription): ReadingsRead {
  if (text.length > LARGEST_FILE) return single(tooLarge(text.length));
  const trimmed = text.replace(/^\uFEFF/, '').trim();
  if (trimmed === '') return single({ path: '', expected: { code: 'readings' }, given: { code: 'empty-file' } });
  if (!/^[[{]/.test(trimmed)) {
    return readTable(readingsTable(trimmed, kind), set);
  }
  let value: unknown;
  try {
    value = JSON.parse(trimmed);
  } catch {
    return single({ path: '', expected: { code: 'json' }, given: givenValue(trimmed), hint: { code: 'not-json' } });
  }
  if (tooDeep(value)) return single({ path: '', expected: { code: 'readings' }, given: { code: 'nested-too-deep' } });
  // One measurement may stand by itself.
  if (isRecord(value) && 'kind' in value && !('measurements' in value)) return readOfSet([value], set);
  if (!isRecord(value) || value.format !== READINGS_FORMAT)
    return single({
      path: 'format',
      expected: { code: 'literal', value: READINGS_FORMAT },
      given: givenValue(isRecord(value) ? value.format : value),
    });
  if (!Array.isArray(value.measurements) || value.measurements.length === 0)
    return single({
      path: 'measurements',
      expected: { code: 'items.at-least', count: 1 },
      given: givenValue(value.measurements),
    });
  return readOfSet(value.measurements, set);
}

/** A table: every problem with its line; columns that are none of the kind's are named. */
function readTable(table: ReadingsTable, set: SetDescription | undefined): ReadingsRead {
  const { lines, missing, headingLine, others, tooLong } = table;
  const read = readOfSet([table.value], set);
  const long = tooLong.map(
    ({ path, line, cells, most }): ReadingsProblem => ({
      path,
      line,
      expected: { code: 'items.at-most', count: most },
      given: givenValue(cells),
    }),
  );
  if (read.ok && long.length === 0) return others.length === 0 ? read : { ...read, notRead: others };
  const named = new Set<string>();
  const problems = (read.ok ? [] : read.problems).flatMap((problem): ReadingsProblem[] => {
    const path = problem.path.replace(/^measurements\[0\]\.?/, '');
    const key = path.replace(/^.*\./, '');
    // A column that the heading has not is missing once, not in every row.
    if (missing.includes(key)) {
      if (named.has(key)) return [];
      named.add(key);
      return [{ ...problem, path: key, line: headingLine }];
    }
    // Of what is missing, the line where it should stand.
    return [{ ...problem, path, line: lines.get(path) ?? lines.get(path.replace(/\.[^.]*$/, '')) }];
  });
  return { ok: false, problems: [...problems, ...long] };
}

/** Readings of a file: what is wrong with them, and what they name that the set has not, all at once. */
function readOfSet(written: readonly unknown[], set: SetDescription | undefined): ReadingsRead {
  const read = readMeasurements(written, set);
  const names = set ? namesNotOf(set, written) : [];
  if (names.length === 0) return read;
  return { ok: false, problems: [...(read.ok ? [] : read.problems), ...names] };
}

/**
 * Measurements as written, as a description keeps them.
 * @param written list of measurements
 * @param set that they are of: its parts are as it has them where readings do not say it
 * @returns what follows from each, or every problem
 */
export function readMeasurements(written: readonly unknown[], set?: SetDescription): ReadingsRead {
  if (written.length > MOST_MEASUREMENTS)
    return single({
      path: 'measurements',
      expected: { code: 'items.at-most', count: MOST_MEASUREMENTS },
      given: givenValue(written.length),
    });
  const problems: ReadingsProblem[] = [];
  const bare = set && withoutMeasured(set);
  const measurements: TakenMeasurement[] = [];
  written.forEach((one, i) => {
    const at = `measurements[${i}]`;
    const read = v.safeParse(schema, one);
    if (!read.success) {
      for (const problem of issueProblems(read.issues))
        problems.push({ ...problem, path: problem.path === '' ? at : `${at}.${problem.path}` });
      return;
    }
    try {
      measurements.push(taken(read.output as Readonly<Record<string, unknown>>, one, bare));
    } catch (refusal) {
      if (!(refusal instanceof UnfitReadings)) throw refusal;
      const { kind } = read.output as { kind: MeasurementKind };
      problems.push({ path: `${at}.${MEASUREMENTS[kind].readings}`, unfit: refusal.reason });
    }
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, measurements };
}

/** @throws UnfitReadings */
function taken(
  values: Readonly<Record<string, unknown>>,
  written: unknown,
  set: SetDescription | undefined,
): TakenMeasurement {
  const { kind, coil, station, date, note } = values as Omit<TakenMeasurement, 'values' | 'written'>;
  const common = { kind, coil, station, date, note, values, written };
  if (kind !== 'value') return { ...common, fit: MEASUREMENTS[kind].fit(values, set) };
  const { of, value, error } = values as { of: PropertyId; value: number; error?: number };
  const { isAmount, usual } = propertyOf(of);
  const s = error ?? usual;
  return { ...common, figure: { property: of, value, standardError: isAmount ? s : s * value } };
}

/** Whether what a kind of measurement settles has a place in the description. */
export const isProperty = (settles: string | undefined): settles is PropertyId =>
  settles !== undefined && Object.hasOwn(PROPERTIES, settles);
