import type { RecordProblem } from '../facts/record-problems.ts';
import { TableTooLargeError } from '../place/stations/table-problems.ts';
import { readTable } from '../place/stations/text-table.ts';
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
const MOST_PROBLEMS = 20;
/** Share of a step that a time may be off: times are often written with few digits. */
const UNEVEN = 0.5;
const UNITS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, µs: 1e-6, μs: 1e-6, us: 1e-6, ns: 1e-9 };

/** Seconds that a time under this heading is in. */
const unitOf = (heading: string): number => {
  const written = /(?:^|[\s([/,_])(s|ms|µs|μs|us|ns)[\])]?$/i.exec(heading.trim())?.[1];
  return UNITS[written?.toLowerCase() ?? 's'] ?? 1;
};

/**
 * A table of an oscilloscope: time in the first column (seconds, or the unit in its heading), volts in the second.
 * @param text with commas, semicolons or tabs between columns; headings or none
 * @returns samples and their rate, or every problem by its row (the first twenty)
 */
export function readRecord(text: string): RecordRead {
  let rows: readonly (readonly string[])[];
  try {
    rows = readTable(text).rows;
  } catch (refusal) {
    if (!(refusal instanceof TableTooLargeError)) throw refusal;
    return { ok: false, problems: [{ code: 'too-large' }] };
  }
  const isHeading = (row: readonly string[]) => row.every((cell) => wholeNumber(cell) === undefined);
  const first = rows.findIndex((row) => !isHeading(row));
  if (first < 0 || rows.length - first < LEAST_ROWS)
    return { ok: false, problems: [{ code: 'no-rows', least: LEAST_ROWS }] };
  const unit = first > 0 ? unitOf(rows[first - 1][0] ?? '') : 1;
  const problems: RecordProblem[] = [];
  const times: number[] = [];
  const samples: number[] = [];
  rows.slice(first).forEach((row, i) => {
    const [time, volts] = [wholeNumber(row[0] ?? ''), wholeNumber(row[1] ?? '')];
    if (time === undefined || volts === undefined)
      problems.push({ code: 'two-numbers', row: first + i + 1, given: row.slice(0, 2).join(' ').slice(0, 40) });
    else {
      times.push(time * unit);
      samples.push(volts);
    }
  });
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  const step = (times[times.length - 1] - times[0]) / (times.length - 1);
  const uneven = times.findIndex((t, i) => !(Math.abs(t - times[0] - i * step) <= UNEVEN * step));
  if (uneven >= 0 || !(step > 0))
    return { ok: false, problems: [{ code: 'time-not-even', row: first + Math.max(uneven, 0) + 1 }] };
  return { ok: true, sampleRate: 1 / step, samples };
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
