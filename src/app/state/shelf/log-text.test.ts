import { expect, it } from 'vitest';
import { type LogCells, readLog, TableTooLargeError, writeLog } from '../../../engine/index.ts';
import { joinedLogs, withEntry, withoutEntry } from './log-text.ts';

const entry = (station: string, remark = ''): LogCells => ({
  time: '2026-10-03T20:05+01:00',
  heard: 'quiet',
  station,
  ...(remark ? { remark } : {}),
});
const stations = (text: string): (string | undefined)[] => readLog(text).entries.map(({ station }) => station);

it('entries are added at the end, and taken out again alone, whatever is in them', () => {
  const one = withEntry(undefined, entry('Radio Alder', 'two\nlines, "quoted"'));
  const two = withEntry(one, entry('Radio Beech'));
  const three = withEntry(two, entry('Radio Beech'));
  expect(stations(three)).toEqual(['Radio Alder', 'Radio Beech', 'Radio Beech']);
  expect(withoutEntry(three, entry('Radio Beech'))).toBe(two);
  expect(stations(withoutEntry(three, entry('Radio Alder', 'two\nlines, "quoted"')))).toEqual([
    'Radio Beech',
    'Radio Beech',
  ]);
  expect(withoutEntry(three, entry('Radio Cedar'))).toBe(three);
});

it('two logs give each entry once, with columns in any order', () => {
  const here = withEntry(withEntry(undefined, entry('Radio Alder')), entry('Radio Beech'));
  const other = 'heard;station;time\nquiet;Radio Beech;2026-10-03T20:05+01:00\nfaint;Radio Cedar;2026-10-04T20:05Z\n';
  expect(stations(joinedLogs(here, other))).toEqual(['Radio Alder', 'Radio Beech', 'Radio Cedar']);
  expect(joinedLogs(joinedLogs(here, other), other)).toBe(joinedLogs(here, other));
});

it('a log takes no entry more than can be read again', () => {
  const line = writeLog([entry('Radio Alder')]).slice(writeLog([]).length);
  const fullButOne = writeLog([]) + line.repeat(49_998);
  const full = withEntry(fullButOne, entry('Radio Beech'));
  expect(readLog(full).entries).toHaveLength(49_999);
  expect(() => withEntry(full, entry('Radio Cedar'))).toThrow(TableTooLargeError);
  expect(() => withEntry(undefined, entry('Radio Cedar', 'x'.repeat(5_000_000)))).toThrow(TableTooLargeError);
});
