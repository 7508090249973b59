import { readFileSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import { builtSet } from '../../src/engine/built/built-set.ts';
import { type FaultModel, faultModel } from '../../src/engine/faults/fault-model.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { type Played, play } from './planted-faults.ts';
import { someSet } from './random-sets.ts';
import { examples } from './range-report.ts';

const REPORT = 'docs/fault-search.md';
/** Sets, faults planted in each random one, and in each example, unless said otherwise. */
const SETS = 500;
const EACH = 4;
const OF_EXAMPLE = 100;
/** Random sets are made without stations: they stand where this example's are heard. */
const PLACE = 'medium-wave-galena';
/** Deviations of the planted set against those believed. */
const WIDTHS = [1, 2];

const share = (all: readonly Played[], is: (one: Played) => boolean): string =>
  `${((100 * all.filter(is).length) / all.length).toFixed(0)} %`;

function row(name: string, wider: number, all: readonly Played[]): string {
  const checks = all.map((one) => one.checks).sort((a, b) => a - b);
  const cells = [
    name,
    wider,
    all.length,
    share(all, ({ rank }) => rank === 1),
    share(all, ({ rank }) => rank <= 3),
    checks[Math.floor(0.5 * checks.length)],
    checks[Math.floor(0.9 * checks.length)],
  ];
  return `| ${cells.join(' | ')} |`;
}

function calibration(all: readonly Played[]): string[] {
  const ends = [0, 0.5, 0.7, 0.85, 0.95, 1.000001];
  return ends.slice(1).flatMap((end, k) => {
    const some = all.filter(({ stated }) => stated >= ends[k] && stated < end);
    if (some.length === 0) return [];
    const stated = some.reduce((sum, one) => sum + one.stated, 0) / some.length;
    return `| ${some.length} | ${(100 * stated).toFixed(0)} % | ${share(some, ({ rank }) => rank === 1)} |`;
  });
}

function exampleSet(name: string): SetDescription {
  const read = readText(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
}

const played = (model: FaultModel, count: number, wider: number, seed: number): Played[] =>
  Array.from({ length: count }, (_, k) => play(model, seed + k, wider));

/**
 * Plant faults in every example and in random sets, search for them, and write how often they were found.
 * @param options how many random sets; how many faults in each example
 */
export function verifyFaults([sets = String(SETS), ofExample = String(OF_EXAMPLE)]: readonly string[]): void {
  const byWidth = new Map<number, Played[]>(WIDTHS.map((wider) => [wider, []]));
  const rows: string[] = [];
  for (const name of examples()) {
    const model = faultModel(builtSet(exampleSet(name)));
    for (const wider of WIDTHS) {
      const all = played(model, Number(ofExample), wider, 1);
      byWidth.get(wider)!.push(...all);
      rows.push(row(name, wider, all));
    }
  }
  const random = new Map<number, Played[]>(WIDTHS.map((wider) => [wider, []]));
  const { place } = exampleSet(PLACE);
  let passed = 0;
  fc.sample(someSet, { numRuns: Number(sets), seed: 1 }).forEach((set, k) => {
    if (!set) return;
    const model = faultModel(builtSet({ ...set, place }), { cases: 8 });
    if (!(Math.max(...model.sound.margins) > 10)) {
      passed++;
      return;
    }
    for (const wider of WIDTHS) random.get(wider)!.push(...played(model, EACH, wider, 1 + k));
  });
  for (const wider of WIDTHS)
    if (random.get(wider)!.length > 0) rows.push(row('random sets', wider, random.get(wider)!));
  writeFileSync(
    inRoot(REPORT),
    `# How often a planted fault is found

Written by \`npm run verify:faults\`. A fault is drawn by its weight and planted in a copy of the set's circuit, with
inductance, strays, earth, detector and levels drawn of their own: 1 or 2 times as widely as they are believed to spread.
A quarter of the description is left out, 3 % of all answers are random, 7 % of the checks asked for cannot be done, and
at most ten are taken. Causes that no check of the set tells apart count as one. Truth and search share one model of the
circuit: people and real sets cost some points more. Random sets stand at the place of ${PLACE} and are searched with half the
cases of the examples; ${passed} of them hear no station by 10 dB and were passed over.

| set | deviations | faults | first | among three | checks, median | 90 % |
|---|---|---|---|---|---|---|
${rows.join('\n')}

What was stated of the first cause, and how often it was right (examples, deviations as believed):

| searches | stated | right |
|---|---|---|
${calibration(byWidth.get(1)!).join('\n')}
`,
  );
}
