import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import { type BuiltSet, builtSet } from '../../src/engine/built/built-set.ts';
import type { PossibleCheck } from '../../src/engine/faults/checks.ts';
import { remediesOf, remedyClass } from '../../src/engine/faults/fault.ts';
import { type FaultModel, faultModel } from '../../src/engine/faults/fault-model.ts';
import { fieldsAtSite } from '../../src/engine/reception/path/field.ts';
import { receiver, receiveStation } from '../../src/engine/reception/path/receive-station.ts';
import { exampleSet } from './example-set.ts';
import { MOST_CHECKS, type PlayedPair, play, playPair } from './planted-faults.ts';
import { someSet } from './random-sets.ts';
import { examples } from './range-report.ts';

const REPORT = 'docs/fault-search.md';
/** Random sets that hear a station, faults planted in each of them, and in each example, unless said otherwise. */
const SETS = 104;
const EACH = 20;
const OF_EXAMPLE = 100;
/** So many random sets are made until enough of them hear a station. */
const MADE_FOR_EACH = 4;
/** Random sets are made without stations: they stand where this example's are heard. */
const PLACE = 'medium-wave-galena';
/** A station is heard that stands so far over the threshold, dB. */
const HEARD = 10;
/** Of the random sets: none of these was looked at while the search was made. */
const SEED = 4;
/** From one example to the next: with the same draws of what is not known, all would be as hard as each other. */
const SEEDS_OF_EXAMPLE = 1_000_000;
/** Random sets of one job. */
const TOGETHER = 7;
/** Deviations of the planted set against those believed, which share of the faults is planted so, and seeds of their own. */
const WIDTHS = [
  { wider: 1, part: 1, from: 0 },
  { wider: 2, part: 0.5, from: 500 },
];

/** One part of the work, done by itself: an example, or every so many-th of the random sets. */
export interface FaultJob {
  readonly example?: string;
  readonly random?: { readonly sets: number; readonly from: number; readonly to: number };
  /** Faults planted in each set. */
  readonly faults: number;
}

/** How one search went. */
interface Search {
  readonly wider: number;
  readonly rank: number;
  readonly remedyRank: number;
  readonly checks: number;
  readonly stated: number;
  readonly isPairNamed: boolean;
}

/** How one search for two faults went. */
interface PairSearch {
  readonly isMeasured: boolean;
  readonly isFirstOfTwo: boolean;
  readonly isNamed: boolean;
  readonly isRight: boolean;
}

/** What came of a job. */
export interface FaultsPlayed {
  readonly name: string;
  readonly searches: readonly Search[];
  readonly pairs: readonly PairSearch[];
  /** Random sets searched, and those that hear nothing. */
  readonly sets: number;
  readonly passed: number;
}

const RANDOM = 'random sets';

/**
 * All that there is to do.
 * @param options how many random sets, how many faults in each example; with parts of names, only those examples
 */
export function faultJobs(options: readonly string[]): readonly FaultJob[] {
  const [sets = SETS, ofExample = OF_EXAMPLE] = options.filter((one) => /^\d+$/.test(one)).map(Number);
  const wanted = namesAmong(options);
  const named = examples().filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)));
  const jobs = named.map((example): FaultJob => ({ example, faults: ofExample }));
  if (wanted.length > 0) return jobs;
  const chunks = Math.ceil(sets / TOGETHER);
  const stretches = Array.from({ length: chunks }, (_, k): FaultJob => {
    return { random: { sets, from: k * TOGETHER, to: Math.min(sets, (k + 1) * TOGETHER) }, faults: EACH };
  });
  return [...stretches, ...jobs];
}

const namesAmong = (options: readonly string[]): readonly string[] => options.filter((one) => !/^\d+$/.test(one));

/** Plant the faults of one job, search for them, and say how that went. */
export const faultsPlayed = ({ example, random, faults }: FaultJob): FaultsPlayed =>
  example === undefined ? inRandomSets(random!, faults) : inExample(example, faults);

