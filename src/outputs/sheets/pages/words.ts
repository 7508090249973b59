import { textWidth, wrap } from '../../scene/text-width.ts';
import { printable } from '../../words/printable.ts';

export { kHz } from '../../words/figures.ts';
export { printable };

/** Break into lines of at most a width, at spaces, and within a word where there is no other way. */
export function fold(words: string, size: number, room: number, bold = false): string[] {
  // `wrap` measures the ordinary face; the bold one is 12 % wider.
  const width = bold ? room / 1.12 : room;
  return wrap(printable(words), size, width).flatMap((row) => {
    if (textWidth(row, size) <= width) return [row];
    const lines: string[] = [];
    let line = '';
    for (const letter of row) {
      if (line && textWidth(line + letter, size) > width) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
    return [...lines, line];
  });
}
