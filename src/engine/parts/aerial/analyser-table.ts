/** A table of an analyser with a heading over each column, as the lines of a Touchstone file; without them its headings are not clear. */
export type AnalyserTable =
  | { readonly isTable: false }
  | { readonly isTable: true; readonly lines?: readonly string[] };

const COMMENT = '!';
/** Share of the lines that have a separator: one in five may say what was set. */
const MOST = 0.8;
const UNIT = /\b([kMG]?)Hz\b/i;
const FREQUENCY = /^(?:f|freq(?:uency)?|stimulus|[kmg]?hz)\b/i;
/** Which reflection or transmission a heading is of, where it says so. */
const PARAMETER = /s\s*_?\(?\s*([12])[,\s]?([12])\s*\)?/i;
const PARTS: readonly (readonly [part: 'RI' | 'MA' | 'DB', first: RegExp, second: RegExp])[] = [
  ['RI', /\b(?:re|real)\b/i, /\b(?:im|imag|imaginary)\b/i],
  ['DB', /\bdb\b|\blog\s*mag/i, /\b(?:phase|ang|angle|deg|degrees?)\b|°/i],
  ['MA', /\b(?:mag|magnitude|abs|lin\s*mag)\b|\|/i, /\b(?:phase|ang|angle|deg|degrees?)\b|°/i],
];
const RADIANS = /\brad(?:ians?)?\b/i;

const cellsOf = (line: string, separator: string): string[] =>
  line.split(separator).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );

/** Words of a heading apart, its underscores and signs aside. */
const plain = (heading: string): string => heading.replace(/[_[\](){}:]/g, ' ').trim();

/** Columns of frequency and of the two parts of S11. */
interface Columns {
  readonly option: string;
  readonly at: readonly [frequency: number, first: number, second: number];
}

function columnsOf(cells: readonly string[]): Columns | undefined {
  const headings = cells.map(plain);
  const frequency = headings.findIndex((one) => FREQUENCY.test(one));
  if (frequency < 0 || headings.some((one) => RADIANS.test(one))) return undefined;
  const others = headings.flatMap((heading, i) => (i === frequency || heading === '' ? [] : [{ heading, i }]));
  const parameters = others.map(({ heading }) => PARAMETER.exec(heading)?.slice(1).join(''));
  // A transmission beside it would be passed over.
  if (parameters.some((one) => one !== undefined && one !== '11')) return undefined;
  for (const [format, first, second] of PARTS) {
    const [a, b] = [first, second].map((name) => others.filter(({ heading }) => name.test(heading)));
    if (a.length !== 1 || b.length !== 1 || a[0].i === b[0].i) continue;
    const [, prefix = ''] = UNIT.exec(headings[frequency]) ?? [];
    return { option: `# ${prefix}Hz S ${format} R 50`, at: [frequency, a[0].i, b[0].i] };
  }
  return undefined;
}

/**
 * A table with commas or semicolons between its columns, as programs of small analysers save a sweep: a frequency, and S11
 * in 50 Ω as real and imaginary part, magnitude (plain or dB) and phase (degrees). Columns are known by their headings; what
 * was set may stand above these.
 * @param lines of the file
 * @returns one line for each, so that problems keep their place; no table where an option line, a keyword or no separator
 *   says that it is Touchstone
 */
export function analyserTable(lines: readonly string[]): AnalyserTable {
  const written = lines.flatMap((line, i) => (line.trim() === '' || line.startsWith(COMMENT) ? [] : [i]));
  if (written.length === 0 || written.some((i) => /^\s*[#[]/.test(lines[i]))) return { isTable: false };
  const separator = [';', ','].find(
    (one) => written.filter((i) => cellsOf(lines[i], one).length >= 3).length > MOST * written.length,
  );
  if (separator === undefined) return { isTable: false };
  const heading = written.find((i) => columnsOf(cellsOf(lines[i], separator)));
  const columns = heading === undefined ? undefined : columnsOf(cellsOf(lines[heading], separator));
  // Numbers above the headings would be passed over.
  const isAbove = written.some((i) => i < (heading ?? 0) && /^[-+]?\d/.test(lines[i].trim()));
  if (!columns || isAbove) return { isTable: true };
  const number = (cell = ''): string => (separator === ';' ? cell.replace(',', '.') : cell).replace(/\s+/g, '_') || '?';
  return {
    isTable: true,
    lines: lines.map((line, i) => {
      if (i === heading) return columns.option;
      if (i < heading! || line.trim() === '' || line.startsWith(COMMENT) || /^end$/i.test(line.trim())) return '';
      const cells = cellsOf(line, separator);
      return columns.at.map((column) => number(cells[column])).join(' ');
    }),
  };
}
