import { type Scene, sceneToSvg } from '../outputs/scene/index.ts';
import { callProblems } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';
import { numberOf } from './option-values.ts';
import { rasteriser } from './rasteriser.ts';
import { wrongOption } from './wrong-option.ts';

/** More would not fit into the rasteriser's memory. */
const MOST_PIXELS = 50e6;
const WIDEST = 20_000;

/** Width of a PNG, px. @param drawn of the drawing. @throws InputError, also for pictures that are too large. */
export function pngWidth(text: string | undefined, drawn: readonly [number, number], ending: string): number {
  if (text !== undefined && ending !== 'png') throw new InputError(callProblems.widthOfPng);
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
