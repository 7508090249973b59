import fc from 'fast-check';
import { type Followed, follow, wantingSet } from '../test/support/wanting-sets.ts';
import type { Figure } from './bench.ts';

const SETS = 200;
const STEPS = 5;
const SEED = 2026;

let known: readonly Followed[] | undefined;
/** Random sets with random wants, the first suggestion followed five times; worked out once for both figures. */
const followed = (): readonly Followed[] => {
  known ??= fc.sample(wantingSet, { numRuns: SETS, seed: SEED }).map((set) => follow(set, STEPS, 'tap'));
  return known;
};

/** What comes of following the first suggestion on 200 random sets with random wants. */
export const measurements: Figure[] = [
  {
    name: `the most that a suggestion takes from any want, ${SETS} sets`,
    unit: 'dB',
    measure: () => -Math.min(0, ...followed().flatMap(({ leastGains }) => leastGains)),
    goal: { atMost: 0.1 + 1e-6 },
  },
  {
    name: `sets of ${SETS} on which 1 dB or more is left after ${STEPS} suggestions`,
    unit: 'sets',
    measure: () => followed().filter(({ left }) => left >= 1).length,
    goal: { atMost: 0 },
  },
];
