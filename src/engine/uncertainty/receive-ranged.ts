import { setCircuit } from '../built/set-circuit.ts';
import { receive } from '../reception/path/receive.ts';
import type { Reception } from '../reception/path/types.ts';
import type { SetDescription } from '../set/description.ts';
import { dialUncertaintyOf } from './ranged-dial.ts';
import { rangedParts } from './ranged-parts.ts';
import { type RangedReception, rangedReception } from './ranged-reception.ts';
import { type UncertaintyOptions, uncertaintyOf } from './uncertainty.ts';

/** Of more stations than this only those received best have ranges: each takes some 30 evaluations. */
const MOST_RANGED = 40;

/**
 * Stations whose ranges are given where all are asked for.
 * @param reception of the set
 * @param also indices of some that are asked for in any case.
 * @returns indices: those, and the 40 received best.
 */
export const stationsWithRanges = (reception: Reception, also: readonly number[] = []): readonly number[] => [
  ...new Set([...also, ...reception.best.slice(0, MOST_RANGED)]),
];

/**
 * What sets built like this one give at their place: figures are medians with 90 % ranges, verdicts follow from them.
 * @param set as read
 * @param options time and coastline, as of `receive`; `stations`, indices of those that have ranges, default those received
 * best; `also`, some that have them in any case
 * @returns a reception, its stations with ranges, chance and budget
 * @throws RangeError for parts that cannot be built; `readValue` names those beforehand.
 */
export function receiveRanged(
  set: SetDescription,
  { also, stations, ...options }: UncertaintyOptions & { readonly also?: readonly number[] } = {},
): RangedReception {
  const reception = receive(set, options);
  const ranged = stations ?? stationsWithRanges(reception, also);
  const circuit = setCircuit(set);
  return {
    ...rangedReception(reception, uncertaintyOf(circuit, { ...options, stations: ranged }), dialUncertaintyOf(circuit)),
    parts: rangedParts(circuit, reception.parts),
  };
}
