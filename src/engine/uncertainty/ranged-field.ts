import { fieldLevel } from '../place/levels.ts';
import type { Arrival, Estimate } from '../place/stations/arrival.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import type { PlaceDescription } from '../set/place.ts';
import { fromDecibels, type VoltsPerMetre } from '../units/quantities.ts';
import { rangedOf } from './draws.ts';
import { fieldDraws } from './field-draws.ts';

/** What arrives of a station, with the field as it is found at places like this one. */
export interface RangedArrival extends Omit<Arrival, 'total'> {
  /** The median, and its 90 % range; none where nothing arrives. */
  readonly total: Pick<Estimate, 'fieldStrength' | 'level'> & {
    readonly range?: readonly [low: VoltsPerMetre, high: VoltsPerMetre];
  };
}

/**
 * The same field strengths and ranges as the path of a set has at this place.
 * @param place with its stations
 * @param arrivals of these stations, in their order
 * @param options time, coast and memory, as the arrivals were asked for
 * @returns copies whose `total` is the median (V/m; dB(µV/m)) with its 90 % range
 */
export const rangedArrivals = (
  place: PlaceDescription,
  arrivals: readonly Arrival[],
  options: FieldOptions,
): RangedArrival[] =>
  arrivals.map((arrival, index) => {
    const field = fieldDraws({ place }, place.stations[index], options);
    if (!field) return arrival;
    const { fieldStrength } = arrival.total;
    const { median, range } = rangedOf(field.draws.map((dB) => fieldStrength * fromDecibels(dB)));
    return { ...arrival, total: { fieldStrength: median, level: fieldLevel(median), range } };
  });
