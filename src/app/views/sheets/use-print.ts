import { useLayoutEffect } from 'preact/hooks';
import { type Page, pageSvg } from '../../../outputs/sheets/index.ts';
import { printedView } from '../../state/printing.ts';
import { drawnMarkup } from '../../state/trusted.ts';

/**
 * Printing the page prints these sheets at true size.
 * @param pages those chosen, in order
 * @param otherwise what is printed while there are no pages
 * @param isReady false while some are still being drawn
 */
export function usePrint(pages: readonly Page[], otherwise: string, isReady: boolean): void {
  useLayoutEffect(() => {
    printedView.value = { isReady, make: () => (pages.length > 0 ? printedPages(pages) : printedWords(otherwise)) };
  });
  useLayoutEffect(
    () => () => {
      printedView.value = undefined;
    },
    [],
  );
}

function printedWords(text: string): HTMLElement {
  const box = document.createElement('div');
  box.append(text);
  return box;
}

/** Each page in a box of its own; the paper is as large as the page and has no margin, so that nothing is scaled to fit. */
function printedPages(pages: readonly Page[]): HTMLElement {
  const box = document.createElement('div');
  for (const [n, page] of pages.entries()) {
    const { width, height } = page.scene;
    const one = document.createElement('div');
    one.className = `paper-${Math.round(width)}-${Math.round(height)}`;
    one.innerHTML = drawnMarkup(pageSvg(page, `printed-${n}`));
    box.append(one);
  }
  return box;
}
