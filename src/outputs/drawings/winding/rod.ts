import { polyline, rect } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import { drawnWire, label, lengthMark, moveArrow, stepScene, type TubePlace, turn } from './strokes.ts';

const OUTLINE = { stroke: 'ink', width: 0.35 } as const;
/** The rod, mm. */
const ROD = { left: 3, right: 63, top: 11, bottom: 17 } as const;
const SLEEVE = { top: 8.5, bottom: 19.5 } as const;

const rod = (): Item =>
  rect(ROD.left, ROD.top, ROD.right - ROD.left, ROD.bottom - ROD.top, { ...OUTLINE, fill: 'faint' });
const sleeve = (left: number, right: number): Item =>
  rect(left, SLEEVE.top, right - left, SLEEVE.bottom - SLEEVE.top, { ...OUTLINE, fill: 'card' });

/** The sleeve of paper on its rod. */
export const sleeveOnRod = (): Scene =>
  stepScene(texts.titles.sleeve, 27, [
    rod(),
    sleeve(19, 49),
    label([34, 6.5], texts.paperSleeve),
    label([56, 9], texts.rod),
    ...moveArrow([27, 24], [19, 24]),
    label([34, 25], texts.slides),
    ...moveArrow([41, 24], [49, 24]),
  ]);

/** How the coil of a rod begins. @param tail of the wire that is left, m. @param gap of a thread between turns, m. */
export function rodStart(tail: number, gap?: number): Scene {
  const place: TubePlace = { ...SLEEVE, left: 10, right: 56 };
  const step = gap === undefined ? 1.6 : 3.2;
  const at = Array.from({ length: Math.round(19.2 / step) + 1 }, (_, i) => 22 + i * step);
  const thread = at.map((x) =>
    polyline(
      [
        [x + step / 2, SLEEVE.top],
        [x + step / 2 + 1, SLEEVE.bottom],
      ],
      { ...OUTLINE, dash: [0.6, 0.9], cap: 'butt' },
    ),
  );
  return stepScene(texts.titles.rodStart, gap === undefined ? 26 : 30, [
    rod(),
    sleeve(place.left, place.right),
    ...at.map((x) => turn(x, place)),
    ...(gap === undefined ? [] : [...thread, label([10, 29], texts.thread(gap), 'start')]),
    drawnWire([22, SLEEVE.top], [16, 4]),
    rect(18, SLEEVE.top - 0.6, 3, SLEEVE.bottom - SLEEVE.top + 1.2, { ...OUTLINE, fill: 'paper' }),
    label([15, 4.5], texts.startTail(tail), 'end'),
    label([19.5, 24], texts.tape),
    ...moveArrow([28, 23.2], [46, 23.2]),
  ]);
}

/** Where the coil lies on its rod. @param fromEnd its middle from the nearer end, m. @param inMiddle of the rod. */
export function rodInPlace(fromEnd: number, inMiddle: boolean): Scene {
  const middle = inMiddle ? (ROD.left + ROD.right) / 2 : 23;
  const place: TubePlace = { ...SLEEVE, left: middle - 9, right: middle + 9 };
  const turns = Array.from({ length: 8 }, (_, i) => turn(middle - 6 + i * 1.6, place));
  const block = (x: number): Item => rect(x, ROD.bottom - 2, 4, 6, { ...OUTLINE, fill: 'paper' });
  return stepScene(texts.titles.rodPlace, 32, [
    rod(),
    block(6),
    block(56),
    sleeve(place.left, place.right),
    ...turns,
    ...lengthMark([ROD.left, 28], [middle, 28], texts.length(fromEnd)),
    label([58, 26], texts.block),
  ]);
}
