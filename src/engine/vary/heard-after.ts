import type { Edit } from '../kinds/adjustment.ts';
import { type HeardNames, heardChange } from './suggestion-order.ts';
import { isBuilt, type Trials } from './trial.ts';

/**
 * Which stations a change takes away, and which it adds: heard before and not after, and the other way.
 * @param trials of the set
 * @param edits the change
 * @param stopped a station that is meant to go, by its place in the list
 * @returns names; none where the change cannot be built
 */
export function heardAfter(trials: Trials, edits: readonly Edit[], stopped?: number): HeardNames {
  const after = trials.with(edits);
  return isBuilt(after) ? heardChange(trials.now, after, stopped).names : { lost: [], gained: [] };
}
