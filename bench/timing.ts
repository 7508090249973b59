import type { Figure, Measurement, Outcome, Work } from './bench.ts';

const ROUND_s = 0.03;
/** Until the engine that runs it has compiled what it will: a page's worker has been warm since its first answer. */
const WARM_UP_s = 0.6;
const ROUNDS = 15;
const LONGEST_s = 4;

const now_s = () => performance.now() / 1000;

const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Runs the work `times` times; seconds per piece. */
async function round(work: Work, times: number): Promise<number> {
  let pieces = 0;
  const start = now_s();
  for (let i = 0; i < times; i++) {
    const done = work.run();
    pieces += (typeof done === 'object' ? await done : done) ?? 1;
  }
  return (now_s() - start) / pieces;
}

/** Warms the work up and finds how many runs make a round long enough to be timed. */
async function timesPerRound(work: Work): Promise<number> {
  const begun = now_s();
  do await round(work, 1);
  while (now_s() - begun < WARM_UP_s);
  for (let times = 1; ; times *= 2) {
    const start = now_s();
    await round(work, times);
    if (now_s() - start >= ROUND_s) return times;
  }
}

/** Times the works in turn, so that what else the machine does falls on all alike; seconds per piece by round. */
async function timeTogether(works: Work[]): Promise<number[][]> {
  const times: number[] = [];
  for (const work of works) times.push(await timesPerRound(work));
  const results: number[][] = works.map(() => []);
  const start = now_s();
  for (let i = 0; i < ROUNDS && (i < 3 || now_s() - start < LONGEST_s); i++) {
    for (const [index, work] of works.entries()) results[index].push(await round(work, times[index]));
  }
  return results;
}

async function timed(work: Work, all: Measurement[]): Promise<Outcome> {
  const other = all.find((each): each is Work => each.name === work.against && 'run' in each);
  if (work.against && !other) throw new Error(`"${work.name}" is set against "${work.against}", which is not here.`);
  const [own, others] = await timeTogether(other ? [work, other] : [work]);
  const seconds = median(own);
  const ratio = others && median(own.map((each, i) => others[i] / each));
  const { atMost_s = Infinity, atLeastPerSecond = 0, atLeastRatio = 0 } = work.goal ?? {};
  const met = seconds <= atMost_s && 1 / seconds >= atLeastPerSecond && (ratio ?? Infinity) >= atLeastRatio;
  return {
    name: work.name,
    unit: work.unit,
    seconds,
    perSecond: 1 / seconds,
    ratio,
    against: work.against,
    goalMet: work.goal ? met : undefined,
  };
}

/** How many times as fast a work is as another, both timed in turn. */
export async function timesAsFast(work: Work, other: Work): Promise<{ seconds: number; ratio: number }> {
  const [own, others] = await timeTogether([work, other]);
  return { seconds: median(own), ratio: median(own.map((each, i) => others[i] / each)) };
}

async function taken(figure: Figure): Promise<Outcome> {
  const value = await figure.measure();
  const { atMost = Infinity, atLeast = -Infinity } = figure.goal ?? {};
  const met = value <= atMost && value >= atLeast;
  return { name: figure.name, unit: figure.unit, value, goalMet: figure.goal ? met : undefined };
}

/** Carries out one of a file's measurements. */
export function carryOut(measurement: Measurement, all: Measurement[]): Promise<Outcome> {
  return 'run' in measurement ? timed(measurement, all) : taken(measurement);
}
