import type { SoundReadings } from '../../../engine/faults/sound-readings.ts';
import { coilNamesOf } from '../../../engine/kinds/arrangements/coil-names.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';

/** The set with its band switch on a band, what it receives there and what a meter shows; with no switch, the set. */
export interface SetOnBand {
  /** Of a set with a band switch. */
  readonly band?: string;
  readonly set: SetDescription;
  readonly reception: Reception;
  readonly readings: SoundReadings;
}

/** The band that the set stands on comes first. */
export type SetOnBands = readonly [standing: SetOnBand, ...others: SetOnBand[]];

/**
 * The bands on which a coil is in circuit, or the one that the set stands on where it is in none.
 * @param isTuned whether it tunes the set there: such bands alone, where there are any
 */
export function bandsOfCoil(
  bands: SetOnBands,
  index: number,
  isTuned: (set: SetDescription, index: number) => boolean,
): SetOnBands {
  const tuned = bands.filter(({ set }) => isTuned(set, index));
  const used = bands.filter(({ set }) => coilNamesOf(set.arrangement).has(set.coils[index].name));
  const [first, ...rest] = tuned.length > 0 ? tuned : used;
  return first ? [first, ...rest] : [bands[0]];
}
