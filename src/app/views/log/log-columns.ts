import {
  type CalendarEntry,
  HEARD,
  type HeardAs,
  LIGHTS,
  type Light,
  type ListeningCalendar,
  type PlacedEntry,
} from '../../../engine/index.ts';

/** A long log as columns of figures, which a worker hands over at once. */
export interface LogColumns {
  /** Of the year, as in a `CalendarEntry`. */
  readonly day: Uint16Array<ArrayBuffer>;
  /** UTC, 0 to 24. */
  readonly hour: Float32Array<ArrayBuffer>;
  /** Place in `HEARD`. */
  readonly heard: Uint8Array<ArrayBuffer>;
  /** Place in `LIGHTS`. */
  readonly light: Uint8Array<ArrayBuffer>;
  /** Place in the list of stations; −1: none of the place. */
  readonly station: Int16Array<ArrayBuffer>;
}

/** @param calendar of the same entries */
export const logColumnsOf = (
  entries: readonly PlacedEntry[],
  calendar: Pick<ListeningCalendar, 'entries'>,
): LogColumns => ({
  day: Uint16Array.from(calendar.entries, ({ day }) => day),
  hour: Float32Array.from(calendar.entries, ({ hour }) => hour),
  heard: Uint8Array.from(entries, ({ entry }) => HEARD.indexOf(entry.heard)),
  light: Uint8Array.from(entries, ({ light }) => LIGHTS.indexOf(light)),
  station: Int16Array.from(entries, ({ station = -1 }) => station),
});

/** @param station only its entries; undefined: all */
export function calendarEntries({ day, hour, heard, station: of }: LogColumns, station?: number): CalendarEntry[] {
  const entries: CalendarEntry[] = [];
  for (let i = 0; i < day.length; i++)
    if (station === undefined || of[i] === station)
      entries.push({ day: day[i], hour: hour[i], heard: HEARD[heard[i]] });
  return entries;
}

/** How well each station was heard at best, by its place in the list; of one that nobody listened for nothing is known. */
export function bestHeard({ heard, light: lights, station }: LogColumns, light: Light | 'any'): Map<number, HeardAs> {
  const best = new Map<number, number>();
  const only = light === 'any' ? undefined : LIGHTS.indexOf(light);
  for (let i = 0; i < heard.length; i++) {
    if (station[i] < 0 || (only !== undefined && lights[i] !== only)) continue;
    best.set(station[i], Math.min(best.get(station[i]) ?? heard[i], heard[i]));
  }
  return new Map([...best].map(([index, rank]) => [index, HEARD[rank]]));
}
