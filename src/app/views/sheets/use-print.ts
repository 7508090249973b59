import { useEffect, useRef } from 'preact/hooks';
import type { Page } from '../../../outputs/sheets/index.ts';

type SvgOf = (page: Page, id: string) => string;

/** Printing the page while sheets are shown prints these pages at true size, and nothing else of the page. */
const PRINTED = 'printed-sheets';

/**
 * @param pages those chosen, in order
 * @param svgOf drawn only when somebody prints
 */
export function usePrint(pages: readonly Page[], svgOf: SvgOf | undefined): void {
  const latest = useRef({ pages, svgOf });
  latest.current = { pages, svgOf };
  useEffect(() => {
    const put = () => {
      remove();
      const { pages, svgOf } = latest.current;
      if (svgOf && pages.length > 0) document.body.append(printedPages(pages, svgOf));
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

/** Each page in a box of its own; the paper is as large as the page and has no margin, so that nothing is scaled to fit. */
function printedPages(pages: readonly Page[], svgOf: SvgOf): HTMLElement {
  const box = document.createElement('div');
  box.className = PRINTED;
  for (const [n, page] of pages.entries()) {
    const { width, height } = page.scene;
    const one = document.createElement('div');
    one.className = `paper-${Math.round(width)}-${Math.round(height)}`;
    // Drawn here from the set, its words escaped.
    one.innerHTML = svgOf(page, `printed-${n}`);
    box.append(one);
  }
  return box;
}
