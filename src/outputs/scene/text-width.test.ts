import { expect, test } from 'vitest';
import { textWidth, wrap } from './text-width.ts';

test('a line ends at spaces, but not between a number and its unit', () => {
  const words = 'Fix it 19.7 mm from the end, at 603 kHz and 4.7 kΩ; 5 minutes later 30 % are left';
  for (let room = 14; room < textWidth(words, 1); room += 0.5) {
    const lines = wrap(words, 1, room);
    expect(lines.join(' ')).toBe(words);
    for (const line of lines) {
      expect(textWidth(line, 1)).toBeLessThanOrEqual(room);
      expect(line).not.toMatch(/^(mm|kHz|kΩ|%)/);
    }
  }
  // What only begins like a unit is a word.
  expect(wrap('5 minutes', 1, 3)).toEqual(['5', 'minutes']);
});
