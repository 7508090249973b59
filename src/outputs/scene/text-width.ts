/**
 * Widths of letters in ems of an ordinary sans serif, a little generous: enough to keep labels apart without a font at
 * hand. Averages over DejaVu Sans and Liberation Sans; tested against both.
 */
const NARROW = /[ijlI'’|.,:;!ıf()[\]rt ]/;
const WIDE = /[mwMW@%—…]/;
const CAPITAL = /[A-ZΩΔΣÄÖÜ&+=<>−–±≈°µµ]/;

const widthOf = (letter: string): number =>
  NARROW.test(letter) ? 0.36 : WIDE.test(letter) ? 0.92 : CAPITAL.test(letter) ? 0.72 : letter > '\u2fff' ? 1 : 0.61;

export const textWidth = (words: string, size: number, bold = false): number => {
  let ems = 0;
  for (const letter of words) ems += widthOf(letter);
  return ems * size * (bold ? 1.08 : 1);
};

/** Cut to a width with an ellipsis. */
export function shorten(words: string, size: number, room: number): string {
  if (textWidth(words, size) <= room) return words;
  const letters = [...words];
  while (letters.length > 1 && textWidth(`${letters.join('').trimEnd()}…`, size) > room) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** Break into lines of at most a width, at spaces. */
export function wrap(words: string, size: number, room: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(/ +/)) {
    const last = lines[lines.length - 1];
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= room) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
