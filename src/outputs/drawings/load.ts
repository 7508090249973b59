import { type ByKind, byKind } from '../../engine/kinds/by-kind.ts';
import type { LoadDescription } from '../../engine/kinds/loads/load-schema.ts';
import { loadModel } from '../../engine/kinds/models.ts';
import { magnitude } from '../../engine/numerics/complex.ts';
import { REFERENCE_FREQUENCY } from '../../engine/parts/load/response.ts';
import { arc, circle, group, line, path, rect, text } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { loadDrawing } from '../words/index.ts';
import { BOLD, drawing, type PaperRoom, PLAIN, SMALL, sketchFigures, sketchNote } from './paper.ts';

/**
 * What one listens with, simply drawn, with its impedance and sensitivity; a transformer before it if there is one.
 * @param load as read
 * @param room size of the picture, mm; default as large as it needs
 * @returns a scene, mm
 * @throws RangeError when it cannot be as described
 */
export function drawLoad(load: LoadDescription, room: PaperRoom = {}): Scene {
  const { width = 130, height = 70 } = room;
  const shift = load.transformer ? 26 : 0;
  const items: Item[] = [group(byKind(SKETCHES, load), { move: [width / 2 + shift, height / 2 + LOWER] })];
  if (load.transformer)
    items.push(
      group(transformer(loadDrawing.ratio(load.transformer.ratio)), { move: [width / 2 - 34, height / 2 + LOWER] }),
    );
  const title = loadDrawing.title(load);
  return drawing({ width, height }, title, loadDrawing.description(load), [
    group(items, { part: 'load', title }),
    ...sketchFigures(figures(load)),
    text([2, height - 2], title, SMALL),
    sketchNote(width, height),
  ]);
}

/** Below the middle: the figures stand above, mm. */
const LOWER = 2;

function figures(load: LoadDescription): string[] {
  const model = loadModel(load);
  return loadDrawing.figures({
    impedance: magnitude(model.transducerImpedanceAt(REFERENCE_FREQUENCY)),
    sensitivity: model.sensitivity,
  });
}

const SKETCHES: ByKind<LoadDescription, Item[]> = {
  phones: () => headset(),
  'moving-coil phones': () => headset(),
  'crystal earpiece': () => earpiece(),
  amplifier: () => amplifier(),
};

function headset(): Item[] {
  const cup = (x: number): Item[] => [
    rect(x - 4, 2, 8, 18, { fill: 'card', stroke: 'ink', width: BOLD, radius: 3 }),
    circle([x, 0.5], 1.2, { fill: 'metal', stroke: 'ink', width: PLAIN }),
  ];
  return [
    path(arc([0, 0], 22, 180, 360), { stroke: 'metal', width: 1.6 }),
    ...cup(-22),
    ...cup(22),
    path(
      [
        ['M', -22, 20],
        ['C', -22, 27, -4, 24, 0, 27],
      ],
      { stroke: 'copper', width: BOLD },
    ),
    path(
      [
        ['M', 22, 20],
        ['C', 22, 27, 4, 24, 0, 27],
      ],
      { stroke: 'copper', width: BOLD },
    ),
  ];
}

function earpiece(): Item[] {
  return [
    path([['M', 6, -4], ['L', 18, -4], ['A', 4, false, true, 18, 4], ['L', 6, 4], ['Z']], {
      fill: 'paper',
      stroke: 'ink',
      width: PLAIN,
    }),
    rect(-8, -13, 14, 26, { fill: 'card', stroke: 'ink', width: BOLD, radius: 3 }),
    path(
      [
        ['M', -8, 0],
        ['C', -22, 2, -18, 20, -34, 20],
      ],
      { stroke: 'copper', width: BOLD },
    ),
  ];
}

function amplifier(): Item[] {
  const speaker: Point = [15, 0];
  return [
    rect(-32, -20, 64, 40, { fill: 'card', stroke: 'ink', width: BOLD, radius: 2 }),
    circle(speaker, 14, { fill: 'paper', stroke: 'ink', width: PLAIN }),
    circle(speaker, 9, { stroke: 'soft', width: PLAIN }),
    circle(speaker, 4, { fill: 'metal', stroke: 'ink', width: PLAIN }),
    circle([-18, 4], 6, { fill: 'paper', stroke: 'ink', width: PLAIN }),
    line([-18, 4], [-14.5, 0], { stroke: 'ink', width: BOLD }),
    text([-18, 15], loadDrawing.volume, 2.6, { anchor: 'middle', role: 'soft' }),
    circle([-25, -12], 1.6, { fill: 'metal', stroke: 'ink', width: PLAIN }),
    circle([-18, -12], 1.6, { fill: 'metal', stroke: 'ink', width: PLAIN }),
  ];
}

function transformer(ratio: string): Item[] {
  return [
    text([0, 19.5], ratio, SMALL, { anchor: 'middle' }),
    rect(-13, -15, 26, 30, { fill: 'metal', stroke: 'ink', width: BOLD, opacity: 0.8 }),
    rect(-7, -11, 14, 22, { fill: 'copper', stroke: 'ink', width: PLAIN }),
    ...[-8, -4, 0, 4, 8].map((y) => line([-7, y], [7, y + 1.4], { stroke: 'card', width: PLAIN })),
    line([13, -8], [24, -8], { stroke: 'copper', width: BOLD }),
    line([13, 8], [24, 8], { stroke: 'copper', width: BOLD }),
  ];
}
