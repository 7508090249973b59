import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { SetDescription } from '../set/description.ts';
import { readText } from '../set/read.ts';
import type { RangedReception } from '../uncertainty/ranged-reception.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { type LogAgainstPrediction, logAgainstPrediction } from './against-prediction.ts';
import { HEARD, type LogEntry } from './entry.ts';
import { readLog, withinLogSize } from './read-log.ts';
import { writeLog } from './write-log.ts';

const HEAD = 'time,station,frequency,pointer,heard';
const logOf = (...rows: string[]) => readLog([HEAD, ...rows].join('\n'));
const codesOf = (text: string) => readLog(text).problems.map(({ row, column, fact }) => [row, column, fact.code]);

function exampleSet(name: string): SetDescription {
  const read = readText(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error('the example is not read');
  return read.set;
}

describe('how long a log may be', () => {
  const entry = '2026-10-03 20:00Z,Quayside,,,quiet';
  const many = (count: number, row: string, end = '\n') => `${HEAD}${end}${`${row}${end}`.repeat(count)}`;

  it('counts rows as they are read: a remark of several lines is one, an empty line is none', () => {
    const remarks = `${HEAD},remark\n${`${entry},"one\ntwo\nthree"\n`.repeat(20_000)}`;
    expect(withinLogSize(remarks)).toBe(remarks);
    expect(readLog(remarks).entries).toHaveLength(20_000);
    const spaced = many(20_000, entry, '\r\n\r\n');
    expect(withinLogSize(spaced)).toBe(spaced);
    expect(readLog(spaced).entries).toHaveLength(20_000);
  });

  it.each(['\n', '\r', '\r\n'])('refuses what cannot be read again, whatever ends its lines: %j', (end) => {
    for (const [count, isRead] of [
      [49_999, true],
      [50_000, false],
    ] as const) {
      const text = many(count, entry, end);
      const outcome = (work: (text: string) => unknown) => {
        try {
          work(text);
          return true;
        } catch (error) {
          return (error as Error).name;
        }
      };
      expect(outcome(withinLogSize), `${count}`).toBe(outcome(readLog));
      expect(outcome(readLog) === true, `${count}`).toBe(isRead);
    }
  });
});

describe('reading a log', () => {
  it('takes columns in any order and case, further ones too, and bare numbers by the unit of the column', () => {
    const text = 'Heard;My note;Frequency [kHz];Time;Shunt\nQuiet;x;603;2026-10-03 20:00Z;270\n';
    expect(readLog(text)).toEqual({
      entries: [
        {
          cells: { heard: 'Quiet', frequency: '603', time: '2026-10-03 20:00Z', shunt: '270' },
          row: 2,
          time: new Date('2026-10-03T20:00Z'),
          localHour: 20,
          heard: 'quiet',
          frequency: 603e3,
          shunt: 270,
        },
      ],
      problems: [],
    });
  });

  it('takes times with any zone for the moments that they are', () => {
    const zones = [
      '2026-10-03T20:00Z',
      '2026-10-03 21:00+01:00',
      '2026-10-03T15:30:00-0430',
      '2026-10-03 20:00 UTC',
      '2026-10-03T20:00 UTC',
      '2026-10-03T21:00 +01:00',
    ];
    const { entries, problems } = logOf(...zones.map((time) => `${time},,603,,quiet`));
    expect(problems).toEqual([]);
    expect(entries.map(({ time }) => time.toISOString())).toEqual(zones.map(() => '2026-10-03T20:00:00.000Z'));
  });

  it('refuses a day that its month does not have', () => {
    expect(codesOf(`${HEAD}\n2026-02-30T20:00Z,,603,,quiet`)).toEqual([[2, 'time', 'no-time']]);
    expect(logOf('2028-02-29T20:00Z,,603,,quiet').problems).toEqual([]);
  });

  it('names each row and cell that it cannot take, and takes the others', () => {
    const rows = ['2026-10-03T20:00,,603,,quiet', 'yesterday,,603,,quiet', '2026-10-03T20:00Z,,603,,great'];
    const rest = ['2026-10-03T20:00Z,,,,quiet', '2026-10-03T20:00Z,,six,74,quiet', '2026-10-03T20:00Z,,603,-3,quiet'];
    expect(codesOf([HEAD, ...rows, ...rest].join('\n'))).toEqual([
      [2, 'time', 'time-without-zone'],
      [3, 'time', 'no-time'],
      [4, 'heard', 'not-heard-word'],
      [5, undefined, 'heard-what'],
      [6, 'frequency', 'not-a-quantity'],
      [7, 'pointer', 'below-zero'],
    ]);
    expect(logOf(...rows, ...rest).entries.map(({ row }) => row)).toEqual([6, 7]);
  });

  it('says which column is missing, and that a log without any is none', () => {
    expect(codesOf('station,frequency\nA,603')).toEqual([
      [1, 'time', 'no-column'],
      [1, 'heard', 'no-column'],
    ]);
    expect(readLog('').entries).toEqual([]);
  });

  it('never throws on any text, and every entry is whole', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        for (const { time, heard } of readLog(`${HEAD}\n${text}`).entries) {
          expect(Number.isFinite(time.getTime())).toBe(true);
          expect(HEARD).toContain(heard);
        }
      }),
    );
  });
});

