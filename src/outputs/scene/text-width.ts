/**
 * Advance widths of ! to ~ in hundredths of an em: DejaVu Sans, the widest face a page or sheet here is set in, so that
 * labels kept apart by it are apart in any other. Its bold is 12 % wider.
 */
const WIDTHS = [
  40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84,
  84, 53, 100, 68, 69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79, 60, 79, 69, 63, 61, 73, 68, 99, 69, 61, 69,
  39, 34, 39, 84, 50, 50, 61, 63, 55, 63, 62, 35, 63, 63, 28, 28, 58, 28, 97, 63, 61, 63, 63, 41, 52, 39, 63, 59, 82,
  59, 59, 52, 64, 34, 64, 84,
];
const OTHERS: Readonly<Record<string, number>> = {
  ' ': 32,
  '\u00a0': 32,
  '°': 50,
  µ: 64,
  Ω: 76,
  '−': 84,
  '–': 50,
  '—': 100,
  '…': 100,
  '’': 32,
  '·': 32,
  '≈': 84,
  '×': 84,
  '±': 84,
};

const widthOf = (letter: string): number =>
  WIDTHS[letter.charCodeAt(0) - 33] ?? OTHERS[letter] ?? (letter > '\u2e7f' ? 100 : 66);

/** How wide words are, a little generous. */
export const textWidth = (words: string, size: number, bold = false): number => {
  let hundredths = 0;
  for (const letter of words) hundredths += widthOf(letter);
  return (hundredths / 100) * size * (bold ? 1.12 : 1);
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
