import type { SuspectReading } from './dial-fit.ts';

/** Beyond this share of its frequency a station is not what was tuned in. */
const NEAR = 0.03;

/**
 * The station that a misread position was of, by all other readings.
 * @param suspect as the fit of a dial has it
 * @param stations of the place, Hz
 * @returns the nearest one within 3 % or the 90 % range; undefined where none is
 */
export function stationOfSuspect<S extends { readonly frequency: number }>(
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
