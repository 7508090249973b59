import { circle, line, polyline, rect } from '../../scene/build.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import { drawnWire, HIDDEN, label, lengthMark, moveArrow, section, stepScene } from './strokes.ts';

const OUTLINE = { stroke: 'ink', width: 0.35 } as const;

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

/** Two laths halved into each other. @param hoop they stand in one; otherwise they are the diagonals of a square. */
export function lathsCrossed(hoop: boolean): Scene {
  const lath = (y: number, isCutAbove: boolean): Item => {
    const [top, middle, foot] = [y, y + 2.6, y + 5.2];
    const points: Point[] = isCutAbove
      ? [
          [3, top],
          [13, top],
          [13, middle],
          [18, middle],
          [18, top],
          [28, top],
          [28, foot],
          [3, foot],
        ]
      : [
          [3, top],
          [28, top],
          [28, foot],
          [18, foot],
          [18, middle],
          [13, middle],
          [13, foot],
          [3, foot],
        ];
    return polyline(points, { ...OUTLINE, fill: 'card', closed: true });
  };
  const [x, y, r] = [50, 15, 12];
  const arm = r * Math.SQRT1_2;
  const diagonal = (side: 1 | -1): Item[] => [
    line([x - arm, y - side * arm], [x + arm, y + side * arm], { stroke: 'ink', width: 2.4 }),
    line([x - arm, y - side * arm], [x + arm, y + side * arm], { stroke: 'card', width: 1.7 }),
  ];
  return stepScene(texts.titles.laths, 33, [
    lath(5, false),
    lath(14, true),
    ...moveArrow([15.5, 22.5], [15.5, 20.5]),
    label([15.5, 29], texts.halved),
    ...(hoop
      ? [circle([x, y], r + 0.4, OUTLINE)]
      : [rect(x - arm, y - arm, 2 * arm, 2 * arm, { ...OUTLINE, dash: HIDDEN, cap: 'butt' })]),
    ...diagonal(1),
    ...diagonal(-1),
    label([x, 31.6], hoop ? texts.insideHoop : texts.wireAround),
  ]);
}

/** Turns on their marks around a hoop, from the side. @param wires how many. @param pitch m, from one to the next. */
export function turnsOnHoop(wires: number, pitch: number): Scene {
  const shown = Math.min(wires, 5);
  const at = Array.from({ length: shown }, (_, i) => 33 + (i - (shown - 1) / 2) * 8);
  return stepScene(texts.titles.hoop, 31, [
    rect(8, 6, 50, 13, { ...OUTLINE, fill: 'card' }),
    ...at.map((x) => drawnWire([x, 6], [x, 19])),
    ...(shown > 1 ? lengthMark([at[shown - 2], 22], [at[shown - 1], 22], texts.length(pitch)) : []),
    label([at[0], 4.4], texts.start),
    ...(shown > 1 ? [label([at[shown - 1] + 4, 4.4], shown < wires ? texts.andSoOn : texts.end, 'start')] : []),
    label([8, 29.6], texts.onMarks, 'start'),
  ]);
}

/** A single turn at its strip: the two ends side by side, not touching. */
export const oneTurnClamped = (): Scene =>
  stepScene(texts.titles.oneTurn, 30, [
    rect(22, 4, 22, 16, { ...OUTLINE, fill: 'card' }),
    drawnWire([2, 8], [26, 8], [28, 12]),
    drawnWire([64, 8], [40, 8], [38, 12]),
    circle([28, 13.4], 2, { ...OUTLINE, fill: 'faint' }),
    circle([38, 13.4], 2, { ...OUTLINE, fill: 'faint' }),
    label([12, 5.6], texts.start),
    label([54, 5.6], texts.end),
    label([33, 26.6], texts.endsApart),
  ]);
