import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { textWidth, wrap } from '../../scene/text-width.ts';
import { printable } from '../../words/printable.ts';

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

/** "3" and "turn" to "3 turns". */
export const count = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`;

/** A length of a part. */
export const mm = (metres: number): string => formatQuantity(metres, 'length', 3);

/** A frequency in kHz, without its unit. */
export const kHz = (frequency: number): string => formatNumber(frequency / 1e3, 5);

/** A resistance as a meter shows it: never in milliohms. */
export const ohms = (r: number): string =>
  Math.abs(r) < 1 ? `${formatNumber(r, 2)} Ω` : formatQuantity(r, 'resistance', 2);

/** A length of wire as one would cut it: up to the next 10 cm. */
export const cutLength = (metres: number): string => `${(Math.ceil(metres * 10 - 1e-6) / 10).toFixed(1)} m`;