it('what is written is read as the same cells, whatever stands in them, without spaces at their ends', () => {
  const text = fc.string({ unit: 'grapheme', maxLength: 20 }).map((one) => `x${one}`.trim());
  const cells = fc.record({
    time: fc.constant('2026-10-03T20:05+01:00'),
    heard: fc.constantFrom(...HEARD),
    station: fc.oneof(text, fc.constantFrom('=1+1', "'=1", '-x', '"a", b', 'two\nlines')),
    remark: text,
  });
  fc.assert(
    fc.property(fc.array(cells, { maxLength: 5 }), (rows) => {
      expect(readLog(writeLog(rows)).entries.map((entry) => entry.cells)).toEqual(rows);
      expect(writeLog(readLog(writeLog(rows)).entries)).toBe(writeLog(rows));
    }),
  );
});

describe('a log beside the prediction', () => {
  const set = exampleSet('medium-wave-galena');
  const { stations, position } = set.place;
  const at = (name: string): number => stations.findIndex((one) => one.name === name);
  let answer: LogAgainstPrediction;
  let against: (entries: readonly LogEntry[]) => LogAgainstPrediction;
  beforeAll(() => {
    const receptions = { day: receiveRanged(set, { time: 'day' }), night: receiveRanged(set, { time: 'night' }) };
    against = (entries) => logAgainstPrediction(receptions, position, entries);
    const file = new URL('../../../examples/logs/first-evenings.csv', import.meta.url);
    const { entries, problems } = readLog(readFileSync(file, 'utf8'));
    expect(problems).toEqual([]);
    answer = against(entries);
  });

  it('takes entries for stations by name, by frequency, by pointer; what fits none is said', () => {
    const taken = Object.fromEntries(answer.entries.map(({ entry, station }) => [entry.row, station]));
    expect(taken[2]).toBe(at('Saltmarsh Radio'));
    expect(taken[3]).toBe(at('The Lantern Service'));
    expect(taken[9]).toBe(at('Radio Corvale'));
    expect(taken[10]).toBeUndefined();
    expect(answer.problems).toMatchObject([{ row: 10, column: 'frequency', fact: { code: 'unknown-station' } }]);
  });

  it('parts day from night by the sun at the place', () => {
    const light = Object.fromEntries(answer.entries.map(({ entry, light: one }) => [entry.row, one]));
    // In October the sun sets there at about 18:30 summer time.
    expect([light[2], light[4], light[6], light[13]]).toEqual(['day', 'night', 'day', 'night']);
  });

  it('does not guess a station from the pointer under a name that is not in the list', () => {
    const entries = ['Nowhere,102', ',102'].map((what) => `2026-11-01T12:00Z,${what.replace(',', ',,')},quiet`);
    const { entries: placed, problems } = against(logOf(...entries).entries);
    expect(placed.map(({ station }) => station)).toEqual([undefined, at('Saltmarsh Radio')]);
    expect(problems).toMatchObject([{ row: 2, column: 'station' }]);
  });

  it('goes by the clock of the entry where the place has no position', () => {
    const { entries } = logOf('2026-11-01T12:00+10:00,,603,,quiet', '2026-11-01T23:00-05:00,,603,,quiet');
    const stations = { stations: [] } as unknown as RangedReception;
    const placed = logAgainstPrediction({ day: stations, night: stations }, undefined, entries).entries;
    expect(placed.map(({ light }) => light)).toEqual(['day', 'night']);
  });

  it('counts how each station was heard', () => {
    const { lights } = answer.stations[at('Saltmarsh Radio')];
    expect(lights.day.heard).toEqual({ quiet: 2, comfortable: 1 });
    expect(lights.night.heard).toEqual({ comfortable: 1, quiet: 1 });
    expect(lights.day.last).toEqual(new Date('2026-10-18T16:05+01:00'));
    const all = answer.stations.flatMap((one) => Object.values(one.lights).flatMap((l) => Object.values(l.heard)));
    expect(all.reduce((sum, n) => sum + n, 0)).toBe(11);
  });

  it('points out a station that nine of ten such sets hear and that was at no time heard, once there are entries of enough days', () => {
    const silent = answer.stations.filter(({ lights }) =>
      Object.values(lights).some((one) => one.surprise === 'never-heard'),
    );
    expect(silent.map(({ name }) => name)).toEqual(['Tollgate Community']);
    const twoDays = answer.entries.map(({ entry }) => entry).filter(({ time }) => time < new Date('2026-10-10'));
    for (const { lights } of against(twoDays).stations)
      for (const one of Object.values(lights)) expect(one.surprise).toBeUndefined();
  });

  it('points out a station that hardly any such set hears and that was heard on several days', () => {
    const rows = [4, 5, 6].map((day) => `2026-11-0${day}T12:00Z,Harbour Light,,,faint`);
    const { lights } = against(logOf(...rows).entries).stations[at('Harbour Light')];
    expect(lights.day.surprise).toBe('heard-though-unlikely');
    expect(lights.night.surprise).toBeUndefined();
  });

  it('does not mind the order of its rows', () => {
    const entries = answer.entries.map(({ entry }) => entry);
    expect(against(entries.toReversed()).stations).toEqual(answer.stations);
  });
});
