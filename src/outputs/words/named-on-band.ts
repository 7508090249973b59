import { standingBand } from '../../engine/set/band-switch.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { ComparedSets } from '../../engine/vary/compare-sets.ts';
import { bandSwitchSheetWords } from './en/index.ts';

/** A set under a name that says on which band its switch stands; without a band switch the same set. */
export function namedOnBand(set: SetDescription): SetDescription {
  const band = standingBand(set);
  return band === undefined ? set : { ...set, name: bandSwitchSheetWords.setOnBand(set.name, set.bands![band].name) };
}

/** Compared sets, each under a name that says on which band its switch stands. */
export const comparedOnBands = ({ sets, moved }: ComparedSets): ComparedSets => ({
  sets: sets.map((one) => ({ ...one, set: namedOnBand(one.set) })),
  moved,
});
