import fc from 'fast-check';
import type { Effort } from '../src/engine/kinds/adjustment.ts';
import { bestTogether, type Followed, follow, wantingSet } from '../test/support/wanting-sets.ts';
import type { Figure } from './bench.ts';

const SETS = 200;
const STEPS = 5;
const SEED = 2026;

const sets = (): unknown[] => fc.sample(wantingSet, { numRuns: SETS, seed: SEED });

const known = new Map<Effort, readonly Followed[]>();
/** Random sets with random wants, the first suggestion followed five times; worked out once for all figures. */
function followed(effort: Effort): readonly Followed[] {
  const found = known.get(effort) ?? sets().map((set) => follow(set, STEPS, effort));
  known.set(effort, found);
  return found;
}

const worst = (effort: Effort): number => -Math.min(0, ...followed(effort).flatMap(({ leastGains }) => leastGains));
const withLeft = (effort: Effort): number => followed(effort).filter(({ left }) => left >= 1).length;

/**
 * What comes of following the first suggestion on 200 random sets with random wants: by knobs and taps, for which the
 * optimiser can search all adjustments together in a few minutes, and by changes of any effort.
 */
export const measurements: Figure[] = [
  {
    name: `the most that a suggestion of knobs or taps takes from any want, ${SETS} sets`,
    unit: 'dB',
    measure: () => worst('tap'),
    goal: { atMost: 0.1 + 1e-6 },
  },
  {
    name: `sets of ${SETS} on which 1 dB or more is left after ${STEPS} suggestions of knobs and taps`,
    unit: 'sets',
    measure: () => withLeft('tap'),
    goal: { atMost: 0 },
  },
  {
    name: `sets of ${SETS} on which all knobs and taps searched together gain 1 dB or more over that`,
    unit: 'sets',
    measure: () => sets().filter((set, i) => bestTogether(set, 'tap') - followed('tap')[i].gained >= 1).length,
    goal: { atMost: 0 },
  },
  {
    name: `the most that a suggestion of any effort takes from any want, ${SETS} sets`,
    unit: 'dB',
    measure: () => worst('outdoors'),
    goal: { atMost: 0.1 + 1e-6 },
  },
  {
    name: `sets of ${SETS} on which 1 dB or more is left after ${STEPS} suggestions of any effort`,
    unit: 'sets',
    measure: () => withLeft('outdoors'),
  },
];
