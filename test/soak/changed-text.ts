import fc from 'fast-check';
import { NASTY_TEXTS, nastyQuantity } from './nasty.ts';

const HOW = ['insert', 'remove', 'replace', 'repeat', 'cut', 'swap lines'] as const;

/** A few changes to a text, of the sort that editors, mail and broken disks make. @param tokens of its format */
export const changedText = (bases: fc.Arbitrary<string>, tokens: readonly string[]): fc.Arbitrary<string> => {
  const token = fc.oneof(
    fc.constantFrom(...tokens),
    fc.constantFrom(
      ...NASTY_TEXTS,
      '\n',
      '\r',
      '\r\n',
      '\t',
      ',',
      ';',
      '"',
      '""',
      '{',
      '}',
      '[',
      ']',
      ':',
      '#',
      '!',
      '\\',
    ),
    nastyQuantity,
    fc.string({ maxLength: 4 }),
  );
  const change = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.nat(20),
    how: fc.constantFrom(...HOW),
    token,
  });
  return fc.tuple(bases, fc.array(change, { maxLength: 6 })).map(([base, changes]) =>
    changes.reduce((text, { at, length, how, token: put }) => {
      const from = Math.floor(at * text.length);
      const [before, piece, after] = [text.slice(0, from), text.slice(from, from + length), text.slice(from + length)];
      if (how === 'insert') return before + put + piece + after;
      if (how === 'remove') return before + after;
      if (how === 'replace') return before + put + after;
      if (how === 'repeat') return before + piece.repeat(3) + after;
      if (how === 'cut') return before;
      const lines = text.split('\n');
      const k = Math.floor(at * lines.length);
      [lines[k], lines[length % lines.length]] = [lines[length % lines.length], lines[k]];
      return lines.join('\n');
    }, base),
  );
};