function inExample(name: string, faults: number): FaultsPlayed {
  const model = faultModel(builtSet(exampleSet(name)));
  const seed = SEEDS_OF_EXAMPLE * (1 + examples().indexOf(name));
  const pairs = Array.from({ length: faults / 4 }, (_, k) => [
    pairSearch(playPair(model, seed + k, 1), false),
    pairSearch(playPair(model, seed + k, 1, isMeasured), true),
  ]).flat();
  return { name, searches: searchesOf(model, faults, seed), pairs, sets: 1, passed: 0 };
}

/** Random sets are made in the same order by whoever makes them: those that hear a station are counted from 0. */
function inRandomSets({ sets, from, to }: NonNullable<FaultJob['random']>, faults: number): FaultsPlayed {
  const { place } = exampleSet(PLACE);
  const searches: Search[] = [];
  let [heard, passed] = [0, 0];
  for (const [k, set] of fc.sample(someSet, { numRuns: MADE_FOR_EACH * sets, seed: SEED }).entries()) {
    if (!set || heard >= to) continue;
    const built = builtSet({ ...set, place });
    if (!hears(built)) {
      if (heard >= from) passed++;
      continue;
    }
    if (heard++ < from) continue;
    searches.push(...searchesOf(faultModel(built), faults, 1000 * (k + 1)));
  }
  return { name: RANDOM, searches, pairs: [], sets: Math.min(heard, to) - from, passed };
}

/** Whether a set hears any of its stations. */
function hears({ set, circuit }: BuiltSet): boolean {
  const ready = receiver(circuit, fieldsAtSite(set.place, {}));
  return set.place.stations.some((station) => {
    try {
      const { within, heard } = receiveStation(ready, station);
      return within && heard.margin > HEARD;
    } catch (problem) {
      if (problem instanceof RangeError) return false;
      throw problem;
    }
  });
}

const searchesOf = (model: FaultModel, faults: number, seed: number): readonly Search[] =>
  WIDTHS.flatMap(({ wider, part, from }) =>
    Array.from({ length: part * faults }, (_, k): Search => {
      const { diagnosis, ...search } = play(model, seed + from + k, wider);
      return { wider, ...search, isPairNamed: diagnosis.pairs[0]?.probability > 0.5 };
    }),
  );

/** What a person goes on to measure after the search: every reading, every sign. */
const isMeasured = ({ check: { kind } }: PossibleCheck): boolean =>
  kind === 'ohms' || kind === 'volts' || kind === 'sign';

function pairSearch({ faults, diagnosis: { causes, pairs } }: PlayedPair, isMeasured: boolean): PairSearch {
  const isNamed = pairs[0]?.probability > 0.5;
  return {
    isMeasured,
    isFirstOfTwo: faults.map(remedyClass).includes(remedyClass(causes[0].faults[0].fault)),
    isNamed,
    isRight: isNamed && remediesOf(pairs[0].faults) === remediesOf(faults),
  };
}

const share = <T>(all: readonly T[], is: (one: T) => boolean): string =>
  all.length > 0 ? `${((100 * all.filter(is).length) / all.length).toFixed(0)} %` : '–';

function row(name: string, wider: number, all: readonly Search[]): string {
  const checks = all.map((one) => one.checks).sort((a, b) => a - b);
  const cells = [
    name,
    wider,
    all.length,
    share(all, ({ rank }) => rank === 1),
    share(all, ({ rank }) => rank <= 3),
    share(all, ({ remedyRank }) => remedyRank === 1),
    share(all, ({ remedyRank }) => remedyRank <= 3),
    checks[Math.floor(0.5 * checks.length)],
    checks[Math.floor(0.9 * checks.length)],
  ];
  return `| ${cells.join(' | ')} |`;
}

/** Of the examples and of the random sets: what was stated of the first cause, and how often it was right. */
function calibration(name: string, all: readonly Search[]): string[] {
  const ends = [0, 0.5, 0.7, 0.85, 0.95, 1.000001];
  return ends.slice(1).flatMap((end, k) => {
    const some = all.filter(({ stated }) => stated >= ends[k] && stated < end);
    if (some.length === 0) return [];
    const stated = some.reduce((sum, one) => sum + one.stated, 0) / some.length;
    return `| ${name} | ${some.length} | ${(100 * stated).toFixed(0)} % | ${share(some, ({ rank }) => rank === 1)} |`;
  });
}

