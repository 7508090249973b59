import { polyline } from '../../scene/build.ts';
import type { Point, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import { drawnWire, label, section, stepScene } from './strokes.ts';

/** Depth of a notch and half its width, mm; how many are drawn, and how far apart. */
const [DEEP, HALF, NOTCHES, APART] = [3, 1.9, 5, 10];
const [LEFT, RIGHT, TOP, BOTTOM] = [5, 61, 12, 21];

/** The turns of a frame in their notches, numbered in the order of winding. @param inside what the notches are in. */
export function wiresInNotches(inside: 'comb' | 'lath'): Scene {
  const at = Array.from({ length: NOTCHES }, (_, i) => 13 + i * APART);
  const edge: Point[] = at.flatMap((x): Point[] => [
    [x - HALF, TOP],
    [x, TOP + DEEP],
    [x + HALF, TOP],
  ]);
  return stepScene(texts.titles.notches, 27, [
    polyline([[LEFT, TOP], ...edge, [RIGHT, TOP], [RIGHT, BOTTOM], [LEFT, BOTTOM]], {
      stroke: 'ink',
      width: 0.35,
      fill: 'card',
      closed: true,
    }),
    ...at.flatMap((x, i) => section([x, TOP - 0.4], 2.1, i + 1)),
    drawnWire([at[0], TOP - 2.5], [at[0], 5]),
    label([at[0], 4], texts.start),
    label([RIGHT, 6], texts.oneInEach, 'end'),
    label([33, 25.4], texts.notched[inside]),
  ]);
}
