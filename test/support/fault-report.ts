import { readFileSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import { builtSet } from '../../src/engine/built/built-set.ts';
import type { PossibleCheck } from '../../src/engine/faults/checks.ts';
import { type PartFault, remedyClass } from '../../src/engine/faults/fault.ts';
import { type FaultModel, faultModel } from '../../src/engine/faults/fault-model.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { type Played, type PlayedPair, play, playPair } from './planted-faults.ts';
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

/** What a person goes on to measure after the search: every reading, every sign. */
const isMeasured = ({ check: { kind } }: PossibleCheck): boolean =>
  kind === 'ohms' || kind === 'volts' || kind === 'sign';

const classesOf = (faults: readonly PartFault[]): string => faults.map(remedyClass).sort().join();

function pairRow(name: string, all: readonly PlayedPair[]): string {
  const share = (some: readonly PlayedPair[], is: (one: PlayedPair) => boolean): string =>
    some.length > 0 ? `${((100 * some.filter(is).length) / some.length).toFixed(0)} %` : '–';
  const named = all.filter(({ diagnosis }) => diagnosis.pairs[0]?.probability > 0.5);
  const cells = [
    name,
    all.length,
    share(all, ({ faults, diagnosis: { causes } }) =>
      faults.map(remedyClass).includes(remedyClass(causes[0].faults[0].fault)),
    ),
    share(all, (one) => named.includes(one)),
    share(named, ({ faults, diagnosis }) => classesOf(diagnosis.pairs[0].faults) === classesOf(faults)),
  ];
  return `| ${cells.join(' | ')} |`;
}

/**
 * Plant faults in every example and in random sets, search for them, and write how often they were found.
 * @param options how many random sets, how many faults in each example; with parts of names, only those examples are
 * searched and their rows printed
 */
export function verifyFaults(options: readonly string[]): void {
  const [sets = SETS, ofExample = OF_EXAMPLE] = options.filter((one) => /^\d+$/.test(one)).map(Number);
  const wanted = options.filter((one) => !/^\d+$/.test(one));
  const byWidth = new Map<number, Played[]>(WIDTHS.map((wider) => [wider, []]));
  const rows: string[] = [];
  const searchedPairs: PlayedPair[] = [];
  const measuredPairs: PlayedPair[] = [];
  for (const name of examples()) {
    if (wanted.length > 0 && !wanted.some((part) => name.includes(part))) continue;
    console.error(name);
    const model = faultModel(builtSet(exampleSet(name)));
    for (let k = 0; k < ofExample / 2; k++) {
      searchedPairs.push(playPair(model, 1 + k, 1));
      measuredPairs.push(playPair(model, 1 + k, 1, isMeasured));
    }
    for (const wider of WIDTHS) {
      const all = played(model, ofExample, wider, 1);
      byWidth.get(wider)!.push(...all);
      rows.push(row(name, wider, all));
    }
  }
  const pairRows = [
    pairRow('as the search goes', searchedPairs),
    pairRow('and every other reading and sign', measuredPairs),
  ];
  if (wanted.length > 0) {
    console.log([...rows, '', ...pairRows].join('\n'));
    return;
  }
  const random = new Map<number, Played[]>(WIDTHS.map((wider) => [wider, []]));
  const { place } = exampleSet(PLACE);
  let passed = 0;
  fc.sample(someSet, { numRuns: sets, seed: 1 }).forEach((set, k) => {
    if (!set) return;
    const model = faultModel(builtSet({ ...set, place }), { cases: 16 });
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

Two faults of different parts, planted together in the examples; often the one hides the other. Of the searches for
single faults in the examples ${share(byWidth.get(1)!, ({ diagnosis }) => diagnosis.pairs[0]?.probability > 0.5)} named a pair as likelier than all else.

| answers | pairs | first cause is one of the two | a pair is named at over 50 % | and is the true one |
|---|---|---|---|---|
${pairRows.join('\n')}
`,
  );
}
