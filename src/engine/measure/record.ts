import type { RecordProblem } from '../facts/record-problems.ts';
import { wholeNumber } from '../units/number.ts';

/** Samples evenly in time. */
export interface Recording {
  /** Hz. */
  readonly sampleRate: number;
  /** In any unit. */
  readonly samples: ArrayLike<number>;
}

export type RecordRead =
  | ({ readonly ok: true } & Recording)
  | { readonly ok: false; readonly problems: readonly RecordProblem[] };

const LEAST_ROWS = 16;
const MOST_ROWS = 200_000;
const LONGEST = 5_000_000;
const MOST_PROBLEMS = 20;
/** Rows of two numbers one below the other that show where the headings end. */
const SHOWS_DATA = 3;
/** Columns that time may stand in. */
const MOST_COLUMNS = 8;
/** Share of a step that a time may be off: times are often written with few digits. */
const UNEVEN = 0.5;
const UNITS: Readonly<Record<string, number>> = {
  s: 1,
  sec: 1,
  second: 1,
  seconds: 1,
  ms: 1e-3,
  µs: 1e-6,
  μs: 1e-6,
  us: 1e-6,
  ns: 1e-9,
};

/** Seconds that a time under this heading is in; undefined where it says none. */
const unitOf = (heading: string): number | undefined => {
  const written = /(?:^|[\s([/,_])(s|sec|seconds?|ms|µs|μs|us|ns)[\])]?$/i.exec(heading.trim())?.[1];
  return written === undefined ? undefined : UNITS[written.toLowerCase()];
};

/** A line of the file that is not empty, from 1, and its cells. */
interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

const DECIMAL_COMMA = /^[-+]?\d*,\d+(e[-+]?\d+)?$/i;
const DECIMAL_POINT = /^[-+]?\d*\.\d+(e[-+]?\d+)?$/i;

/** What most of the lines have between their columns; a comma last, since it may be a decimal one, and spaces where none. */
function separatorOf(lines: readonly string[]): RegExp {
  const some = lines.slice(-200);
  const [found = /\s+/] = [/\t/, /;/, /,/].filter(
    (one) => some.filter((line) => one.test(line)).length > 0.8 * some.length,
  );
  return found;
}

