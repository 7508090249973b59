import { line, rect, text } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { paper as texts } from '../../words/index.ts';
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
export const BOTTOM_FULL_SIZE = 44;

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
}

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
  const y = paper.height - 18;
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
  const print = text([x, y - 13.5], texts.ruler.print, PAGE_BODY, { bold: true });
  const measure = text([x, y - 9.6], texts.ruler.measure, PAGE_SMALL);
  return [
    { tag: 'P', items: [print, measure] },
    {
      tag: 'Figure',
      items: [...items, ...labels, square],
      alt: texts.ruler.alt,
    },
  ];
}
