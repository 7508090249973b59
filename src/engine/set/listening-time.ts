import type { PlaceDescription } from './place.ts';

/** Day or night everywhere, or a moment: then the sun at the middle of each path decides. */
export type TimeOfDay = 'day' | 'night' | Date;

/** The sun's height at a date and hour differs by less than half a degree from year to year: any year serves. */
const YEAR = 2026;
const MIDDLE_OF_MONTH = 15;
const MS_PER_HOUR = 3.6e6;

/**
 * When one listens at a place, as its description says; by day where it says nothing.
 * @param options the place as described
 * @returns "day", "night", or a moment
 */
export function listeningTime({ listening = 'day' }: Pick<PlaceDescription, 'listening'>): TimeOfDay {
  if (typeof listening === 'string') return listening;
  return new Date(Date.UTC(YEAR, listening.month - 1, MIDDLE_OF_MONTH) + listening.hour * MS_PER_HOUR);
}
