import { describe, expect, test } from 'vitest';
import { readNetwork } from './touchstone.ts';

/** S11 of 50 Ω with a capacitor of 100 pF in series, at 1 to 5 MHz. */
const sweep = Array.from({ length: 5 }, (_, i) => {
  const f = (i + 1) * 1e6;
  const X = -1 / (2 * Math.PI * f * 100e-12);
  const [a, b] = [X * X, 100 * X].map((part) => part / (100 * 100 + X * X));
  return { f, re: a, im: b, size: Math.hypot(a, b), degrees: (Math.atan2(b, a) * 180) / Math.PI };
});
type Point = (typeof sweep)[number];
const table = (heading: string, row: (point: Point) => readonly (string | number)[], separator = ',') =>
  [heading, ...sweep.map((point) => row(point).join(separator))].join('\n');
const decimalComma = (x: number): string => String(x).replace('.', ',');

const TABLES: Readonly<Record<string, string>> = {
  'real and imaginary': table('Frequency (Hz),S11 re,S11 im', ({ f, re, im }) => [f, re, im]),
  'megahertz, decibels and phase, another column': table(
    'Freq(MHz),SWR,S11_dB,S11_Phase(deg)',
    ({ f, size, degrees }) => [f / 1e6, 3.2, 20 * Math.log10(size), degrees],
  ),
  'magnitude and angle, quoted, words above': `"Model";"none"; ;\n\n${table(
    '"frequency [kHz]";"|S11|";"angle"',
    ({ f, size, degrees }) => [f / 1e3, size, degrees].map((x) => `"${decimalComma(x)}"`),
    ';',
  )}\nEND`,
  'an end, comments': `!CSV\n${table('Freq. [Hz], Real, Imag', ({ f, re, im }) => [f, re, im])}\n`,
};

const problemsOf = (text: string) => {
  const read = readNetwork(text);
  return read.ok ? [] : read.problems;
};

describe('a table of an analyser with headings', () => {
  for (const [what, text] of Object.entries(TABLES))
    test(what, () => {
      const read = readNetwork(text);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      expect(read.ports).toBe(1);
      expect(read.reference).toBe(50);
      read.points.forEach(({ frequency, s: [s] }, i) => {
        expect(frequency / sweep[i].f).toBeCloseTo(1, 12);
        expect(s.re).toBeCloseTo(sweep[i].re, 9);
        expect(s.im).toBeCloseTo(sweep[i].im, 9);
      });
      expect(read.points).toHaveLength(5);
    });

  test('a cell that is no number is named by its line', () => {
    expect(problemsOf(TABLES['real and imaginary'].replace('\n3000000,', '\n3000000,?'))).toMatchObject([
      { code: 'numbers', line: 4 },
    ]);
    expect(problemsOf(TABLES['real and imaginary'].replace(/\n4000000,[^,]*,/, '\n4000000,'))).toMatchObject([
      { code: 'numbers', line: 5, given: '?' },
    ]);
  });

  test.each([
    ['no headings', table('1,0,0', ({ f, re, im }) => [f, re, im])],
    ['a transmission beside it', table('f,S11 re,S11 im,S21 re,S21 im', ({ f, re, im }) => [f, re, im, 0, 0])],
    ['radians', table('f,S11 mag,S11 phase (rad)', ({ f, re, im }) => [f, re, im])],
    ['two real parts', table('f,re,re,im', ({ f, re, im }) => [f, re, re, im])],
  ])('%s: one problem says what is expected', (_, text) => {
    expect(problemsOf(text)).toEqual([{ code: 'table-columns', line: 1 }]);
  });
});