/** The lines of a table, and how its numbers are written: with a decimal comma where no number has a point. */
function rowsOf(text: string) {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line) => line.trimEnd());
  const separator = separatorOf(lines.filter((line) => line !== ''));
  const rows = lines.flatMap((line, i): Row[] =>
    line === ''
      ? []
      : [{ line: i + 1, cells: line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1')) }],
  );
  const some = rows.slice(-1000).flatMap(({ cells }) => cells);
  const hasCommas =
    !separator.test(',') && some.some((c) => DECIMAL_COMMA.test(c)) && !some.some((c) => DECIMAL_POINT.test(c));
  const numberIn = (cell = ''): number | undefined =>
    wholeNumber(hasCommas && DECIMAL_COMMA.test(cell) ? cell.replace(',', '.') : cell);
  return { rows, numberIn };
}

type Numbers = ReturnType<typeof rowsOf>['numberIn'];

/** The first column that has numbers, as the next one has, nearly all the way down; others may say what was set. */
function columnOf(rows: readonly Row[], numberIn: Numbers): number {
  const some = rows.slice(-1000);
  const counted = Array.from(
    { length: MOST_COLUMNS },
    (_, c) =>
      some.filter(({ cells }) => numberIn(cells[c]) !== undefined && numberIn(cells[c + 1]) !== undefined).length,
  );
  const most = Math.max(...counted);
  return counted.findIndex((count) => count > 0.9 * most);
}

/**
 * Where rows of two numbers begin; before them stand headings, and what was set. A row above whose time is that of a
 * sample there belongs to them, whatever else is wrong with it; so does one next to them that is mostly figures.
 */
function dataFrom(rows: readonly Row[], column: number, numberIn: Numbers): number {
  const timeOf = (row: Row | undefined) => numberIn(row?.cells[column]);
  const isData = (row: Row | undefined): boolean =>
    row !== undefined && timeOf(row) !== undefined && numberIn(row.cells[column + 1]) !== undefined;
  const sure = rows.findIndex((row, i) => isData(row) && rows.slice(i, i + SHOWS_DATA).every(isData));
  if (sure <= 0) return sure;
  const last = rows.findLastIndex((row) => timeOf(row) !== undefined);
  const [from, to] = [timeOf(rows[sure])!, timeOf(rows[last])!];
  const step = (to - from) / (last - sure);
  const earlier = rows.findIndex((row, i) => {
    const time = timeOf(row);
    return i < sure && time !== undefined && Math.abs(time - from - (i - sure) * step) <= UNEVEN * step;
  });
  let first = earlier >= 0 ? earlier : sure;
  while (first > 0 && isMostlyFigures(rows[first - 1], column, numberIn)) first--;
  return first;
}

/** One number, and beside it a cell of more figures than letters: a number that somebody or something broke. */
function isMostlyFigures({ cells }: Row, column: number, numberIn: Numbers): boolean {
  const both = [cells[column] ?? '', cells[column + 1] ?? ''];
  const broken = both.filter((cell) => numberIn(cell) === undefined);
  if (broken.length !== 1 || !/^[^:/]*\d[^:/]*$/.test(broken[0])) return false;
  return broken[0].replace(/[^\d.,+-]/g, '').length > broken[0].length / 2;
}

const INTERVAL =
  /^(?:time )?(?:increment|(?:sampl\w+ |time )?(?:interval|period|step)|x ?increment|delta(?: ?[tx])?|dt)\b/i;
/** A column that only counts. */
const COUNTS = /^(?:#|no\.?|n|nr\.?|x|index|sequence|sample|samples|point|points)$/i;

/** The time between samples that headings state, s: beside its name, or below it. */
function statedStep(headings: readonly Row[], numberIn: Numbers): number | undefined {
  for (const [i, { cells }] of headings.entries())
    for (const [k, cell] of cells.entries()) {
      if (!INTERVAL.test(cell)) continue;
      const step =
        numberIn(cells[k + 1]) ?? numberIn(cell.split(':')[1]?.trim()) ?? numberIn(headings[i + 1]?.cells[k]);
      if (step !== undefined && step > 0) return step * (unitOf(cell) ?? 1);
    }
  return undefined;
}

/**
 * A table of an oscilloscope: time in one column (seconds, or the unit in its heading), volts in the next. What was set may
 * stand above it or in columns before it; a column that only counts goes with the step that the headings state.
 * @param text with commas, semicolons or tabs between columns; headings or none; decimal commas where columns are not
 *   separated by commas
 * @returns samples and their rate, or every problem by its line (the first twenty)
 */
export function readRecord(text: string): RecordRead {
  if (text.length > LONGEST) return { ok: false, problems: [{ code: 'too-large' }] };
  const { rows, numberIn } = rowsOf(text);
  if (rows.length > MOST_ROWS) return { ok: false, problems: [{ code: 'too-large' }] };
  const none: RecordRead = { ok: false, problems: [{ code: 'no-rows', least: LEAST_ROWS }] };
  if (rows.length < LEAST_ROWS) return none;
  const column = columnOf(rows, numberIn);
  const first = dataFrom(rows, column, numberIn);
  if (first < 0 || rows.length - first < LEAST_ROWS) return none;
  const headings = rows.slice(0, first);
  const problems: RecordProblem[] = [];
  const times: number[] = [];
  const samples: number[] = [];
  for (const { line, cells } of rows.slice(first)) {
    const [time, volts] = [numberIn(cells[column]), numberIn(cells[column + 1])];
    if (time === undefined || volts === undefined)
      problems.push({
        code: 'two-numbers',
        row: line,
        given: cells
          .slice(column, column + 2)
          .join(' ')
          .slice(0, 40),
      });
    else {
      times.push(time);
      samples.push(volts);
    }
  }
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  const step = (times[times.length - 1] - times[0]) / (times.length - 1);
  const uneven = times.findIndex((t, i) => !(Math.abs(t - times[0] - i * step) <= UNEVEN * step));
  if (uneven >= 0 || !(step > 0))
    return { ok: false, problems: [{ code: 'time-not-even', row: rows[first + Math.max(uneven, 0)].line }] };
  const names = headings.map(({ cells }) => cells[column] ?? '').toReversed();
  if (!names.some((name) => COUNTS.test(name))) {
    const unit = names.map(unitOf).find((one) => one !== undefined) ?? 1;
    return { ok: true, sampleRate: 1 / (step * unit), samples };
  }
  const stated = statedStep(headings, numberIn);
  if (stated === undefined)
    return { ok: false, problems: [{ code: 'no-time', row: headings[headings.length - 1].line }] };
  return { ok: true, sampleRate: 1 / (step * stated), samples };
}

const MOST_SAMPLES = 16_384;
/** Shares of the peak: fallen below one and risen above the other again, a next edge has come. */
const [FALLEN, RISEN] = [0.3, 0.7];

/**
 * The ringing of a record: from the sample after its largest, which the edge made, to the next edge or the end.
 * @param samples of the whole record
 * @returns at most 16 384 of them
 */
export function ringingOf(samples: ArrayLike<number>): Float64Array {
  const v = Float64Array.from(samples);
  const tail = v.subarray(Math.floor(v.length * 0.9));
  const rest = tail.reduce((s, x) => s + x, 0) / Math.max(tail.length, 1);
  const highest = v.reduce((most, x) => Math.max(most, Math.abs(x - rest)), 0);
  const start = v.findIndex((x) => Math.abs(x - rest) >= 0.9 * highest) + 1;
  // Half a period may lie between an edge and the largest sample: quiet is what stays low for a while.
  const quiet = Math.max(16, Math.floor((v.length - start) / 50));
  let low = 0;
  let end = v.length;
  for (let i = start; i < v.length; i++) {
    const size = Math.abs(v[i] - rest);
    if (low >= quiet && size > RISEN * highest) {
      end = i;
      break;
    }
    low = size < FALLEN * highest ? low + 1 : 0;
  }
  return v.slice(start, Math.min(end, start + MOST_SAMPLES));
}
