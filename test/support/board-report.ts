import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { type BoardScore, boardScore } from './board-score.ts';
import { someSet } from './random-sets.ts';

/** The examples by their files' names. */
export function exampleSets(): Map<string, SetDescription> {
  const files = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));
  return new Map(
    files.map((file) => {
      const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
      if (!read.ok) throw new Error(`${file} does not read`);
      return [file, read.set];
    }),
  );
}

/** Sets by chance, always the same. */
export const chanceSets = (count: number): SetDescription[] =>
  fc
    .sample(someSet, { numRuns: 2 * count, seed: 5 })
    .filter((set) => set !== undefined)
    .slice(0, count);

const scoreOf = (set: SetDescription): BoardScore => boardScore(boardLayout(set, boardParts(set)));

/** The table of `npm run score:boards`: examples one by one, then mean, 95 % and worst of sets by chance. */
export function printBoardScores(count: number): void {
  const rows: [string, BoardScore][] = [...exampleSets()].map(([file, set]) => [
    file.replace('.json', ''),
    scoreOf(set),
  ]);
  const sets = chanceSets(count);
  const parts = sets.map((set) => boardParts(set));
  const before = process.cpuUsage();
  const layouts = sets.map((set, i) => boardLayout(set, parts[i]));
  const each = process.cpuUsage(before).user / 1e3 / sets.length;
  const scores = layouts.map((layout) => boardScore(layout));
  const keys = Object.keys(scores[0]) as (keyof BoardScore)[];
  const overAll = (pick: (values: number[]) => number): BoardScore =>
    Object.fromEntries(keys.map((key) => [key, pick(scores.map((s) => s[key]).sort((a, b) => a - b))])) as never;
  rows.push(
    [`${count} by chance: mean`, overAll((v) => v.reduce((a, b) => a + b, 0) / v.length)],
    ['95 %', overAll((v) => v[Math.floor(0.95 * v.length)])],
    ['worst', overAll((v) => v[v.length - 1])],
  );
  console.table(Object.fromEntries(rows.map(([name, s]) => [name, rounded(s)])));
  console.log(`${each.toFixed(1)} ms of processor time a layout`);
}

const rounded = (score: BoardScore): object =>
  Object.fromEntries(Object.entries(score).map(([key, value]) => [key, Number(value.toFixed(2))]));
