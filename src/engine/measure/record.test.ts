import { describe, expect, test } from 'vitest';
import { readRecord } from './record.ts';

/** 60 samples, 0.5 µs apart. */
const samples = Array.from({ length: 60 }, (_, i) => Math.round(1e4 * Math.cos(i / 3)) / 1e4);
const seconds = samples.map((_, i) => ((i - 10) * 0.5e-6).toExponential(6));
const rows = (of: (i: number) => string): string => samples.map((_, i) => of(i)).join('\n');
const commas = (text: string): string => text.replaceAll('.', ',');

/** Tables as oscilloscopes write them. */
const TABLES: Readonly<Record<string, string>> = {
  'two columns': rows((i) => `${seconds[i]},${samples[i]}`),
  'a heading and a row of units': `x-axis,1\nsecond,Volt\n${rows((i) => `${seconds[i]},${samples[i]}`)}`,
  'what was set above': `Record Length,60\nSample Interval,5e-07\nVertical Units,V\nSecond,Volt\n${rows((i) => `${seconds[i]},${samples[i]}`)}`,
  'what was set in columns before': rows(
    (i) => `${['Record Length,60,', 'Sample Interval,5e-7,', 'Source,CH1,'][i] ?? ',,'},${seconds[i]},${samples[i]},`,
  ),
  'counted samples, and the step beside': `X,CH1,Start,Increment,\nSequence,Volt,-5e-6,5.0e-07\n${rows((i) => `${i},${samples[i]},`)}`,
  'decimal commas, units of their own row, an empty line': `Zeit;Kanal A\r\n(us);(V)\r\n\r\n${rows((i) => commas(`${(i * 0.5).toFixed(3)};${samples[i]}`)).replaceAll('\n', '\r\n')}`,
  'tabs and milliseconds': `t (ms)\tU (V)\n${rows((i) => `${(i * 0.0005).toFixed(4)}\t${samples[i]}`)}`,
  'spaces between, a comment of words above': `time volts\n${rows((i) => `${seconds[i]}  ${samples[i]}`)}`,
};

describe('a table of an oscilloscope', () => {
  for (const [what, text] of Object.entries(TABLES))
    test(what, () => {
      const read = readRecord(text);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      expect(read.sampleRate / 2e6).toBeCloseTo(1, 6);
      expect(Array.from(read.samples)).toEqual(samples);
    });

  test('names the line of what is no number, empty lines counted', () => {
    const text = `t (us),U\n\n${rows((i) => `${i * 0.5},${i === 20 ? 'overload' : samples[i]}`)}`;
    expect(readRecord(text)).toEqual({
      ok: false,
      problems: [{ code: 'two-numbers', row: 23, given: '10 overload' }],
    });
  });

  test('names a first row that is broken, and reads no heading as one', () => {
    const table = (at: number, row: string) =>
      `t (us),U\n${rows((i) => (i === at ? row : `${i * 0.5},${samples[i]}`))}`;
    const problemsOf = (text: string) => {
      const read = readRecord(text);
      return read.ok ? [] : read.problems;
    };
    expect(problemsOf(table(0, '0.0,overload'))).toEqual([{ code: 'two-numbers', row: 2, given: '0.0 overload' }]);
    expect(problemsOf(table(0, '0.O0,1.0'))).toEqual([{ code: 'two-numbers', row: 2, given: '0.O0 1.0' }]);
    expect(problemsOf(table(0, '0.0,1.0.2'))).toEqual([{ code: 'two-numbers', row: 2, given: '0.0 1.0.2' }]);
    // The row before it is good.
    expect(problemsOf(table(1, '0.5,--'))).toEqual([{ code: 'two-numbers', row: 3, given: '0.5 --' }]);
    expect(problemsOf(table(1, 'x,0.2'))).toEqual([{ code: 'two-numbers', row: 3, given: 'x 0.2' }]);
    expect(problemsOf(`Record Length,60\nModel 7,2\n${table(-1, '')}`)).toEqual([]);
  });

  test('refuses samples that are only counted, and times that jump', () => {
    expect(readRecord(`No,Volt\n${rows((i) => `${i},${samples[i]}`)}`)).toEqual({
      ok: false,
      problems: [{ code: 'no-time', row: 1 }],
    });
    expect(readRecord(rows((i) => `${i < 30 ? i : i + 9},${samples[i]}`))).toMatchObject({
      problems: [{ code: 'time-not-even' }],
    });
    expect(readRecord('t,U\n1,2\n2,3\n')).toEqual({ ok: false, problems: [{ code: 'no-rows', least: 16 }] });
  });
});
