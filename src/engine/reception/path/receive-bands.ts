import { turnSwitch } from '../../set/band-switch.ts';
import type { SetDescription } from '../../set/description.ts';
import type { Decibels, Hertz } from '../../units/quantities.ts';
import type { FieldOptions } from './field.ts';
import { crowding, receive } from './receive.ts';
import type { Dial, Reception, StationReception } from './types.ts';

/** One band of a set with a band switch, as received. */
export interface BandReceived {
  readonly name: string;
  /** What it covers. */
  readonly lowest: Hertz;
  readonly highest: Hertz;
  readonly dial: Dial;
  /** Figures of all coils, their Q at the station received best on this band or, without one, in its middle. */
  readonly coils: Reception['parts']['coils'];
}

/** A set with a band switch on each of its bands. */
export interface BandsReceived {
  /** In the order of the description; empty for a set without a band switch. */
  readonly bands: readonly BandReceived[];
  /** Of every station the place of the band in which it is received best; undefined where none reaches it. */
  readonly bestOf: readonly (number | undefined)[];
  /** Stations by their place in the list, best received first, each on its best band. */
  readonly best: readonly number[];
}

/**
 * Every band of a set with a band switch, and where each station is received best.
 * @param set as read, its switch on any band
 * @param options time and coastline; default the time the description says
 * @returns ranges (Hz) and dials of the bands, and of every station a band
 * @throws RangeError for parts that cannot be built; `readValue` names those beforehand
 */
export function receiveBands(set: SetDescription, options: FieldOptions = {}): BandsReceived {
  return bandsAsReceived(
    set,
    (set.bands ?? []).map((_, i) => receive(turnSwitch(set, i), options)),
  );
}

/**
 * The same of receptions that are there already.
 * @param set as read
 * @param receptions of all its bands, in their order, all by the same inputs
 */
export function bandsAsReceived(set: SetDescription, receptions: readonly Reception[]): BandsReceived {
  const worths = set.place.stations.map((_, station) => receptions.map(({ stations }) => worth(stations[station])));
  const highest = worths.map((of) => Math.max(...of.map((one) => one ?? Number.NEGATIVE_INFINITY)));
  return {
    bands: receptions.map(({ dial, parts }, i) => ({
      name: set.bands![i].name,
      lowest: dial.lowest,
      highest: dial.highest,
      dial,
      coils: parts.coils,
    })),
    bestOf: worths.map(bestBand),
    // Two of nothing differ by no number, and keep their order.
    best: [...worths.keys()].sort((a, b) => highest[b] - highest[a] || 0),
  };
}

/**
 * A set with its band switch on the band in which it receives a station best.
 * @param set as read, its switch on any band
 * @param station index in its place
 * @param options time and coastline
 * @returns the same object where the switch stands there already, no band reaches the station, or there is no switch
 * @throws RangeError for parts that cannot be built
 */
export function turnToBest(set: SetDescription, station: number, options: FieldOptions = {}): SetDescription {
  const best = set.bands && receiveBands(set, options).bestOf[station];
  return best === undefined ? set : turnSwitch(set, best);
}

/** The first of the highest; undefined where none is a number. */
const bestBand = (worths: readonly (Decibels | undefined)[]): number | undefined =>
  worths.reduce<number | undefined>(
    (best, one, i) => (one !== undefined && (best === undefined || one > worths[best]!) ? i : best),
    undefined,
  );

/** How well a station comes, by its margin over what can just be heard and its neighbours. */
const worth = (station: StationReception): Decibels | undefined =>
  station.dial && (station.margin ?? Number.NEGATIVE_INFINITY) + crowding(station);
