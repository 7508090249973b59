import type { Sheet } from './page.ts';

/** Letters of tables, mm, from the usual down to the smallest that is still read with ease. */
const SIZES = [2.9, 2.7, 2.5] as const;

/** A sheet with letters a little smaller where that saves a page, else as usual. */
export function fewestPages(make: (size: number) => Sheet): Sheet {
  const tried = SIZES.map(make);
  const least = Math.min(...tried.map((sheet) => sheet.pages.length));
  return tried.find((sheet) => sheet.pages.length === least)!;
}
