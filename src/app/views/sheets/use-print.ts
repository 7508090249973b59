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

/** Each page in a box of its own size; the paper is that size without a margin, so that nothing is scaled to fit. */
function printedPages(pages: readonly Page[], svgOf: SvgOf): HTMLElement {
  const box = document.createElement('div');
  box.className = PRINTED;
  const nameOf = ({ scene: { width, height } }: Page): string => `paper-${width}-${height}`.replaceAll('.', '_');
  const sizes = new Map(pages.map((page) => [nameOf(page), page]));
  const style = document.createElement('style');
  style.textContent = [...sizes]
    .map(
      ([
        name,
        {
          scene: { width, height },
        },
      ]) => `@page ${name} { size: ${width}mm ${height}mm; margin: 0 }`,
    )
    .join('\n');
  box.append(style);
  for (const [n, page] of pages.entries()) {
    const one = document.createElement('div');
    one.style.cssText = `page: ${nameOf(page)}; width: ${page.scene.width}mm; height: ${page.scene.height}mm`;
    // Drawn here from the set, its words escaped.
    one.innerHTML = svgOf(page, `printed-${n}`);
    box.append(one);
  }
  return box;
}