function pairRow(name: string, all: readonly PairSearch[]): string {
  const named = all.filter(({ isNamed }) => isNamed);
  const cells = [
    name,
    all.length,
    share(all, ({ isFirstOfTwo }) => isFirstOfTwo),
    share(all, ({ isNamed }) => isNamed),
    share(named, ({ isRight }) => isRight),
  ];
  return `| ${cells.join(' | ')} |`;
}

/**
 * Write how often planted faults were found; with parts of names among the options only print it.
 * @param options as of `faultJobs`
 * @param all what came of every job, in any order
 */
export function reportFaults(options: readonly string[], all: readonly FaultsPlayed[]): void {
  const names = [...new Set(all.map(({ name }) => name))].sort(
    (a, b) => Number(a === RANDOM) - Number(b === RANDOM) || (a < b ? -1 : 1),
  );
  const searchesOf = (is: (name: string) => boolean, wider: number): readonly Search[] =>
    all.filter(({ name }) => is(name)).flatMap(({ searches }) => searches.filter((one) => one.wider === wider));
  const rows = names.flatMap((name) =>
    WIDTHS.map(({ wider }) =>
      row(
        name,
        wider,
        searchesOf((one) => one === name, wider),
      ),
    ),
  );
  const pairs = all.flatMap((one) => one.pairs);
  const pairRows = [
    pairRow(
      'as the search goes',
      pairs.filter(({ isMeasured }) => !isMeasured),
    ),
    pairRow(
      'and every other reading and sign',
      pairs.filter(({ isMeasured }) => isMeasured),
    ),
  ];
  const isExample = (name: string): boolean => name !== RANDOM;
  const ofExamples = searchesOf(isExample, 1);
  const causesStated = [
    ...calibration('examples', ofExamples),
    ...calibration(
      RANDOM,
      searchesOf((name) => name === RANDOM, 1),
    ),
  ];
  if (namesAmong(options).length > 0) {
    console.log([...rows, '', ...causesStated, '', ...pairRows].join('\n'));
    return;
  }
  const random = all.filter(({ name }) => name === RANDOM);
  const sum = (of: (one: FaultsPlayed) => number): number => random.reduce((total, one) => total + of(one), 0);
  writeFileSync(
    inRoot(REPORT),
    `# How often a planted fault is found

Written by \`npm run ${['verify:faults', ...options].join(' ')}\`. A fault is drawn by its weight and planted in a copy of the set's
circuit, with inductance, loss and capacitance of the coil, strays, earth, detector and levels drawn of their own: 1 or 2
times as widely as they are believed to spread. The copy also has what the search draws nothing of: fixed parts by 5 %, the
capacitance of other coils by 20 %, a little less coupling, another slope, leakage and series resistance of the detector
(one deviation; 1 or 2 times).
A quarter of the description is left out, 3 % of all answers are random, 7 % of the checks asked for cannot be done, and
at most ${MOST_CHECKS} are taken. Truth and search share one solver: people and real sets cost some points more.

A cause is one fault at one place: of a winding, which stretch of it, and whether open or dry. Two causes count as one only
where somebody who makes every check that the set allows, and weighs all answers at once, tells them apart less often than
two times in three (chance is one in two), within the deviations that are believed. The remedy is the part and what is to be
done with it: several causes may have the same. The ${sum(({ sets }) => sets)} random sets stand at the place of ${PLACE};
${sum(({ passed }) => passed)} more hear no station by ${HEARD} dB and were passed over.

| set | deviations | faults | cause first | among three | remedy first | among three | checks, median | 90 % |
|---|---|---|---|---|---|---|---|---|
${rows.join('\n')}

What was stated of the first cause together with those that count as one with it, and how often the true one was among
them (deviations as believed):

| sets | searches | stated | right |
|---|---|---|---|
${causesStated.join('\n')}

Two faults of different parts, planted together in the examples; often the one hides the other. Of the searches for
single faults in the examples ${share(ofExamples, ({ isPairNamed }) => isPairNamed)} named a pair as likelier than all else.

| answers | pairs | first cause is one of the two | a pair is named at over 50 % | and is the true one |
|---|---|---|---|---|
${pairRows.join('\n')}
`,
  );
}
