import { expect, it } from 'vitest';
import { type LogEntry, listeningCalendar, type PlacedEntry } from '../../../engine/index.ts';
import { bestHeard, calendarEntries, logColumnsOf } from './log-columns.ts';

const placed = (
  time: string,
  heard: LogEntry['heard'],
  light: PlacedEntry['light'],
  station?: number,
): PlacedEntry => ({
  entry: { time: new Date(time), heard, row: 2, cells: {}, localHour: 0 } as LogEntry,
  light,
  station,
});

const ENTRIES = [
  placed('2026-01-03T12:30Z', 'faint', 'day', 0),
  placed('2026-01-03T22:00Z', 'comfortable', 'night', 0),
  placed('2026-06-30T23:15Z', 'masked', 'night', 2),
  placed('2026-06-30T23:45Z', 'loud', 'night'),
];
const calendar = listeningCalendar(ENTRIES, undefined);
const columns = logColumnsOf(ENTRIES, calendar);

it('columns give back the calendar, of all entries or of one station', () => {
  const plain = calendar.entries.map(({ day, hour, heard }) => ({ day, hour, heard }));
  expect(calendarEntries(columns)).toEqual(plain);
  expect(calendarEntries(columns, 0)).toEqual(plain.slice(0, 2));
});

it('of each station the best is known, by day, by night or at any time', () => {
  expect([...bestHeard(columns, 'any')]).toEqual([
    [0, 'comfortable'],
    [2, 'masked'],
  ]);
  expect([...bestHeard(columns, 'day')]).toEqual([[0, 'faint']]);
});
