import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { inRoot } from '../../scripts/support/paths.mjs';
import { readValue } from '../../src/engine/set/read.ts';
import { type RangeCheck, rangeChecks, withThreeStations } from './range-checks.ts';

/** Written by `npm run verify:ranges`. */
export const REPORT = 'docs/accuracy.md';

/** What a width may be off by, as a ratio. */
export const WIDTH_OFF = 0.15;

/** Sets drawn plainly for the report: of 2,000 the median of a faint station varies by 0.6 dB from seed to seed, of these by half of it. */
const PLAIN_SETS = 8000;

/** Names of all examples. */
export const examples = (): string[] =>
  readdirSync(inRoot('examples')).flatMap((file) => (file.endsWith('.json') ? [file.slice(0, -5)] : []));

/** The ranges of an example's strongest, middle and faintest station against plain draws. */
export function checksOfExample(name: string, count?: number): readonly RangeCheck[] {
  const read = readValue(JSON.parse(readFileSync(inRoot(`examples/${name}.json`), 'utf8')));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problems)}`);
  return rangeChecks(withThreeStations(read.set), count);
}

const signed = (x: number): string =>
  x
    .toFixed(1)
    .replace(/^-(?=0\.0$)/, '')
    .replace('-', '−');
const three = ({ median, range: [low, high] }: RangeCheck['stated']): string =>
  [low, median, high].map(signed).join(' / ');
const most = (values: readonly number[]): number => Math.max(...values.map(Math.abs));

/** Rows of the table, one for each station of an example. */
function rowsOf(name: string, checks: readonly RangeCheck[]): string[] {
  const stations = [...new Set(checks.map(({ station }) => station))];
  return stations.map((station) => {
    const own = checks.filter((check) => check.station === station);
    const ear = own.find(({ figure }) => figure === 'soundPressureLevel')!;
    const others = own.filter((check) => check !== ear);
    const width = most(others.map((check) => check.width - 1));
    const cells = [
      name,
      station,
      three(ear.stated),
      three(ear.plain),
      ear.width.toFixed(2),
      signed(ear.median),
      `${(width * 100).toFixed(0)} %`,
      most(others.map((check) => check.median)).toFixed(1),
    ];
    return `| ${cells.join(' | ')} |`;
  });
}

/** The report on examples and their checks, as Markdown. */
function reportOn(checked: readonly (readonly [name: string, checks: readonly RangeCheck[]])[]): string {
  const all = checked.flatMap(([, checks]) => checks);
  const wide = all.filter(({ width }) => Math.abs(width - 1) > WIDTH_OFF).length;
  const rows = checked.flatMap(([name, checks]) => rowsOf(name, checks));
  return `# How well the ranges hold

Written by \`npm run verify:ranges\`; the method is in [physics/uncertainty.md](physics/uncertainty.md). For every example
the strongest, the middle and the faintest station at the ear: the stated 90 % range and median, against ${PLAIN_SETS.toLocaleString('en')} sets whose
inputs are all drawn at random, each followed through the whole engine and retuned. Levels at the ear are in dB SPL, 5th
percentile / median / 95th; *width* is the stated width over the plain one, *median* the stated median less the plain one,
dB. The last two columns are the worst of the other figures of the path: field strength, emf, voltages of tuned circuit,
detector and audio, direct voltage, power in the phones.

| example | station | stated | plain | width | median | others: width off by | median off by |
|---|---|---|---|---|---|---|---|
${rows.join('\n')}

Of ${all.length} ranges ${all.length - wide} have their width within ${WIDTH_OFF * 100} % of the plain one; the worst is off by ${(most(all.map((c) => c.width - 1)) * 100).toFixed(0)} %. Medians are
within ${most(all.map((c) => c.median)).toFixed(1)} dB.
`;
}

/**
 * Verifies the ranges of examples and writes the report where all were asked for, else prints it.
 * @param wanted parts of names; none for every example
 */
export function verifyRanges(wanted: readonly string[]): void {
  const names = examples().filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)));
  const report = reportOn(
    names.map((name) => {
      console.error(name);
      return [name, checksOfExample(name, PLAIN_SETS)];
    }),
  );
  if (wanted.length > 0) console.log(report);
  else writeFileSync(inRoot(REPORT), report);
}
