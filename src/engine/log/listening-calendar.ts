import type { Position } from '../place/geodesy.ts';
import { nightHours } from '../place/sun.ts';
import type { PlacedEntry } from './against-prediction.ts';
import type { HeardAs } from './entry.ts';

/** One entry of a log by season and hour. */
export interface CalendarEntry {
  /** Of the year, from 0; 29 February is 59 and 1 March of any year 60. */
  readonly day: number;
  /** UTC, 0 to 24. */
  readonly hour: number;
  readonly heard: HeardAs;
  /** Place of the station in the list; undefined: none of the place. */
  readonly station?: number;
}

/** A log by season and hour, with the hours of darkness. */
export interface ListeningCalendar {
  readonly entries: readonly CalendarEntry[];
  /** When the sun is down, for days spread over the year; empty without a position. */
  readonly nights: readonly {
    readonly day: number;
    /** UTC, in order. */
    readonly hours: readonly (readonly [from: number, to: number])[];
  }[];
}

/** Days of a year in which every date has its place. */
export const DAYS_OF_YEAR = 366;
/** Days between two for which darkness is found. */
const STEP = 3;
const DAY_MS = 86_400_000;
/** A leap year, so that every date is in it. */
const LEAP_YEAR = 2024;

const dayOfYear = (time: Date): number =>
  (Date.UTC(LEAP_YEAR, time.getUTCMonth(), time.getUTCDate()) - Date.UTC(LEAP_YEAR, 0, 1)) / DAY_MS;

/**
 * When stations were heard: each entry by its day of the year and its hour, all years on one another, beside the hours of
 * darkness at the place.
 * @param entries of a log, placed
 * @param position of the place, degrees; undefined leaves darkness out
 * @returns entries in their order
 */
export const listeningCalendar = (
  entries: readonly PlacedEntry[],
  position: Position | undefined,
): ListeningCalendar => ({
  entries: entries.map(({ entry: { time, heard }, station }) => ({
    day: dayOfYear(time),
    hour: time.getUTCHours() + time.getUTCMinutes() / 60,
    heard,
    ...(station === undefined ? {} : { station }),
  })),
  nights: position
    ? Array.from({ length: DAYS_OF_YEAR / STEP }, (_, i) => {
        const day = i * STEP;
        return { day, hours: nightHours(new Date(Date.UTC(LEAP_YEAR, 0, 1 + day)), position) };
      })
    : [],
});
