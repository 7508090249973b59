import type { SheetId, SheetJob } from '../../../sheets/paper/sheet-ids.ts';
import { printable } from '../../printable.ts';
import { counted } from '../grammar.ts';

/** What every printed page has. */
export const paper = {
  language: 'en-GB',
  pageTitle: ({ set, title }: { readonly set: string; readonly title: string }): string =>
    `${printable(set)}: ${title}`,
  pageOf: ({
    set,
    title,
    page,
    pages,
  }: {
    readonly set: string;
    readonly title: string;
    readonly page: number;
    readonly pages: number;
  }): string => `${printable(set)}: ${title}, page ${page} of ${pages}`,
  description: ({ set, title }: { readonly set: string; readonly title: string }): string =>
    `${title}, a printed sheet of the set ${printable(set)}.`,
  pageNumber: (page: number, pages: number): string => `${page} of ${pages}`,
  figure: ({ title, description }: { readonly title: string; readonly description: string }): string =>
    `${title}. ${description}`,
  /** Over the pictures beside steps. */
  notToScale: 'pictures not to scale',
  scaleWhereGiven: 'to scale where a scale is given',
  scale: (drawnAt: number): string => (drawnAt >= 1 ? `${drawnAt}:1` : `1:${Math.round(1 / drawnAt)}`),
  /** Numbers of steps that belong together. */
  steps: (first: number, last: number): string => (first === last ? String(first) : `${first}–${last}`),
  tile: ({
    tile,
    tiles,
    row,
    column,
  }: {
    readonly tile: number;
    readonly tiles: number;
    readonly row: number;
    readonly column: number;
  }): string =>
    `Part ${tile} of ${tiles} (row ${row}, column ${column}). Lay squares with the same name over each other and glue; they are not holes.`,
  tileAlt: ({ alt, tile }: { readonly alt: string; readonly tile: number }): string => `${alt} Part ${tile}.`,
  ruler: {
    print: 'Print at 100 % (“actual size”), not “fit to page”. Measure before you cut:',
    measure: 'the ruler must be 100 mm long, the square 20 mm each way.',
    ruler: 'test ruler',
    square: 'test square',
    alt: 'Test ruler of 100 mm and test square of 20 mm.',
  },
};

const CODES = {
  one: 'The whole set is in this code and in the lines below it. Scan it with any reader, save the text as a file ending in .json, and open that; or type the lines.',
  none: 'The whole set is in these lines (they are too long for codes to scan). Type or read them into a file ending in .json, and open that.',
  several: (codes: number): string =>
    `The whole set is in these ${codes} codes together, and in the lines below them. Scan them in order with any reader, put each text directly behind the one before, save it as a file ending in .json, and open that; or type the lines.`,
};

export const textSheetWords = {
  title: 'The set as text',
  description: 'The description of the set as text and as a code to scan.',
  intro: (codes: number): string => {
    if (codes === 0) return CODES.none;
    return codes === 1 ? CODES.one : CODES.several(codes);
  },
  code: (code: number, codes: number): string => `Code ${code} of ${codes}`,
  codeAlt: (code: number, codes: number): string =>
    codes === 1
      ? 'QR code of the description of the set.'
      : `QR code of the description of the set, code ${code} of ${codes}.`,
  lineEnds: (mark: string): string =>
    `Line ends mean nothing, except that a line ending in ${mark} goes on directly in the next.`,
};

/** What each sheet is, in a list. */
export const sheetNames = {
  glance: 'the set at a glance, with its parts',
  circuit: 'circuit diagram',
  coil: 'a sheet for every coil',
  capacitor: 'a home-made capacitor, with its templates',
  detector: 'the detector, made or fitted',
  dial: 'dial face, and a blank one',
  board: 'layout of the board',
  wiring: 'wiring list',
  'bring-up': 'bring-up, step by step',
  faults: 'finding a fault: the decision tree of the set',
  cautions: 'cautions',
  handout: 'how it works, on one page',
  text: 'the set as text',
} satisfies Readonly<Record<SheetId, string>>;

/** The page's view of the sheets. */
export const sheetsView = {
  label: 'Sheets',
  /** Printed in place of the sheets. */
  notYetDrawn:
    'This page is no sheet: the sheets were still being drawn. Do not print it. Print again once they are drawn; Ctrl P waits for them.',
  printAwaited: 'The sheets are still being drawn. Printing begins when they are.',
  doNotPrint: 'Do not print',
  noneChosen: 'No sheet is chosen. Choose at least one in the list of sheets.',
  drawing: 'Drawing the sheets…',
  notDrawn: (reason: string): string => `These sheets cannot be drawn: ${reason}`,
  notSaved: (reason: string): string => `The PDF could not be made: ${reason}`,
  fontMissing: (status: number): string => `a font was not received (${status})`,
  paper: 'Paper',
  job: 'Which sheets',
  jobs: { build: 'To build', wind: 'To wind', mend: 'To find a fault', show: 'To show' } satisfies Record<
    SheetJob,
    string
  >,
  papers: { a4: 'A4', letter: 'Letter' },
  print: (title: string): string => `Print “${title}”`,
  title: ({ title, pages }: { readonly title: string; readonly pages: number }): string =>
    pages > 1 ? `${title} (${pages} pages)` : title,
  save: (pages: number): string => `Save ${counted(pages, 'page', 'pages')} as PDF`,
  saving: 'Making the PDF…',
  saveSvg: 'Save this page as SVG',
  printHint:
    'Print at 100 % (“actual size”), and check the ruler before you cut. Ctrl P prints the sheets that are ticked.',
  before: 'Previous page',
  next: 'Next page',
  pageOf: (page: number, pages: number): string => `${page} of ${pages}`,
  pdfTitle: (set: string): string => `${set}: sheets`,
};
