import { sceneToSvg } from '../../scene/svg.ts';
import type { Page } from './page.ts';

/**
 * A page as an SVG at true size, in black and white.
 * @param page of a sheet, mm
 * @returns SVG text
 */
export const pageSvg = (page: Page): string => sceneToSvg(page.scene, { colours: 'print', size: 'true' });
