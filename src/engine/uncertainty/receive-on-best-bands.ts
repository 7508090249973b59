import type { FieldOptions } from '../reception/path/field.ts';
import { bandsAsReceived } from '../reception/path/receive-bands.ts';
import { turnSwitch } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import type { RangedReception } from './ranged-reception.ts';
import { receiveRanged } from './receive-ranged.ts';

/** Every station of a set with a band switch as received on its best band. */
export interface ReceivedOnBestBands extends Pick<RangedReception, 'stations' | 'best'> {
  /** Names of bands by station, undefined where none reaches it; left out for a set without a band switch. */
  readonly bands?: readonly (string | undefined)[];
}

/**
 * Every station on the band that receives it best; one that no band reaches as the set stands.
 * @param set as read, its switch on any band
 * @param when time and coastline
 * @param standing the reception of the set as it stands, where it is there already
 * @returns medians with 90 % ranges; that of the set as it stands where it has no band switch
 * @throws RangeError for parts that cannot be built
 */
export function receiveOnBestBands(
  set: SetDescription,
  when: FieldOptions = {},
  standing: RangedReception = receiveRanged(set, when),
): ReceivedOnBestBands {
  if (!set.bands) return standing;
  const receptions = set.bands.map((_, i) => {
    const turned = turnSwitch(set, i);
    return turned === set ? standing : receiveRanged(turned, when);
  });
  const { bands, bestOf, best } = bandsAsReceived(set, receptions);
  return {
    stations: bestOf.map((band, i) => (band === undefined ? standing : receptions[band]).stations[i]),
    best,
    bands: bestOf.map((band) => (band === undefined ? undefined : bands[band].name)),
  };
}
