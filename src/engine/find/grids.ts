import type { BoxDescription } from './box-schema.ts';
import type { FrontEnd } from './choices.ts';
import type { FindSpace } from './tasks.ts';
import { COARSEST_GRID, isCoilTuned, turnsSpace, WHOLE_GRID } from './turns-space.ts';

/** Front ends of one coil, or pair of coils, to be tried with one grid; places in the list of front ends. */
export interface GridOfFronts {
  readonly fronts: readonly number[];
  readonly grid: number;
}

/** How much may be tried: coils that are calculated, and sets that are valued or ruled out. */
export interface Budget {
  readonly coils: number;
  readonly pairs: number;
  /** Coils that tune: each is received in full. */
  readonly coilTuned: number;
  readonly sets: number;
}

/** Front ends in groups that share their coils, in the order of their first. */
function byCoils(fronts: readonly FrontEnd[]): number[][] {
  const groups = new Map<string, number[]>();
  for (const [i, { arrangement, winding, second, apart }] of fronts.entries()) {
    const key = [arrangement, winding.former, winding.reel, second?.former, second?.reel, apart].join(' ');
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  }
  return [...groups.values()];
}

/** Which part of a budget pays for the coils of a front end. */
const costOf = (front: FrontEnd): Exclude<keyof Budget, 'sets'> =>
  isCoilTuned(front) ? 'coilTuned' : front.second ? 'pairs' : 'coils';

/**
 * The finest grids that a budget allows: one for all front ends with a coil, one for those with two, and one for those
 * that a coil tunes.
 * @param box as read
 * @param space its front and back ends
 * @param budget what may be tried
 * @returns every front end in one entry
 */
export function gridsWithin(box: BoxDescription, { fronts, backs }: FindSpace, budget: Budget): GridOfFronts[] {
  const groups = byCoils(fronts).map((some) => ({ some, cost: costOf(fronts[some[0]]) }));
  const share = (cost: keyof Budget): number => {
    const kinds = new Set(groups.map((group) => group.cost).filter((one) => one !== 'coilTuned'));
    return cost === 'coilTuned' ? Number.POSITIVE_INFINITY : budget.sets / Math.max(1, kinds.size);
  };
  const finest = new Map<keyof Budget, number>();
  for (const cost of ['coils', 'pairs', 'coilTuned'] as const) {
    let grid = WHOLE_GRID;
    for (; grid < COARSEST_GRID; grid++) {
      let [coils, sets] = [0, 0];
      for (const { some, cost: own } of groups) {
        if (own !== cost) continue;
        const size = turnsSpace(box, fronts[some[0]]).size(grid);
        coils += size.coils * (cost === 'coilTuned' ? some.length : 1);
        sets += size.sets * some.length * backs.length;
      }
      if (coils <= budget[cost] && sets <= share(cost)) break;
    }
    finest.set(cost, grid);
  }
  return groups.map(({ some, cost }) => ({ fronts: some, grid: finest.get(cost)! }));
}
