import {
  type FieldOptions,
  type RangedReception,
  receive,
  receiveRanged,
  type SetDescription,
} from '../engine/index.ts';
import { chooseStation } from './choose-station.ts';

/**
 * A set received, with medians and ranges of one station alone: those of each take some 30 evaluations.
 * @param station name or frequency of the station; undefined: the one received best
 * @returns the reception, and the index of the station; undefined where the place has none.
 * @throws InputError for a station that is not there.
 */
export function receiveOne(
  set: SetDescription,
  station: string | undefined,
  when: FieldOptions,
): { readonly reception: RangedReception; readonly index: number | undefined } {
  const index = station === undefined ? receive(set, when).best[0] : chooseStation(set.place.stations, station);
  return { reception: receiveRanged(set, { ...when, stations: index === undefined ? [] : [index] }), index };
}
