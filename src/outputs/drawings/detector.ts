import type { DetectorDescription } from '../../engine/kinds/detectors/detector-schema.ts';
import { capital, formatQuantity } from '../../engine/units/format.ts';
import { circle, group, line, path, polyline, rect, text } from '../scene/build.ts';
import type { Item, Point, Scene, Segment } from '../scene/scene.ts';
import { BOLD, drawing, PLAIN, type Room, SMALL, sketchNote, THIN } from './paper.ts';

/** The detector as one would see it on the board, about half again its size; not a thing to measure from. */
export function drawDetector(detector: DetectorDescription, room: Room = {}): Scene {
  const { width = 130, height = 70 } = room;
  const centre: Point = [width / 2, height / 2];
  const two = detector.wiring !== 'single';
  const one = sketchOf(detector);
  const items: Item[] = two
    ? [
        group(one, { move: [centre[0], centre[1] - height * 0.19], scale: 0.6 }),
        group(one, { move: [centre[0], centre[1] + height * 0.19], scale: 0.6 }),
      ]
    : [group(one, { move: centre })];
  const { title, words } = detectorWords(detector);
  const bias = detector.bias ? ` Bias cell of ${formatQuantity(detector.bias, 'voltage')}.` : '';
  return drawing({ width, height }, title, `${words}${two ? ` Two of them, ${detector.wiring}.` : ''}${bias}`, [
    group(items, { part: 'detector', title }),
    text([2, height - 2], `${title}${two ? ` (two, ${detector.wiring})` : ''}`, SMALL),
    sketchNote(width, height),
  ]);
}

const CRYSTALS = { galena: 'Galena and cat’s whisker', mineral: 'Crystal and contact' } as const;

export function detectorWords(detector: DetectorDescription): { title: string; words: string } {
  switch (detector.kind) {
    case 'galena':
      return {
        title: CRYSTALS.galena,
        words: `A lump of galena in its cup, touched lightly by a springy wire; a ${detector.spot} spot.`,
      };
    case 'mineral':
      return {
        title: `${capital(detector.mineral)} detector`,
        words:
          detector.mineral === 'zincite-bornite'
            ? 'Two crystals pressed together.'
            : `A crystal of ${detector.mineral} in its cup with a point pressed on it.`,
      };
    case 'germanium':
      return { title: `Germanium diode, ${detector.make}`, words: 'A small glass diode; the band marks its cathode.' };
    case 'schottky':
      return { title: `Schottky diode ${detector.type}`, words: 'A small diode; the band marks its cathode.' };
    case 'silicon':
      return { title: 'Silicon diode', words: 'A small diode; the band marks its cathode.' };
    case 'exponential':
      return { title: 'Diode as measured', words: 'A diode known by its saturation current and ideality.' };
    case 'measured':
      return { title: 'Detector as measured', words: 'A detector known by its measured points.' };
    case 'valve':
      return {
        title: 'Valve diode',
        words: `A valve whose anode collects what the cathode gives off, heated with ${formatQuantity(detector.heaterVoltage, 'voltage')}.`,
      };
  }
}

/** Round the origin, about 80 by 46 mm. */
function sketchOf(detector: DetectorDescription): Item[] {
  switch (detector.kind) {
    case 'galena':
      return whisker(false);
    case 'mineral':
      return whisker(detector.mineral === 'zincite-bornite');
    case 'valve':
      return valve();
    default:
      return diode(detector.kind === 'silicon' || detector.kind === 'schottky' ? 'metal' : 'card');
  }
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
  const spring: Segment[] = [['M', 9, -13]];
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
    line([29, -13], [38, -13], { stroke: 'ink', width: 1.6, title: 'handle' }),
  ];
}

function diode(body: 'card' | 'metal'): Item[] {
  return [
    line([-40, 0], [40, 0], { stroke: 'metal', width: 1.1 }),
    rect(-17, -7, 34, 14, { fill: body, stroke: 'ink', width: PLAIN, radius: 5 }),
    rect(8, -7, 4, 14, { fill: 'ink', title: 'band: cathode' }),
    text([-30, -4], 'anode', SMALL, { anchor: 'middle', role: 'soft' }),
    text([30, -4], 'cathode', SMALL, { anchor: 'middle', role: 'soft' }),
  ];
}

function valve(): Item[] {
  const glass: Segment[] = [
    ['M', -12, 16],
    ['L', -12, -10],
    ['C', -12, -20, -4, -22, 0, -25],
    ['C', 4, -22, 12, -20, 12, -10],
    ['L', 12, 16],
    ['Z'],
  ];
  return [
    path(glass, { fill: 'sea', stroke: 'ink', width: PLAIN, opacity: 0.6 }),
    rect(-5.5, -14, 11, 22, { stroke: 'metal', width: 1.4, title: 'anode' }),
    line([0, -11], [0, 10], { stroke: 'ink', width: 1.6, title: 'cathode' }),
    line([0, -9], [0, 8], { stroke: 'warning', width: 0.7, title: 'heater' }),
    rect(-13, 16, 26, 5, { fill: 'card', stroke: 'ink', width: PLAIN }),
    ...[-9, -3, 3, 9].map((x) => line([x, 21], [x, 26], { stroke: 'metal', width: 1 })),
    line([5.5, -10], [22, -10], { stroke: 'soft', width: THIN }),
    text([23, -10], 'anode', SMALL, { sits: 'middle', role: 'soft' }),
    line([0.8, 0], [22, 0], { stroke: 'soft', width: THIN }),
    text([23, 0], 'cathode and heater', SMALL, { sits: 'middle', role: 'soft' }),
  ];
}
