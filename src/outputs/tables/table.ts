import { safeLines, safeText } from '../../engine/units/safe-text.ts';
import { rowAsText } from '../words/index.ts';
import { widthOf, wordLines } from './fold.ts';

/** One column of a plain-text table. */
export interface Column<Row> {
  readonly title: string;
  readonly text: (row: Row) => string;
  readonly align?: 'left' | 'right';
}

/** Fewer characters than this in the last column are no line to read. */
const READABLE = 24;

/**
 * Columns padded to their widest cell, two spaces apart; the last left-aligned one is not padded. Where they are too wide
 * for the terminal the last one is folded, and where that is not enough every row becomes a few lines.
 */
export function table<Row>(columns: readonly Column<Row>[], rows: readonly Row[], width = Infinity): string {
  const cells = rows.map((row) => columns.map((c) => clean(c.text(row))));
  const titles = columns.map((c) => c.title);
  const widths = columns.map((_, i) => Math.max(...[titles, ...cells].map((line) => widthOf(line[i]))));
  const before = widths.slice(0, -1).reduce((sum, w) => sum + w + 2, 0);
  const last = columns.length - 1;
  if (before + widths[last] > width) {
    if (columns[last].align === 'right' || width - before < READABLE) return listed(titles, cells, width);
    widths[last] = width - before;
  }
  return [titles, ...cells]
    .flatMap((line) => {
      const [first, ...more] = wordLines(line[last], widths[last]);
      const row = [...line.slice(0, -1), first].map((cell, i) => {
        const room = ' '.repeat(Math.max(0, widths[i] - widthOf(cell)));
        return columns[i].align === 'right' ? room + cell : cell + room;
      });
      return [row.join('  ').trimEnd(), ...more.map((rest) => ' '.repeat(before) + rest)];
    })
    .join('\n');
}

/** Each row by itself: what it is about, then what the columns say of it. */
function listed(titles: readonly string[], cells: readonly (readonly string[])[], width: number): string {
  const about = titles.findIndex((title) => title !== '');
  return cells
    .map((row) => {
      const cellsLeft = row.flatMap((cell, i) => (i > about && cell ? [{ title: titles[i], cell }] : []));
      const head = row
        .slice(0, about + 1)
        .filter(Boolean)
        .join(' ');
      return [head, ...wordLines(rowAsText(cellsLeft), width - 2).map((line) => `  ${line}`)].join('\n');
    })
    .join('\n');
}

/** Names come from files: nothing in them may steer a terminal. */
export const clean = safeText;

/** The same for a text of several lines. */
export const cleanLines = safeLines;
