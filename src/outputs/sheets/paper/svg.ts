import { group } from '../../scene/build.ts';
import { sceneToSvg } from '../../scene/svg.ts';
import type { Page, Sheet } from './page.ts';

/**
 * A page as an SVG at true size, in black and white.
 * @param page of a sheet, mm
 * @param id prefix of ids inside, where several are in one document; made from the content if left out
 * @returns SVG text
 */
export const pageSvg = (page: Page, id?: string): string =>
  sceneToSvg(page.scene, { colours: 'print', size: 'true', id });

/**
 * All pages of a sheet in one SVG at true size, one below the other, in black and white.
 * @param sheet its pages of one size, mm
 * @returns SVG text
 */
export function sheetSvg({ title, pages }: Sheet): string {
  const [{ scene }] = pages;
  return sceneToSvg(
    {
      ...scene,
      title: pages.length > 1 ? title : scene.title,
      height: scene.height * pages.length,
      items: pages.map((page, k) => group(page.scene.items, { move: [0, k * scene.height] })),
    },
    { colours: 'print', size: 'true' },
  );
}
