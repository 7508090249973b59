import type { SuspectReading } from './dial-fit.ts';
import type { TakenMeasurement } from './readings.ts';

/** Beyond this share of its frequency a station is not what was tuned in. */
const NEAR = 0.03;

/**
 * The station that a misread position was of, by all other readings.
 * @param suspect as the fit of a dial has it
 * @param stations of the place, Hz
 * @returns the nearest one within 3 % or the 90 % range; undefined where none is
 */
function stationOfSuspect<S extends { readonly frequency: number }>(
  suspect: SuspectReading,
  stations: readonly S[],
): S | undefined {
  const { value, range } = suspect.frequencyThere;
  if (!Number.isFinite(value)) return undefined;
  const within = stations.filter(
    ({ frequency }) => Math.abs(frequency / value - 1) <= NEAR || (frequency >= range[0] && frequency <= range[1]),
  );
  return within.reduce<S | undefined>(
    (best, one) => (best && Math.abs(best.frequency - value) <= Math.abs(one.frequency - value) ? best : one),
    undefined,
  );
}

/** A misread station of a dial, and what stands where it was read. */
export interface SuspectPlace {
  /** Of the reading, from 0. */
  readonly index: number;
  /** Hz, as it was read. */
  readonly read: number;
  /** Hz, of what stands there; left out where no station can. */
  readonly frequency?: number;
  /** Name of the station of the place that stands there. */
  readonly station?: string;
}

/**
 * The readings of a dial that were left out as misread, each with the station that stands there by all others.
 * @param options the measurement as read
 * @param stations of the place
 * @returns in the order of the readings; none of any other kind
 */
export function suspectPlaces(
  { fit, values }: TakenMeasurement,
  stations: readonly { readonly name: string; readonly frequency: number }[],
): readonly SuspectPlace[] {
  const readings = values.readings as readonly { readonly frequency: number }[];
  return (fit?.suspects ?? []).map((suspect) => {
    const { value } = suspect.frequencyThere;
    const station = stationOfSuspect(suspect, stations);
    return {
      index: suspect.index,
      read: readings[suspect.index].frequency,
      ...(Number.isFinite(value) && { frequency: value }),
      ...(station && { station: station.name }),
    };
  });
}
