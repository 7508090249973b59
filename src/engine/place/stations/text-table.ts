import { TableTooLargeError } from './table-problems.ts';

/** A table of text: rows of cells, as many in each as were written. */
export type TextTable = readonly (readonly string[])[];

const DELIMITERS = ['\t', ';', ',', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Longest text read, characters; no station list is longer. */
export const LONGEST_TABLE = 5_000_000;
const MOST_ROWS = 20_000;

/**
 * Cut pasted or loaded text into rows and cells: comma, semicolon, tab or bar, quotes as in RFC 4180.
 * Empty rows are left out; a quote that never closes ends with the text.
 * @param delimiter default: the one that cuts the first rows most evenly.
 * @param most rows; default 20 000
 * @throws TableTooLargeError for text of more than 5 million characters or more than `most` rows.
 */
export function readTable(
  text: string,
  delimiter?: Delimiter,
  most?: number,
): { rows: TextTable; delimiter: Delimiter } {
  if (!(text.length <= LONGEST_TABLE))
    throw new TableTooLargeError({ code: 'too-many-characters', most: LONGEST_TABLE });
  const plain = text.replace(/^\uFEFF/, '');
  const separator = delimiter ?? guessDelimiter(plain);
  return { rows: cut(plain, separator, most), delimiter: separator };
}

function cut(text: string, delimiter: string, most = MOST_ROWS): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endRow = () => {
    row.push(cell.trim());
    cell = '';
    if (row.some((value) => value !== '')) rows.push(row);
    row = [];
  };
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') cell += text[++i];
      else quoted = false;
    } else if (c === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (c === delimiter) {
      row.push(cell.trim());
      cell = '';
    } else if (c === '\n' || c === '\r') {
      endRow();
      if (rows.length > most) throw new TableTooLargeError({ code: 'too-many-rows', most });
    } else {
      cell += c;
    }
  }
  endRow();
  // A table drawn with bars has empty cells at both edges and a line of dashes under its head.
  if (delimiter !== '|') return rows;
  return rows
    .map((cells) => cells.slice(cells[0] === '' ? 1 : 0, cells.at(-1) === '' ? -1 : undefined))
    .filter((cells) => !cells.every((value) => /^:?-*:?$/.test(value)));
}

/** The delimiter that gives most columns alike in the first rows. */
function guessDelimiter(text: string): Delimiter {
  const start = text.slice(0, 20_000).split(/\r?\n/).slice(0, 12).join('\n');
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of DELIMITERS) {
    const widths = cut(start, delimiter).map((row) => row.length);
    if (widths.length === 0) continue;
    const usual = widths.toSorted((a, b) => a - b)[widths.length >> 1];
    if (usual < 2) continue;
    const score = widths.filter((width) => width === usual).length / widths.length + Math.min(usual, 20) / 100;
    if (score > bestScore) [best, bestScore] = [delimiter, score];
  }
  return best;
}

/** Rows to text with commas, quoted where needed; begins of formulas are made harmless with an apostrophe. */
export const writeTable = (rows: TextTable): string =>
  rows
    .map((row) => row.map((cell) => quote(guard(cell))).join(','))
    .join('\r\n')
    .concat('\r\n');

const quote = (cell: string) => (/[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
/** Spreadsheets run cells that begin so; numbers may. */
const guard = (cell: string) => (/^'?[=+@\t\r-]/.test(cell) && !/^[+-]?[\d.]+$/.test(cell) ? `'${cell}` : cell);
/** Takes the apostrophe of `writeTable` off again. */
export const unguard = (cell: string): string => (/^''?[=+@\t\r-]/.test(cell) ? cell.slice(1) : cell);
