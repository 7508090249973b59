import { circle, line, path, polyline, rect } from '../../scene/build.ts';
import type { Scene } from '../../scene/scene.ts';
import { boardPictureWords as texts } from '../../words/index.ts';
import { drawnWire, hole, label, lengthMark, moveArrow, stepScene } from '../winding/strokes.ts';

const OUTLINE = { stroke: 'ink', width: 0.35 } as const;
const FINE = { stroke: 'ink', width: 0.18 } as const;
const CARD = { ...OUTLINE, fill: 'card' } as const;
const METAL = { ...OUTLINE, fill: 'faint' } as const;

/** The board sheet taped on the board, its holes pricked through. */
export const sheetOnBoard = (): Scene =>
  stepScene(texts.titles.prick, 30, [
    rect(4, 14, 58, 6, CARD),
    rect(4, 12.6, 58, 1.4, { ...OUTLINE, fill: 'paper' }),
    rect(2.5, 11.8, 7, 3, METAL),
    rect(56.5, 11.8, 7, 3, METAL),
    polyline(
      [
        [31.6, 3],
        [34.4, 3],
        [33, 15],
      ],
      { ...METAL, closed: true },
    ),
    rect(31, 0.6, 4, 3, CARD),
    label([38, 6], texts.awl, 'start'),
    label([6, 9.6], texts.tape, 'start'),
    label([33, 26], texts.crossesAndDots),
  ]);

/** A terminal screwed through the board, with its wire below. */
export const terminalMounted = (): Scene =>
  stepScene(texts.titles.terminal, 33, [
    rect(4, 14, 40, 6, CARD),
    rect(20, 4, 8, 8, METAL),
    rect(22.6, 12, 2.8, 17, METAL),
    rect(18.5, 12.4, 11, 1.6, METAL),
    rect(18.5, 20, 11, 1.6, METAL),
    drawnWire([6, 22.6], [22, 22.6]),
    rect(18.5, 23.6, 11, 1.2, METAL),
    rect(20, 24.8, 8, 2.8, METAL),
    line([29.5, 13.2], [45, 9.4], FINE),
    line([29.5, 20.8], [45, 15.4], FINE),
    line([29.5, 24.2], [45, 21.4], FINE),
    line([28, 26.2], [45, 27.4], FINE),
    label([46, 10.4], texts.washer, 'start'),
    label([46, 16.4], texts.washer, 'start'),
    label([46, 22.4], texts.washer, 'start'),
    label([46, 28.4], texts.nut, 'start'),
    label([2, 31.8], texts.wire, 'start'),
  ]);

/** The loop of a wire under a screw: the way the screw turns, so that it closes. */
export const wireUnderScrew = (): Scene =>
  stepScene(texts.titles.loop, 32, [
    circle([20, 14], 8.5, { ...FINE, dash: [0.8, 0.7] }),
    circle([20, 14], 3, METAL),
    // From the left over the top and round to the right: clockwise.
    path(
      [
        ['M', 2, 8.6],
        ['L', 20, 8.6],
        ['A', 5.4, true, true, 14.8, 15.4],
      ],
      { stroke: 'ink', width: 0.7 },
    ),
    rect(2, 7.6, 5, 2, CARD),
    ...moveArrow([27.5, 6], [30, 12]),
    label([34, 8], texts.clockwise, 'start'),
    label([34, 13], texts.asTheScrew, 'start'),
    label([34, 18], texts.noOverlap, 'start'),
    ...lengthMark([2, 27], [12, 27], texts.bare),
  ]);

/** A good joint on a pin, and a bad one. */
export const jointOnPin = (): Scene =>
  stepScene(texts.titles.joint, 34, [
    rect(4, 20, 24, 5, CARD),
    rect(38, 20, 24, 5, CARD),
    ...[16, 50].flatMap((x) => [rect(x - 1, 7, 2, 16, METAL)]),
    // A fillet that runs out thin on wire and pin.
    path(
      [
        ['M', 15, 8],
        ['C', 15, 13, 13, 15, 9, 15.4],
        ['L', 9, 16.6],
        ['L', 23, 16.6],
        ['L', 23, 15.4],
        ['C', 19, 15, 17, 13, 17, 8],
        ['Z'],
      ],
      { ...OUTLINE, fill: 'faint' },
    ),
    drawnWire([4, 16], [15, 16]),
    circle([50, 14], 4.6, { ...OUTLINE, fill: 'faint' }),
    drawnWire([38, 16], [46, 16]),
    label([16, 4.6], texts.good),
    label([50, 4.6], texts.bad),
    label([16, 30], texts.runsOut),
    label([50, 30], texts.ball),
    hole([16, 22.5]),
    hole([50, 22.5]),
  ]);
