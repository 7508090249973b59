import { useEffect, useRef } from 'preact/hooks';
import { type Page, pageSvg } from '../../../outputs/sheets/index.ts';
import { drawnMarkup } from '../../state/trusted.ts';

/** Printing the page while sheets are shown prints these pages at true size, and nothing else of the page. */
const PRINTED = 'printed-sheets';

/**
 * @param pages those chosen, in order
 * @param otherwise what is printed while there are no pages
 */
export function usePrint(pages: readonly Page[], otherwise: string): void {
  const latest = useRef({ pages, otherwise });
  latest.current = { pages, otherwise };
  useEffect(() => {
    const put = () => {
      remove();
      const { pages, otherwise } = latest.current;
      document.body.append(pages.length > 0 ? printedPages(pages) : printedWords(otherwise));
    };
    addEventListener('beforeprint', put);
    addEventListener('afterprint', remove);
    return () => {
      removeEventListener('beforeprint', put);
      removeEventListener('afterprint', remove);
      remove();
    };
  }, []);
}

const remove = (): void => document.querySelector(`.${PRINTED}`)?.remove();

function printedWords(text: string): HTMLElement {
  const box = document.createElement('div');
  box.className = PRINTED;
  box.append(text);
  return box;
}

/** Each page in a box of its own; the paper is as large as the page and has no margin, so that nothing is scaled to fit. */
function printedPages(pages: readonly Page[]): HTMLElement {
  const box = document.createElement('div');
  box.className = PRINTED;
  for (const [n, page] of pages.entries()) {
    const { width, height } = page.scene;
    const one = document.createElement('div');
    one.className = `paper-${Math.round(width)}-${Math.round(height)}`;
    one.innerHTML = drawnMarkup(pageSvg(page, `printed-${n}`));
    box.append(one);
  }
  return box;
}
