import { type ByKind, byKind } from '../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../engine/kinds/detectors/detector-schema.ts';
import { circle, group, line, path, polyline, rect, text } from '../scene/build.ts';
import type { Item, PathSegment, Point, Scene } from '../scene/scene.ts';
import { detectorDrawing } from '../words/index.ts';
import { BOLD, drawing, type PaperRoom, PLAIN, SMALL, sketchNote, THIN } from './paper.ts';

/**
 * The detector as one would see it on the board, about half again its size; not a thing to measure from.
 * @param detector as read
 * @param room size of the picture, mm; default as large as it needs
 * @returns a scene, mm
 */
export function drawDetector(detector: DetectorDescription, room: PaperRoom = {}): Scene {
  const { width = 130, height = 70 } = room;
  const centre: Point = [width / 2, height / 2];
  const two = detector.wiring !== 'single';
  const one = byKind(SKETCHES, detector);
  const items: Item[] = two
    ? [
        group(one, { move: [centre[0], centre[1] - height * 0.19], scale: 0.6 }),
        group(one, { move: [centre[0], centre[1] + height * 0.19], scale: 0.6 }),
      ]
    : [group(one, { move: centre })];
  const title = detectorDrawing.title(detector);
  return drawing({ width, height }, title, detectorDrawing.description(detector), [
    group(items, { part: 'detector', title }),
    text([2, height - 2], detectorDrawing.caption(detector), SMALL),
    sketchNote(width, height),
  ]);
}

const glassDiode = (): Item[] => diode('card');
const metalDiode = (): Item[] => diode('metal');

/** Round the origin, about 80 by 46 mm. */
const SKETCHES: ByKind<DetectorDescription, Item[]> = {
  galena: () => whisker(false),
  mineral: ({ mineral }) => whisker(mineral === 'zincite-bornite'),
  valve: () => valve(),
  germanium: glassDiode,
  schottky: metalDiode,
  silicon: metalDiode,
  exponential: glassDiode,
  measured: glassDiode,
};

function whisker(pair: boolean): Item[] {
  const post = (x: number, top: number): Item[] => [
    rect(x - 2.5, top, 5, 18 - top, { fill: 'metal', stroke: 'ink', width: PLAIN, radius: 0.8 }),
    rect(x - 4, 15.5, 8, 2.5, { fill: 'metal', stroke: 'ink', width: PLAIN }),
  ];
  const lump = (x: number, y: number, flip: 1 | -1): Item =>
    polyline(
      (
        [
          [-8, 0],
          [-6.5, -5],
          [-2, -8],
          [3, -6.5],
          [7.5, -7],
          [9, -2],
          [8, 0],
        ] as Point[]
      ).map(([px, py]) => [x + px, y + flip * py]),
      { fill: 'metal', stroke: 'ink', width: PLAIN, closed: true },
    );
  // A spring of thin wire, wound round the line from arm to crystal.
  const spring: PathSegment[] = [['M', 9, -13]];
  for (let i = 0; i < 4; i++) spring.push(['C', 6 - 6 * i, -17, 4 - 6 * i, -7, 8 - 6 * i, -12.5]);
  spring.push(['C', -14, -13, -17, -10, -18, -3.2]);
  return [
    rect(-40, 18, 80, 5, { fill: 'card', stroke: 'ink', width: PLAIN, radius: 1 }),
    // Cup with its crystal.
    rect(-30, 4, 22, 11, { fill: 'paper', stroke: 'ink', width: BOLD, radius: 1 }),
    rect(-22, 15, 6, 3, { fill: 'metal', stroke: 'ink', width: PLAIN }),
    lump(-19, 4, 1),
    ...post(26, -13),
    ...(pair
      ? [
          line([26, -13], [-12, -13], { stroke: 'metal', width: 2 }),
          rect(-24, -15, 12, 5, { fill: 'paper', stroke: 'ink', width: BOLD }),
          lump(-18, -10, -1),
        ]
      : [line([26, -13], [9, -13], { stroke: 'metal', width: 2 }), path(spring, { stroke: 'copper', width: 0.5 })]),
    circle([26, -13], 3, { fill: 'metal', stroke: 'ink', width: PLAIN }),
    line([29, -13], [38, -13], { stroke: 'ink', width: 1.6, title: detectorDrawing.handle }),
  ];
}

function diode(body: 'card' | 'metal'): Item[] {
  return [
    line([-40, 0], [40, 0], { stroke: 'metal', width: 1.1 }),
    rect(-17, -7, 34, 14, { fill: body, stroke: 'ink', width: PLAIN, radius: 5 }),
    rect(8, -7, 4, 14, { fill: 'ink', title: detectorDrawing.band }),
    text([-30, -4], detectorDrawing.anode, SMALL, { anchor: 'middle', role: 'soft' }),
    text([30, -4], detectorDrawing.cathode, SMALL, { anchor: 'middle', role: 'soft' }),
  ];
}

function valve(): Item[] {
  const glass: PathSegment[] = [
    ['M', -12, 16],
    ['L', -12, -10],
    ['C', -12, -20, -4, -22, 0, -25],
    ['C', 4, -22, 12, -20, 12, -10],
    ['L', 12, 16],
    ['Z'],
  ];
  return [
    path(glass, { fill: 'sea', stroke: 'ink', width: PLAIN, opacity: 0.6 }),
    rect(-5.5, -14, 11, 22, { stroke: 'metal', width: 1.4, title: detectorDrawing.anode }),
    line([0, -11], [0, 10], { stroke: 'ink', width: 1.6, title: detectorDrawing.cathode }),
    line([0, -9], [0, 8], { stroke: 'warning', width: 0.7, title: detectorDrawing.heater }),
    rect(-13, 16, 26, 5, { fill: 'card', stroke: 'ink', width: PLAIN }),
    ...[-9, -3, 3, 9].map((x) => line([x, 21], [x, 26], { stroke: 'metal', width: 1 })),
    line([5.5, -10], [22, -10], { stroke: 'soft', width: THIN }),
    text([23, -10], detectorDrawing.anode, SMALL, { sits: 'middle', role: 'soft' }),
    line([0.8, 0], [22, 0], { stroke: 'soft', width: THIN }),
    text([23, 0], detectorDrawing.cathodeAndHeater, SMALL, { sits: 'middle', role: 'soft' }),
  ];
}
