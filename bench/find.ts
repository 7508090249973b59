import { readFileSync } from 'node:fs';
import { readBox } from '../src/engine/find/read-box.ts';
import { type FindQuestion, findSpace, findWorker } from '../src/engine/find/tasks.ts';
import { eachOf, turnsSpace } from '../src/engine/find/turns-space.ts';
import { readValue } from '../src/engine/set/read.ts';
import type { Measurement } from './bench.ts';

/** The rich box at the place of the first example, two of its stations wanted. */
function questionOf(): FindQuestion {
  const set = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const wants = [0, 2].map((i) => ({ kind: 'loudest' as const, station: set.place.stations[i].name }));
  const [box, read] = [readBox(readFileSync('examples/boxes/rich.json', 'utf8')), readValue({ ...set, wants })];
  if (!box.ok || !read.ok) throw new Error('an example does not read');
  const { place, ear } = read.set;
  return {
    box: box.box,
    written: box.written,
    at: { place: set.place, wants },
    read: { place, ear, wants: read.set.wants! },
  };
}

const question = questionOf();
const work = findWorker(question, {});
const { fronts, backs } = findSpace(question.box);
const frontOf = (kind: string): number => fronts.findIndex(({ arrangement }) => arrangement === kind);
const [tapped, coupled] = [frontOf('tapped'), frontOf('coupled')];
/** Some of a front end's sets, each with another back end. */
const some = (front: number, count: number) =>
  [...eachOf(turnsSpace(question.box, fronts[front]).groups(1))]
    .filter((_, i, all) => i % Math.ceil(all.length / count) === 0)
    .map((turns, i) => ({ front, back: i % backs.length, turns, scores: [] }));
const everyBack = backs.map((_, back) => back);
const kept = { apart: 6, leading: 2 };
const [fewTapped, fewCoupled] = [some(tapped, 40), some(coupled, 40)];

/** Valuing sets of a box by the closed form, against receiving each. */
export const measurements: Measurement[] = [
  {
    name: 'sets received one by one, tapped',
    unit: 'set',
    run: () => work({ do: 'receive', candidates: fewTapped }).valued,
  },
  {
    name: 'sets valued by the closed form, tapped',
    unit: 'set',
    run: () => work({ do: 'estimate', fronts: [tapped], backs: [everyBack], grid: 1, kept }).valued,
    against: 'sets received one by one, tapped',
    goal: { atLeastPerSecond: 100_000 },
  },
  {
    name: 'sets received one by one, coupled',
    unit: 'set',
    run: () => work({ do: 'receive', candidates: fewCoupled }).valued,
  },
  {
    name: 'sets valued by the closed form, coupled',
    unit: 'set',
    run: () => work({ do: 'estimate', fronts: [coupled], backs: [everyBack], grid: 1, kept }).valued,
    against: 'sets received one by one, coupled',
    goal: { atLeastPerSecond: 10_000 },
  },
];
