import { line, path, polyline, rect } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import { drawnWire, hiddenWire, hole, label, lengthMark, moveArrow, section, stepScene, tube } from './strokes.ts';

const CHEEKS = { left: 16, right: 46, thick: 2, top: 2, bottom: 24 } as const;
const TUBE = { left: 8, right: 54, top: 8, bottom: 18 } as const;

const cheek = (x: number): Item =>
  rect(x, CHEEKS.top, CHEEKS.thick, CHEEKS.bottom - CHEEKS.top, { stroke: 'ink', width: 0.35, fill: 'paper' });
const cheeks = (): Item[] => [cheek(CHEEKS.left - CHEEKS.thick), cheek(CHEEKS.right)];

/** Two cheeks glued on a tube. @param length between them, @param fromEnd of the tube, m. */
export const cheeksOn = ({ length, fromEnd }: { readonly length: number; readonly fromEnd: number }): Scene =>
  stepScene(texts.titles.cheeks, 33, [
    ...tube({ ...TUBE, open: 'left' }),
    ...cheeks(),
    ...lengthMark([TUBE.left, 27], [CHEEKS.left - CHEEKS.thick, 27], texts.length(fromEnd)),
    ...lengthMark([CHEEKS.left, 30.5], [CHEEKS.right, 30.5], texts.length(length)),
  ]);

/** Layers in section between cheeks, each wound back over the one before. @param paper between them is drawn. */
export function layers(count: number, paper: boolean): Scene {
  const shown = Math.min(count, 4);
  const radius = 1.5;
  const step = 2 * radius + (paper ? 0.9 : 0.1);
  const floor = 22;
  const [left, right] = [12, 46];
  const items: Item[] = [];
  const turns = Math.floor((right - left) / (2 * radius));
  for (let layer = 0; layer < shown; layer++) {
    const y = floor - radius - layer * step;
    for (let i = 0; i < turns; i++) items.push(...section([left + radius + i * 2 * radius, y], radius));
    const there = layer % 2 === 0;
    items.push(...moveArrow([there ? 50 : 60, y], [there ? 60 : 50, y]));
    if (paper && layer < shown - 1)
      items.push(line([left, y - radius - 0.45], [right, y - radius - 0.45], { stroke: 'ink', width: 0.18 }));
  }
  const top = floor - shown * step - 3;
  return stepScene(texts.titles.layers, 31, [
    rect(left - 2, top, 2, floor - top, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    rect(right, top, 2, floor - top, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    rect(4, floor, 50, 2.4, { stroke: 'ink', width: 0.35, fill: 'card' }),
    ...items,
    label([10, 29], texts.start),
    label([47, 29], texts.otherCheek),
  ]);
}

/** A tap led across the turns to a cheek. */
export function pileTap(turns: readonly number[], nearer: 'start' | 'other'): Scene {
  const pile: Item[] = [];
  for (let x = 18; x < 46; x += 2) pile.push(drawnWire([x, 6], [x + 0.6, 20]));
  const [from, to] = [30, nearer === 'start' ? 8 : 54];
  const sleeve = polyline(
    [
      [from, 11.4],
      [to, 11.4],
      [to, 14.6],
      [from, 14.6],
    ],
    { stroke: 'ink', width: 0.35, fill: 'paper', closed: true },
  );
  const beyond = nearer === 'start' ? -5 : 5;
  return stepScene(texts.titles.tap, 31, [
    ...tube({ ...TUBE, left: 2, right: 60 }),
    ...cheeks(),
    ...pile,
    sleeve,
    drawnWire([from, 12.4], [to + beyond, 12.4]),
    drawnWire([from, 13.6], [to + beyond, 13.6]),
    label([31, 29], texts.sleeve),
    label(
      [nearer === 'start' ? 20 : 46, 33.4 - 30 + 0.6],
      texts.afterTurns(turns),
      nearer === 'start' ? 'start' : 'end',
    ),
  ]);
}

/** The end through the hole near a cheek's rim, and the start close to the tube. @param same both at one cheek. */
export function pileEnd(same: boolean): Scene {
  const pile: Item[] = [];
  for (let x = 18; x < 46; x += 2) pile.push(drawnWire([x, 5], [x + 0.6, 21]));
  const start = CHEEKS.left - CHEEKS.thick / 2;
  const end = same ? start : CHEEKS.right + CHEEKS.thick / 2;
  const out = same ? -1 : 1;
  return stepScene(texts.titles.end, 31, [
    ...tube({ ...TUBE, left: 2, right: 60 }),
    ...pile,
    ...cheeks(),
    hole([end, 4.6]),
    drawnWire([end + out, 4.6], [end + 10 * out, 4.6]),
    hole([start, 16.6]),
    hiddenWire([start - 1, 16.6], [start - 4, 16.6]),
    drawnWire([start - 4, 16.6], [start - 11, 21]),
    label([end + 5 * out, 3.4], texts.end),
    label([5, 25.5], texts.start),
    label([33, 29], texts.endByRim),
  ]);
}

/** Holes by the cheek at the start. */
export function pileStart({ apart, fromEnd }: { readonly apart: number; readonly fromEnd: number }): Scene {
  const [upper, lower] = [10.4, 15.2];
  const at = 22;
  const rim = 40;
  return stepScene(texts.titles.start, 31, [
    ...tube({ left: 9, right: 62, top: 6, bottom: 20, open: 'left' }),
    rect(rim, 1, 2.4, 24, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    path(
      [
        ['M', rim + 3, upper],
        ['C', rim - 4, upper, at + 4, upper, at, upper],
      ],
      { stroke: 'ink', width: 0.7 },
    ),
    hole([rim + 1.2, upper]),
    drawnWire([rim + 2, upper], [rim + 7, upper]),
    hiddenWire([at, upper], [at, lower]),
    path(
      [
        ['M', at, lower],
        ['C', at + 4, lower, at + 4, upper + 1.4, at + 0.6, upper + 0.4],
      ],
      { stroke: 'ink', width: 0.7 },
    ),
    hiddenWire([at, upper + 0.6], [11, 13]),
    drawnWire([11, 13], [4.5, 17.5]),
    hole([at, upper]),
    hole([at, lower]),
    label([4, 23.6], texts.start),
    ...lengthMark([9, 24.5], [at, 24.5], texts.length(fromEnd)),
    label([at + 4.6, 16.4], texts.length(apart), 'start'),
    label([rim + 1.2, 29.4], texts.cheekAtStart),
  ]);
}
