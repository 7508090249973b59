import { circle, line, path, polyline, rect } from '../../scene/build.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { detectorPictureWords as texts } from '../../words/index.ts';
import { drawnWire, HIDDEN, label, moveArrow, section, stepScene, wirePath } from '../winding/strokes.ts';

const OUTLINE = { stroke: 'ink', width: 0.35 } as const;
const FINE = { stroke: 'ink', width: 0.18 } as const;
const CARD = { ...OUTLINE, fill: 'card' } as const;
const METAL = { ...OUTLINE, fill: 'faint' } as const;

/** The block of a crystal detector, m: its size, and its two holes from middle to middle. */
interface CrystalBlock {
  readonly length: number;
  readonly width: number;
  readonly apart: number;
  readonly hole: number;
}

/** The block from above at full size, with its holes. */
export function blockDrilled({ length, width, apart, hole }: CrystalBlock): Scene {
  const [w, h, between, d] = [length, width, apart, hole].map((size) => size * 1e3);
  const left = (66 - w) / 2;
  const y = 2 + h / 2;
  const x = [left + (w - between) / 2, left + (w + between) / 2];
  const drill = (at: number): Item[] => [
    circle([at, y], d / 2, OUTLINE),
    line([at - d / 2 - 1.2, y], [at + d / 2 + 1.2, y], FINE),
    line([at, y - d / 2 - 1.2], [at, y + d / 2 + 1.2], FINE),
  ];
  return stepScene(
    texts.titles.block,
    h + 15,
    [
      rect(left, 2, w, h, CARD),
      ...x.flatMap(drill),
      line([x[0], h + 6], [x[1], h + 6], FINE),
      ...x.map((at) => line([at, h + 5], [at, h + 7], FINE)),
      label([33, h + 5.2], texts.length(apart)),
      label([x[0], y - 5], texts.arm),
      label([x[1], y - 5], texts.cup),
      label([33, h + 13.4], texts.outside(length, width)),
    ],
    1,
  );
}

const LUMP: readonly Point[] = [
  [-6, 0],
  [-5, -5],
  [-1, -7.5],
  [3, -6],
  [6, -3],
  [5.5, 0],
];
const lump = (x: number, y: number, flip: 1 | -1 = 1): Item =>
  polyline(
    LUMP.map(([px, py]): Point => [x + px, y + flip * py]),
    { ...METAL, closed: true },
  );

/** The crystal packed into its cup, in section. */
export const crystalInCup = (): Scene =>
  stepScene(texts.titles.cup, 33, [
    rect(10, 22, 46, 4, CARD),
    rect(17, 9, 20, 13, { ...OUTLINE, fill: 'paper' }),
    rect(17.6, 11, 18.8, 10.4, { ...FINE, fill: 'card', dash: HIDDEN }),
    lump(27, 15),
    rect(25.6, 22, 2.8, 8, METAL),
    rect(23.5, 26, 7, 2, METAL),
    line([36, 17], [44, 15], FINE),
    label([45, 16], texts.packing, 'start'),
    line([30, 9.5], [44, 6], FINE),
    label([45, 7], texts.bestFace, 'start'),
    label([45, 31.5], texts.screwAndNut, 'start'),
    line([30.5, 28], [44, 30.4], FINE),
  ]);

/** The whisker wound on a rod, and its tip. */
export function whiskerWound(): Scene {
  const turns: Item[] = [];
  for (let i = 0; i < 4; i++)
    turns.push(wirePath(['M', 10 + i * 3.4, 6], ['C', 13 + i * 3.4, 4, 13 + i * 3.4, 16, 11.7 + i * 3.4, 15]));
  return stepScene(texts.titles.whisker, 28, [
    rect(3, 7, 30, 7, CARD),
    ...turns,
    drawnWire([23.5, 6], [38, 5]),
    drawnWire([10, 6], [4, 3]),
    label([18, 21.5], texts.onRod),
    // The tip, much enlarged.
    polyline(
      [
        [44, 4],
        [60, 4],
        [53, 12],
        [44, 12],
      ],
      { ...METAL, closed: true },
    ),
    line([57.5, 5.4], [62, 9], FINE),
    label([53, 17], texts.tipOblique),
    label([53, 21.5], texts.enlarged),
    label([18, 26.4], texts.turnsOfSpring),
  ]);
}

/** Cup, crystal, whisker and arm on the block, from the side. @param pair a second crystal in the arm. */
export const crystalDetector = (pair: boolean): Scene =>
  stepScene(texts.titles.whole, 40, [
    rect(4, 27, 58, 5, CARD),
    rect(41, 18, 14, 9, { ...OUTLINE, fill: 'paper' }),
    lump(48, 18),
    rect(9, 9, 4, 18, METAL),
    rect(7.5, 25, 7, 2, METAL),
    drawnWire([4, 12], [pair ? 44 : 36, 12]),
    circle([11, 12], 1.8, METAL),
    rect(1, 10.6, 5, 2.8, CARD),
    ...(pair
      ? [rect(43, 3, 10, 4, { ...OUTLINE, fill: 'paper' }), lump(48, 6.6, -1), drawnWire([44, 12], [44, 7])]
      : [
          path(
            [
              ['M', 36, 12],
              ['C', 38, 7, 40, 16, 42, 10],
              ['C', 44, 5, 45, 14, 46.5, 10.6],
            ],
            { ...OUTLINE, width: 0.5 },
          ),
        ]),
    label([5, 7], texts.handle, 'start'),
    label([27, 10], texts.arm),
    label([57, 24], texts.cup, 'start'),
    label([11, 37.4], texts.anode),
    label([48, 37.4], texts.cathode),
    label([24, 18], pair ? texts.pressTogether : texts.touchLightly),
  ]);

