import { standingBand } from '../../../engine/set/band-switch.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { bandSwitchSheetWords } from '../../words/index.ts';

/** Every sheet of a set with a band switch says which band it is of. */
export function namedOnBand(set: SetDescription): SetDescription {
  const band = standingBand(set);
  return band === undefined ? set : { ...set, name: bandSwitchSheetWords.setOnBand(set.name, set.bands![band].name) };
}
