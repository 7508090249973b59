import { standingBand } from '../../engine/set/band-switch.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { bandSwitchSheetWords } from './en/index.ts';

/** A set under a name that says on which band its switch stands; without a band switch the same set. */
export function namedOnBand(set: SetDescription): SetDescription {
  const band = standingBand(set);
  return band === undefined ? set : { ...set, name: bandSwitchSheetWords.setOnBand(set.name, set.bands![band].name) };
}
