import { type Scene, sceneToSvg } from '../outputs/scene/index.ts';
import type { Io } from './command.ts';
import { needsEnding } from './needs-ending.ts';
import { numberOf } from './option-values.ts';
import { rasteriser } from './rasteriser.ts';
import { wrongOption } from './wrong-option.ts';

/** More would not fit into the rasteriser's memory. */
export const MOST_PIXELS = 50e6;
const WIDEST = 20_000;

/** Options of pictures where no picture is written are refused, not ignored. @throws InputError */
export function refuseWithoutPicture(values: Parameters<typeof needsEnding>[0], ending: string | undefined): void {
  needsEnding(values, ['width'], ending, ['png']);
  needsEnding(values, ['size', 'print'], ending, ['svg', 'png']);
}

/** Width of a PNG, px. @param drawn of the drawing. @throws InputError, also for pictures that are too large. */
export function pngWidth(text: string | undefined, drawn: readonly [number, number], ending: string): number {
  const width = Math.round(numberOf(text, drawn[0], '--width', 100, WIDEST));
  if (ending === 'png' && width * width * (drawn[1] / drawn[0]) > MOST_PIXELS)
    throw wrongOption(
      text === undefined ? '--size' : '--width',
      { code: 'pixels at most', most: MOST_PIXELS },
      text ?? drawn.join('x'),
    );
  return width;
}

/** A drawing as an SVG, or as a PNG so many px wide. */
export async function writePicture(
  io: Io,
  out: string,
  scene: Scene,
  { ending, print, width }: { readonly ending: 'svg' | 'png'; readonly print?: boolean; readonly width: number },
): Promise<void> {
  const svg = sceneToSvg(scene, { colours: print ? 'print' : 'day', size: 'true' });
  await io.write(out, ending === 'svg' ? svg : (await rasteriser()).png(svg, width));
}
