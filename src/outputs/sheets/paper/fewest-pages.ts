import { type PageLayout, type Sheet, USUAL_LAYOUT } from './page.ts';

/** From the usual down to letters of tables that are still read with ease. */
const CLOSER: readonly PageLayout[] = [
  { size: 2.9, tight: 0.85 },
  { size: 2.7, tight: 1 },
  { size: 2.7, tight: 0.85 },
  { size: 2.5, tight: 0.85 },
];

/** A closer layout saves no more than about this share of the pages before the last. */
const SAVED = 0.45;

/** A page of several that is filled less is mostly empty. */
export const SPARSE = 0.25;

/**
 * A sheet set a little closer where that saves a page, else as usual. Where its last page would then be mostly empty, a
 * whole section of the page before moves to it.
 */
export function fewestPages(make: (layout: PageLayout) => Sheet): Sheet {
  let layout = USUAL_LAYOUT;
  let sheet = make(layout);
  for (const closer of CLOSER) {
    const { pages } = sheet;
    if (pages[pages.length - 1].filled > SAVED * (pages.length - 1)) break;
    const tried = make(closer);
    if (tried.pages.length < pages.length) [sheet, layout] = [tried, closer];
  }
  return evened(make, layout, sheet);
}

const leastFilled = ({ pages }: Sheet): number => Math.min(...pages.map((page) => page.filled));

function evened(make: (layout: PageLayout) => Sheet, layout: PageLayout, sheet: Sheet): Sheet {
  const { pages } = sheet;
  if (pages.length < 2 || pages[pages.length - 1].filled >= SPARSE) return sheet;
  const before = pages.slice(0, -1).reduce((sum, page) => sum + page.headings, 0);
  const onPageBefore = pages[pages.length - 2].headings;
  for (let newPageAt = before - 1; newPageAt >= before - onPageBefore; newPageAt--) {
    const tried = make({ ...layout, newPageAt });
    if (tried.pages.length === pages.length && leastFilled(tried) >= SPARSE) return tried;
  }
  return sheet;
}
