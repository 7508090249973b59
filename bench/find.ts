import { readFileSync } from 'node:fs';
import { findSets } from '../src/engine/find/find.ts';
import { readBox } from '../src/engine/find/read-box.ts';
import { type FindQuestion, findSpace, findWorker, setsSpanned } from '../src/engine/find/tasks.ts';
import { turnsSpace } from '../src/engine/find/turns-space.ts';
import { once } from '../src/engine/numerics/lazily.ts';
import { readValue } from '../src/engine/set/read.ts';
import { eachOf } from '../test/support/each-set-of.ts';
import type { Measurement } from './bench.ts';

/** Numbers from 0 to 1 from a seed, the same on every machine. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A box that spans about so many sets, and ten stations to be heard: made from a seed. */
function largeQuestion(seed: number, sets: number): FindQuestion {
  const next = random(seed);
  const whole = (from: number, to: number): number => Math.round(from + (to - from) * next());
  const tube = () => ({
    former: { kind: 'tube' as const, diameter: `${whole(50, 110)} mm`, length: `${whole(90, 140)} mm` },
  });
  const reel = (size: string) => ({
    wire: { size, covering: 'enamel' as const },
    length: `${whole(25, 60)} m`,
  });
  const parts = {
    format: 'faintwave-box/1' as const,
    name: 'A large box',
    formers: [tube(), tube()],
    wires: [reel('0.4 mm'), reel('0.6 mm')],
    capacitors: [
      { capacitor: { kind: 'variable', maximum: `${whole(280, 520)} pF` } },
      { capacitor: { kind: 'fixed', capacitance: '100 pF' } },
    ],
    detectors: [{ detector: { kind: 'galena' } }, { detector: { kind: 'germanium' } }],
    loads: [{ load: { kind: 'phones', resistance: '4 kΩ' } }],
    aerials: [{ aerial: { kind: 'inverted-L', height: `${whole(5, 9)} m`, length: `${whole(12, 25)} m` } }],
    earths: [{ earth: { kind: 'rod', length: '1 m' } }],
  };
  const boxes = Array.from({ length: 50 }, (_, i) => {
    const read = readBox(JSON.stringify({ ...parts, limits: { tapEvery: i + 1 } }));
    if (!read.ok) throw new Error('the box does not read');
    return { read, spanned: setsSpanned(read.box, findSpace(read.box)) };
  });
  const far = ({ spanned }: { spanned: number }): number => Math.abs(Math.log(spanned / sets));
  const { read: box } = boxes.reduce((best, one) => (far(one) < far(best) ? one : best));
  const place = {
    name: 'Ten stations',
    stations: Array.from({ length: 10 }, (_, i) => ({
      name: `Station ${i + 1}`,
      frequency: `${549 + 108 * i} kHz`,
      fieldStrength: `${whole(1, 30)} mV/m`,
      programme: 'speech' as const,
    })),
  };
  const wants = [{ kind: 'loudest' as const, station: 'Station 4' }, { kind: 'most stations' as const }];
  const set = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const read = readValue({ ...set, place, wants });
  if (!read.ok) throw new Error('the place does not read');
  return {
    box: box.box,
    written: box.written,
    at: { place, wants },
    read: { place: read.set.place, ear: read.set.ear, wants: read.set.wants! },
  };
}

/** Searches it with one thread, once for all that is measured of it. */
const search = once(async () => {
  const asked = largeQuestion(1, 1e6);
  const begun = performance.now();
  let first = Number.NaN;
  let memory = 0;
  const work = findWorker(asked, {});
  const { counts } = await findSets(asked, {
    work(task) {
      const answer = work(task);
      memory = Math.max(memory, process.memoryUsage.rss());
      return answer;
    },
    found() {
      if (Number.isNaN(first)) first = performance.now() - begun;
    },
  });
  return { counts, seconds: (performance.now() - begun) / 1e3, first: first / 1e3, memory };
});

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
  {
    name: 'full receptions, two stations wanted',
    unit: 'set',
    run: () => work({ do: 'receive', candidates: fewTapped }).valued,
  },
  {
    name: 'about 1,000,000 sets and ten stations: sets of the box',
    unit: 'sets',
    measure: async () => (await search()).counts.spanned,
  },
  {
    name: 'sets of it not tried',
    unit: 'sets',
    measure: async () => (await search()).counts.untried,
  },
  {
    name: 'the whole search of it, one thread',
    unit: 's',
    measure: async () => (await search()).seconds,
    goal: { atMost: 60 },
  },
  {
    name: 'until its first answers, one thread',
    unit: 's',
    measure: async () => (await search()).first,
    goal: { atMost: 4 },
  },
  {
    name: 'valued or ruled out, or received, in that time',
    unit: 'sets/s',
    measure: async () => {
      const { counts, seconds } = await search();
      return (counts.valued + counts.ruledOut + counts.received) / seconds;
    },
  },
  {
    name: 'most memory of the search, with all of the bench',
    unit: 'MB',
    measure: async () => (await search()).memory / 1e6,
    goal: { atMost: 500 },
  },
];
