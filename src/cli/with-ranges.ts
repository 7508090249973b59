import {
  type FieldOptions,
  type RangedReception,
  type Reception,
  rangedReception,
  type SetDescription,
  setCircuit,
  uncertaintyOf,
} from '../engine/index.ts';

/** Of more stations than this only those received best have ranges: each takes some 25 evaluations. */
const MOST_RANGED = 40;

/**
 * Stations whose ranges are given where all are asked for.
 * @param also index of one that is asked for in any case.
 */
export const stationsWithRanges = ({ best }: Reception, also?: number): readonly number[] => [
  ...new Set([...(also === undefined ? [] : [also]), ...best.slice(0, MOST_RANGED)]),
];

/**
 * A reception with the medians and 90 % ranges of all such sets beside the figures of some of its stations.
 * @param stations indices of those that are shown.
 */
export const withRanges = (
  set: SetDescription,
  reception: Reception,
  when: FieldOptions,
  stations: readonly number[],
): RangedReception => rangedReception(reception, uncertaintyOf(setCircuit(set), { ...when, stations }));
