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
 * A reception with the medians and 90 % ranges of all such sets beside its figures.
 * @param also index of a station that is asked for.
 */
export function withRanges(
  set: SetDescription,
  reception: Reception,
  when: FieldOptions,
  also?: number,
): RangedReception {
  const asked = also === undefined ? [] : [also];
  const stations = [...new Set([...asked, ...reception.best.slice(0, MOST_RANGED)])];
  return rangedReception(reception, uncertaintyOf(setCircuit(set), { ...when, stations }));
}
