import { cpus } from 'node:os';
import type { Measurement, Outcome } from './bench.ts';
import { carryOut, timesAsFast } from './timing.ts';

const files = import.meta.glob<{ measurements?: Measurement[] }>([
  './*.ts',
  '!./bench.ts',
  '!./timing.ts',
  '!./run.ts',
]);

const threeFigures = (value: number) => (value >= 1000 ? Math.round(value).toString() : value.toPrecision(3));

function time(seconds: number): string {
  const [factor, unit] =
    seconds < 1e-6 ? [1e9, 'ns'] : seconds < 1e-3 ? [1e6, 'µs'] : seconds < 1 ? [1e3, 'ms'] : [1, 's'];
  return `${threeFigures(seconds * factor)} ${unit}`;
}

function rowOf(outcome: Outcome): string[] {
  const goal = outcome.goalMet === undefined ? '' : outcome.goalMet ? 'reached' : 'MISSED';
  if (outcome.seconds === undefined)
    return [outcome.name, `${threeFigures(outcome.value!)} ${outcome.unit}`, '', '', goal];
  const ratio = outcome.ratio === undefined ? '' : `${threeFigures(outcome.ratio)} × ${outcome.against}`;
  const each = `${time(outcome.seconds)} a ${outcome.unit}`;
  return [outcome.name, each, `${Math.round(outcome.perSecond!).toLocaleString('en-GB')} /s`, ratio, goal];
}

function print(rows: string[][]): void {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  for (const row of rows)
    console.log(
      row
        .map((cell, column) => cell.padEnd(widths[column]))
        .join('  ')
        .trimEnd(),
    );
}

/** Carries out the measurements of all files here whose name contains one of `wanted` (none: all) and prints a table. */
export async function bench(wanted: string[], json: boolean): Promise<void> {
  const outcomes: Outcome[] = [];
  for (const [path, load] of Object.entries(files)) {
    if (wanted.length > 0 && !wanted.some((word) => path.includes(word))) continue;
    const { measurements = [] } = await load();
    for (const measurement of measurements) {
      if (!json) console.error(`… ${measurement.name}`);
      outcomes.push(await carryOut(measurement, measurements));
    }
  }
  const machine = `Node ${process.versions.node}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}`;
  if (json) {
    console.log(JSON.stringify({ machine, outcomes }, undefined, 2));
    return;
  }
  console.log(machine);
  print([['what', 'time', 'work', 'times as fast', 'goal'], ...outcomes.map(rowOf)]);
}

/** Times the work of a file here in turn with work of the same names elsewhere, and prints how many times as fast it is. */
export async function compare(path: string, elsewhere: readonly Measurement[]): Promise<void> {
  const { measurements = [] } = await files[path]();
  const rows: string[][] = [];
  for (const work of measurements) {
    const other = elsewhere.find(({ name }) => name === work.name);
    if (!('run' in work) || !other || !('run' in other)) continue;
    console.error(`… ${work.name}`);
    const { seconds, ratio } = await timesAsFast(work, other);
    rows.push([work.name, `${time(seconds)} a ${work.unit}`, `${threeFigures(ratio)} ×`]);
  }
  print([['what', 'time', 'times as fast'], ...rows]);
}
