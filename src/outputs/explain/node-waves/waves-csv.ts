import { quotedField } from '../../tables/csv.ts';
import { nodeWaveTexts } from '../../words/index.ts';
import type { View } from '../model/view.ts';
import type { ShownWaves } from './shown-waves.ts';
import { columnsOf } from './trace.ts';

/** More lines no spreadsheet likes. */
const MOST_LINES = 100_000;

/**
 * The stretch shown as a plain table: every sample, or where those are too many the least and greatest of each of
 * `MOST_LINES` stretches. Time is counted from when the stations came on.
 * @param waves a run made ready
 * @param view stretch to write, s
 * @returns text of several lines
 */
export function nodeWavesCsv(waves: ShownWaves, view: View): string {
  const { interval, start } = waves;
  const first = Math.max(0, Math.ceil(view.from / interval - 1e-6));
  const last = Math.floor((view.from + view.span) / interval + 1e-6);
  const total = Math.min(waves.waves[0]?.kept.samples.length ?? 0, last + 1) - first;
  const each = total <= MOST_LINES;
  const names = waves.waves.flatMap(({ point, measure }) =>
    each
      ? [nodeWaveTexts.column(point, measure)]
      : [nodeWaveTexts.leastColumn(point, measure), nodeWaveTexts.greatestColumn(point, measure)],
  );
  const lines = [[nodeWaveTexts.timeColumn, ...names].map(quotedField).join(',')];
  const digits = (v: number) => (v === 0 ? '0' : Number(v.toPrecision(6)).toString());
  if (each) {
    for (let i = first; i < first + total; i++)
      lines.push(
        [Number((start + i * interval).toPrecision(12)), ...waves.waves.map((w) => digits(w.kept.samples[i]))].join(
          ',',
        ),
      );
  } else {
    const step = total / MOST_LINES;
    const columns = waves.waves.flatMap((w) => {
      const min = new Float64Array(MOST_LINES);
      const max = new Float64Array(MOST_LINES);
      columnsOf(w.kept, first, first + total, MOST_LINES, min, max);
      return [min, max];
    });
    for (let c = 0; c < MOST_LINES; c++)
      lines.push(
        [Number((start + (first + c * step) * interval).toPrecision(12)), ...columns.map((v) => digits(v[c]))].join(
          ',',
        ),
      );
  }
  return `${lines.join('\n')}\n`;
}
