import { line, rect, text } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { paper as texts } from '../../words/index.ts';
import { fold } from '../pages/words.ts';
import type { AnySheetId } from './sheet-ids.ts';

/** A size of paper. */
export type PaperName = 'a4' | 'letter';

/** Printed portrait; mm. */
export const PAPERS: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** White rim that any printer can leave, mm. */
export const PAGE_MARGIN = 14;
/** Where a page's own matter begins and how far from the lower edge it ends, mm. */
export const TOP = 24;
export const BOTTOM = 16;
/** The same where the test ruler stands at the foot. */
export const BOTTOM_FULL_SIZE = 36.5;

export const PAGE_BODY = 3.2;
export const PAGE_SMALL = 2.7;
export const HEADING = 4.2;
export const TITLE = 6;

/** What a stretch of a page is, for readers that are not eyes. */
export interface Block {
  readonly tag: 'H1' | 'H2' | 'P' | 'Figure' | 'Artifact';
  readonly items: readonly Item[];
  /** Of a figure: what it says. */
  readonly alt?: string;
}

/** One side of paper: a scene at true size, and the same items in reading order. */
export interface Page {
  readonly scene: Scene;
  readonly blocks: readonly Block[];
  /** Share of the height for its matter that is used, 0 to 1. */
  readonly filled: number;
  /** Headings of sections that stand on it. */
  readonly headings: number;
}

/** How close a sheet is set. */
export interface PageLayout {
  /** Letters of tables and lists, mm. */
  readonly size: number;
  /** Share of the usual space between rows, and of the usual height of drawings that may be of any. */
  readonly tight: number;
  /** A section that begins on a new page, counted from 0; default each where there is room. */
  readonly newPageAt?: number;
}
export const USUAL_LAYOUT: PageLayout = { size: 2.9, tight: 1 };

/** One sheet: a title and its pages. */
export interface Sheet {
  readonly id: AnySheetId;
  readonly title: string;
  /** For a file's name: "coil-main". */
  readonly file: string;
  /** Holds something that is cut, drilled or read at its true size. */
  readonly fullSize: boolean;
  readonly pages: readonly Page[];
}

/** Length of the test ruler and side of the test square, mm. */
const RULER = 100;
const SQUARE = 20;

/** A ruler and a square, to see that the printer has left the sizes alone. */
export function testRuler(paper: { width: number; height: number }): Block[] {
  const y = paper.height - 14.5;
  const x = PAGE_MARGIN;
  const items: Item[] = [
    line([x, y], [x + RULER, y], { stroke: 'ink', width: 0.25, cap: 'butt', title: texts.ruler.ruler }),
  ];
  for (let mm = 0; mm <= RULER; mm++) {
    const high = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2;
    if (mm % 5 === 0 || mm < 10)
      items.push(line([x + mm, y], [x + mm, y - high], { stroke: 'ink', width: 0.15, cap: 'butt' }));
  }
  const labels: Item[] = [];
  for (let mm = 0; mm <= RULER; mm += 20)
    labels.push(text([x + mm, y - 6], mm === RULER ? '100 mm' : `${mm}`, PAGE_SMALL, { anchor: 'middle' }));
  const left = paper.width - PAGE_MARGIN - SQUARE;
  const square = rect(left, y - SQUARE, SQUARE, SQUARE, { stroke: 'ink', width: 0.25, title: texts.ruler.square });
  const beside = x + RULER + 9;
  const room = left - beside - 4;
  const words = [
    ...fold(texts.ruler.print, PAGE_SMALL, room, true).map((row) => ({ row, bold: true })),
    ...fold(texts.ruler.measure, PAGE_SMALL, room).map((row) => ({ row, bold: false })),
  ];
  return [
    {
      tag: 'P',
      items: words.map(({ row, bold }, i) =>
        text([beside, y - SQUARE + PAGE_SMALL * (0.8 + 1.36 * i)], row, PAGE_SMALL, { bold }),
      ),
    },
    {
      tag: 'Figure',
      items: [...items, ...labels, square],
      alt: texts.ruler.alt,
    },
  ];
}
