import fc from 'fast-check';
import { expect, it } from 'vitest';
import { folded, widthOf } from './fold.ts';
import { type Column, table } from './table.ts';

const word = fc.stringMatching(/^[a-zé0-9µ]{1,12}$/);
const words = fc.array(word, { minLength: 1, maxLength: 12 }).map((list) => list.join(' '));
type Row = readonly string[];
const columns: readonly Column<Row>[] = ['station', 'field', 'sound', 'beside it'].map((title, i) => ({
  title,
  text: (row) => row[i],
  align: i === 1 || i === 2 ? 'right' : 'left',
}));
const inOrder = (text: string): string[] => text.split(/[\s;]+/).filter(Boolean);

it('fits a terminal, and says every word', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(words, word, word, words), { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 40, max: 200 }),
      (rows, width) => {
        const said = table(columns, rows, width);
        const head = Math.max(...rows.map((row) => widthOf(row[0])));
        for (const line of said.split('\n')) expect(widthOf(line)).toBeLessThanOrEqual(Math.max(width, head));
        for (const cell of rows.flat()) for (const one of cell.split(' ')) expect(inOrder(said)).toContain(one);
      },
    ),
  );
});

it('is what it was where there is room', () => {
  expect(table(columns, [['Fells', '3 mV/m', '48 dB', 'clear']])).toBe(
    'station   field  sound  beside it\nFells    3 mV/m  48 dB  clear',
  );
});

it('folds the last column under itself, and tells rows one by one where even that is too narrow', () => {
  const row = ['Fells', '3 mV/m', '48 dB', 'another one behind it, a murmur'];
  expect(table(columns, [row], 50)).toBe(
    'station   field  sound  beside it\nFells    3 mV/m  48 dB  another one behind it, a\n                        murmur',
  );
  expect(table(columns, [row], 40)).toBe(
    'Fells\n  field 3 mV/m; sound 48 dB; beside it\n  another one behind it, a murmur',
  );
});

it('folds lines between words, as far in as they begin', () => {
  expect(folded('short\n• a longer line than fits', 20)).toBe('short\n• a longer line than\n  fits');
});
