import { LETTER_WIDTHS } from './letter-widths.ts';

const byLetter = (weight: keyof typeof LETTER_WIDTHS): ReadonlyMap<string, number> =>
  new Map(
    Object.entries(LETTER_WIDTHS[weight]).flatMap(([width, letters]) =>
      [...letters].map((letter): [string, number] => [letter, Number(width) / 1000]),
    ),
  );
const REGULAR = byLetter(400);
const SEMIBOLD = byLetter(600);

/** Of a letter that the face does not have, em: a full square from the scripts of East Asia on. */
const widthOfOther = (letter: string): number => (letter > '\u2e7f' ? 1 : 0.7);

/** How wide words are, without kerning, which makes them a little narrower. */
export const textWidth = (words: string, size: number, bold = false): number => {
  const widths = bold ? SEMIBOLD : REGULAR;
  let em = 0;
  for (const letter of words) em += widths.get(letter) ?? widthOfOther(letter);
  return em * size;
};

/** Cut to a width with an ellipsis. */
export function shorten(words: string, size: number, room: number): string {
  if (textWidth(words, size) <= room) return words;
  const letters = [...words];
  while (letters.length > 1 && textWidth(`${letters.join('').trimEnd()}…`, size) > room) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** Where a line may end: at spaces, but not between a number and its unit. */
const BREAK = / +(?!(?<=\d +)(?:[pnµmkM]?(?:m|F|H|V|A|Ω|s|W|Hz)|cm|dB|min|%)(?![\p{L}\d]))/u;

/** Break into lines of at most a width, at spaces. */
export function wrap(words: string, size: number, room: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(BREAK)) {
    const last = lines[lines.length - 1];
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= room) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
