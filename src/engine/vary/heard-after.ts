import type { Edit } from '../kinds/adjustment.ts';
import { heardChange } from './suggestion-order.ts';
import { isBuilt, type Trials } from './trial.ts';

/** Names of stations, as the list has them. */
export interface HeardAfter {
  readonly lost: readonly string[];
  readonly gained: readonly string[];
}

/**
 * Which stations a change takes away, and which it adds: heard before and not after, and the other way.
 * @param trials of the set
 * @param edits the change
 * @param stopped a station that is meant to go, by its place in the list
 * @returns names; none where the change cannot be built
 */
export function heardAfter(trials: Trials, edits: readonly Edit[], stopped?: number): HeardAfter {
  const after = trials.with(edits);
  if (!isBuilt(after)) return { lost: [], gained: [] };
  const { lost, gained } = heardChange(trials.now, after);
  const { stations } = trials.now.set.place;
  const named = (places: readonly number[]): string[] => places.map((place) => stations[place].name);
  return { lost: named(lost.filter((place) => place !== stopped)), gained: named(gained) };
}