/** A diode with bent leads on its pins. @param apart of the pins, m. @param bend from the body, m. */
export function leadsBent(apart: number, bend: number): Scene {
  const scale = 2;
  const [between, away] = [apart * 1e3 * scale, bend * 1e3];
  const x = [33 - between / 2, 33 + between / 2];
  return stepScene(
    texts.titles.leads,
    34,
    [
      rect(3, 24, 60, 4, CARD),
      rect(28, 7, 10, 6, METAL),
      rect(34.5, 7, 1.8, 6, { fill: 'ink' }),
      drawnWire([28, 10], [x[0] + 1, 10], [x[0], 11], [x[0], 24]),
      drawnWire([38, 10], [x[1] - 1, 10], [x[1], 11], [x[1], 24]),
      label([x[0] + 2, 20], texts.anode, 'start'),
      label([x[1] - 2, 20], texts.cathode, 'end'),
      line([35.4, 6.4], [40, 3.6], FINE),
      label([41, 4.4], texts.band, 'start'),
      line([x[0], 30], [x[1], 30], FINE),
      ...x.map((at) => line([at, 29], [at, 31], FINE)),
      label([33, 33.4], texts.length(apart)),
      label([3, 4.4], texts.bend(away / 1e3), 'start'),
    ],
    scale,
  );
}

/** Pliers between body and joint take up the heat. */
export const pliersOnLead = (): Scene =>
  stepScene(texts.titles.heat, 30, [
    rect(4, 9, 12, 7, METAL),
    rect(12, 9, 2, 7, { fill: 'ink' }),
    drawnWire([16, 12.5], [58, 12.5]),
    // Jaws.
    polyline(
      [
        [27, 11.6],
        [35, 11.6],
        [37, 3],
        [30, 3],
      ],
      { ...METAL, closed: true },
    ),
    polyline(
      [
        [27, 13.4],
        [35, 13.4],
        [37, 22],
        [30, 22],
      ],
      { ...METAL, closed: true },
    ),
    rect(54, 10.5, 3, 13, METAL),
    polyline(
      [
        [57.5, 12],
        [65, 4],
        [66, 6],
        [58.5, 13.4],
      ],
      { ...OUTLINE, fill: 'ink', closed: true },
    ),
    label([10, 6.4], texts.diode),
    label([33, 27.4], texts.pliers),
    label([55.5, 27.4], texts.pin),
    label([57, 3.6], texts.iron, 'end'),
  ]);

/** Pins of a holder from below, counted clockwise from the gap. */
export function holderFromBelow(): Scene {
  const [x, y, r] = [17, 17, 10];
  const pins = 9;
  const dots = Array.from({ length: pins }, (_, i): Item[] => {
    // The gap is at the foot.
    const a = ((126 + i * 36) * Math.PI) / 180;
    return section([x + r * Math.cos(a), y + r * Math.sin(a)], 2.1, i + 1);
  });
  return stepScene(texts.titles.holder, 40, [
    circle([x, y], 14.5, CARD),
    ...dots.flat(),
    ...moveArrow([x - 3.4, y + 3], [x - 3.4, y - 3]),
    label([35, 8], texts.fromBelow, 'start'),
    label([35, 13], texts.clockwise, 'start'),
    label([35, 18], texts.fromGap, 'start'),
    label([x, 38.4], texts.gap),
    line([x, y + r], [x, 35], FINE),
  ]);
}

/** Heater leads twisted, with a fuse at the supply. */
export function heaterLeads(): Scene {
  const strand = (side: 1 | -1): Item =>
    path(
      [
        ['M', 16, 12 + side * 2.4],
        ...Array.from({ length: 7 }, (_, i) => {
          const [from, to] = [16 + i * 4, 20 + i * 4];
          const out = 12 + side * (i % 2 === 0 ? 2.4 : -2.4);
          return ['C', from + 1.3, out, to - 1.3, 12 + 2 * (12 - out) * 0.5, to, 12 - (out - 12)] as const;
        }),
      ],
      { stroke: 'ink', width: 0.7 },
    );
  return stepScene(texts.titles.heater, 27, [
    circle([9, 12], 7, CARD),
    circle([12, 9.6], 1, OUTLINE),
    circle([12, 14.4], 1, OUTLINE),
    strand(1),
    strand(-1),
    drawnWire([44, 9.6], [54, 9.6]),
    drawnWire([44, 14.4], [54, 14.4]),
    rect(46.5, 8.2, 6, 2.8, { ...OUTLINE, fill: 'paper' }),
    rect(54, 5, 11, 14, METAL),
    label([9, 24], texts.holder),
    label([30, 6.4], texts.twisted),
    label([49.5, 6.4], texts.fuse),
    label([59.5, 24], texts.supply),
  ]);
}
