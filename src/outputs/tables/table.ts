/** One column of a plain-text table. */
export interface Column<Row> {
  readonly title: string;
  readonly text: (row: Row) => string;
  readonly align?: 'left' | 'right';
}

const widthOf = (text: string): number => [...text].length;

/** Columns padded to their widest cell, two spaces apart; the last left-aligned one is not padded. */
export function table<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const cells = [columns.map((c) => c.title), ...rows.map((row) => columns.map((c) => clean(c.text(row))))];
  const widths = columns.map((_, i) => Math.max(...cells.map((line) => widthOf(line[i]))));
  return cells
    .map((line) =>
      line
        .map((cell, i) =>
          columns[i].align === 'right'
            ? ' '.repeat(widths[i] - widthOf(cell)) + cell
            : cell + ' '.repeat(widths[i] - widthOf(cell)),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Names come from files: nothing in them may steer a terminal. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is being removed
export const clean = (text: string): string => text.replace(/[\u0000-\u001f\u007f-\u009f]/g, ' ');

/** The same for a text of several lines. */
export const cleanLines = (text: string): string => text.split('\n').map(clean).join('\n');
