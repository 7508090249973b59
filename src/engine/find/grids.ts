import type { BoxDescription } from './box-schema.ts';
import type { FrontEnd } from './choices.ts';
import type { FindSpace } from './tasks.ts';
import { COARSEST_GRID, isCoilTuned, turnsSpace, WHOLE_GRID } from './turns-space.ts';

/** Front ends of one coil, or pair of coils, to be tried with one grid. */
export interface GridOfFronts {
  /** Places in the list of front ends. */
  readonly fronts: readonly number[];
  /** With each, places in the list of back ends. */
  readonly backs: readonly (readonly number[])[];
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
 * @param backsOf places of the back ends that are tried with a front end; a front end with none is left out
 */
export function gridsWithin(
  box: BoxDescription,
  { fronts }: FindSpace,
  budget: Budget,
  backsOf: (front: number) => readonly number[],
): GridOfFronts[] {
  const groups = byCoils(fronts).flatMap((all) => {
    const some = all.filter((front) => backsOf(front).length > 0);
    if (some.length === 0) return [];
    const backs = some.map(backsOf);
    const [first] = some;
    return { some, backs, cost: costOf(fronts[first]), space: turnsSpace(box, fronts[first]) };
  });
  const ofSets = new Set(groups.map(({ cost }) => cost).filter((cost) => cost !== 'coilTuned')).size || 1;
  const finest = new Map<keyof Budget, number>();
  for (const cost of ['coils', 'pairs', 'coilTuned'] as const) {
    const own = groups.filter((group) => group.cost === cost);
    let grid = WHOLE_GRID;
    for (; grid < COARSEST_GRID; grid++) {
      let [coils, sets] = [0, 0];
      for (const { some, backs, space } of own) {
        const size = space.size(grid);
        coils += size.coils * (cost === 'coilTuned' ? some.length : 1);
        sets += size.sets * backs.flat().length;
      }
      if (coils <= budget[cost] && (cost === 'coilTuned' || sets <= budget.sets / ofSets)) break;
    }
    finest.set(cost, grid);
  }
  return groups.map(({ some, backs, cost }) => ({ fronts: some, backs, grid: finest.get(cost)! }));
}
