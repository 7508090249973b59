import { sceneToSvg } from '../../scene/svg.ts';
import type { Page } from './page.ts';

/**
 * A page as an SVG at true size, in black and white.
 * @param page of a sheet, mm
 * @param id prefix of ids inside, where several are in one document; made from the content if left out
 * @returns SVG text
 */
export const pageSvg = (page: Page, id?: string): string =>
  sceneToSvg(page.scene, { colours: 'print', size: 'true', id });
