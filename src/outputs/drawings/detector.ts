import { type ByKind, byKind } from '../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../engine/kinds/detectors/detector-schema.ts';
import { hasHeater } from '../../engine/kinds/detectors/detector-traits.ts';
import { detectorModel } from '../../engine/kinds/models.ts';
import { slopeResistance } from '../../engine/parts/detector/detector.ts';
import { temperatureVoltage } from '../../engine/units/quantities.ts';
import { circle, group, line, path, polyline, rect, text } from '../scene/build.ts';
import type { Item, PathSegment, Point, Scene } from '../scene/scene.ts';
import { detectorDrawing } from '../words/index.ts';
import { BOLD, drawing, type PaperRoom, PLAIN, SMALL, sketchFigures, sketchNote, THIN } from './paper.ts';

/**
 * The detector as one would see it on the board, about half again its size, with the figures of its curve; not a thing
 * to measure from.
 * @param detector as read
 * @param room size of the picture, mm; default as large as it needs
 * @returns a scene, mm
 * @throws RangeError for values no device has
 */
export function drawDetector(detector: DetectorDescription, room: PaperRoom = {}): Scene {
  const { width = 130, height = 70 } = room;
  const centre: Point = [width / 2, height / 2];
  const two = detector.wiring !== 'single';
  const one = byKind(sketches(two ? SMALL / PAIRED : SMALL), detector);
  const items: Item[] = two
    ? [
        group(one, { move: [centre[0], centre[1] - height * 0.19], scale: PAIRED }),
        group(one, { move: [centre[0], centre[1] + height * 0.19], scale: PAIRED }),
      ]
    : [group(one, { move: centre })];
  const title = detectorDrawing.title(detector);
  return drawing({ width, height }, title, detectorDrawing.description(detector), [
    group(items, { part: 'detector', title }),
    ...sketchFigures(figures(detector)),
    text([2, height - 2], detectorDrawing.caption(detector), SMALL),
    sketchNote(width, height),
  ]);
}

function figures(detector: DetectorDescription): string[] {
  const model = detectorModel(detector);
  const bias = detector.bias ?? 0;
  return detectorDrawing.figures({
    resistance: slopeResistance(model, bias),
    bias,
    ideality: model.law && model.slopeVoltage / temperatureVoltage(model.temperature),
    capacitance: model.junctionCapacitance,
    heaterVoltage: hasHeater(detector) ? detector.heaterVoltage : undefined,
  });
}

/** Size of each of two. */
const PAIRED = 0.6;

/** Round the origin, about 80 by 46 mm. @param letters height of the letters before it is made smaller, mm */
function sketches(letters: number): ByKind<DetectorDescription, Item[]> {
  const glassDiode = (): Item[] => diode('card', letters);
  const metalDiode = (): Item[] => diode('metal', letters);
  return {
    galena: () => whisker(false),
    mineral: ({ mineral }) => whisker(mineral === 'zincite-bornite'),
    valve: () => valve(letters),
    germanium: glassDiode,
    schottky: metalDiode,
    silicon: metalDiode,
    exponential: glassDiode,
    measured: glassDiode,
  };
}

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

function diode(body: 'card' | 'metal', letters: number): Item[] {
  return [
    line([-40, 0], [40, 0], { stroke: 'metal', width: 1.1 }),
    rect(-17, -7, 34, 14, { fill: body, stroke: 'ink', width: PLAIN, radius: 5 }),
    rect(8, -7, 4, 14, { fill: 'ink', title: detectorDrawing.band }),
    text([-30, -4], detectorDrawing.anode, letters, { anchor: 'middle', role: 'soft' }),
    text([30, -4], detectorDrawing.cathode, letters, { anchor: 'middle', role: 'soft' }),
  ];
}

function valve(letters: number): Item[] {
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
    text([23, -10], detectorDrawing.anode, letters, { sits: 'middle', role: 'soft' }),
    line([0.8, 0], [22, 0], { stroke: 'soft', width: THIN }),
    text([23, 0], detectorDrawing.cathodeAndHeater, letters, { sits: 'middle', role: 'soft' }),
  ];
}
