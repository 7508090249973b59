import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { isLoop, type LoopDescription } from '../../../engine/kinds/loops.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { circle, line, pointAtAngle, rect } from '../../scene/build.ts';
import type { Point } from '../../scene/scene.ts';
import type { Shape } from '../view/solid.ts';
import { endsAt, turnOf, woundFootprint } from './coil-footprints.ts';
import { DASHED, type Footprint, OUTLINE, upright } from './footprint.ts';
import type { BoardPart } from './parts.ts';

export function footprint(part: BoardPart, set: SetDescription, axis: 'x' | 'y' = 'x'): Footprint {
  switch (part.kind) {
    case 'aerial terminal':
    case 'earth terminal':
      return post(part.terminals[0]);
    case 'outputs':
      return posts(part.terminals);
    case 'coil':
      return part.coil && part.coil.shape !== 'measured' ? woundFootprint(part, part.coil, axis) : can(part);
    case 'loop':
      return isLoop(set.aerial) ? byKind(LOOP, set.aerial, part) : posts(part.terminals);
    case 'variable':
      return part.tuning ? byKind(VARIABLE, part.tuning, part) : framed(part, BOUGHT, BOUGHT, true);
    case 'detector':
      return byKind(DETECTOR, set.detector, part);
    case 'cell':
      return block(part, [52, 17, 16]);
    case 'transformer':
      return block(part, [48, 40, 36], true);
    case 'capacitor':
    case 'resistor':
      return small(part);
    case 'switch':
      return rotary(part);
  }
}

/** A terminal with its screw cap. */
const binding = ([x, y]: Point): Shape[] => [
  { kind: 'cylinder', axis: 'z', from: [x, y, 0], length: 8, radius: 5, fill: 'metal' },
  { kind: 'cylinder', axis: 'z', from: [x, y, 8], length: 10, radius: 6 },
];

/** Of its washer on the board sheet, mm: names of terminals stand outside. */
const POST_RING = 4;

const post = (terminal: string): Footprint => ({
  w: 16,
  h: 16,
  items: [circle([0, 0], POST_RING, OUTLINE)],
  terminals: { [terminal]: [0, 0] },
  shapes: binding([0, 0]),
  drills: [{ at: [0, 0], diameter: 4 }],
  words: 'above',
});

function posts(terminals: readonly string[]): Footprint {
  const at: Point[] = terminals.map((_, i) => [(i - (terminals.length - 1) / 2) * 24, 0]);
  return {
    w: 24 * terminals.length,
    h: 16,
    items: at.map((p) => circle(p, POST_RING, OUTLINE)),
    terminals: Object.fromEntries(terminals.map((t, i) => [t, at[i]])),
    shapes: at.flatMap(binding),
    drills: at.map((p) => ({ at: p, diameter: 4 })),
    words: 'above',
  };
}

/** Two-ended parts on two pins. */
function small(part: BoardPart): Footprint {
  const [a, b] = part.terminals;
  return {
    w: 30,
    h: 9,
    items: [rect(-8, -3, 16, 6, OUTLINE), line([-11, 0], [-8, 0], OUTLINE), line([8, 0], [11, 0], OUTLINE)],
    terminals: { [a]: [-12, 0], [b]: [12, 0] },
    shapes: [upright(0, 0, 16, 6, 6)],
    drills: [
      { at: [-12, 0], diameter: 1.5 },
      { at: [12, 0], diameter: 1.5 },
    ],
    words: 'above',
  };
}

/** Something with its terminals along two sides. */
function block(part: BoardPart, [w, h, height]: readonly [number, number, number], rows = false): Footprint {
  const n = part.terminals.length;
  const terminals = Object.fromEntries(
    part.terminals.map((t, i): [string, Point] => {
      if (!rows) return [t, [n === 1 ? 0 : -w / 2 + (w * i) / (n - 1), 0]];
      const half = n / 2;
      return [t, [i < half ? -w / 2 : w / 2, -h / 4 + (h / 2) * (i % half)]];
    }),
  );
  return {
    w: w + 6,
    h,
    items: [rect(-w / 2, -h / 2, w, h, DASHED)],
    terminals,
    shapes: [upright(0, 0, w, h, height, true)],
    drills: [],
    assumed: true,
    words: 'inside',
  };
}

/** From contact to contact of a rotary switch, and its radius at least, mm. */
const CONTACTS_APART = 7;
const LEAST_RADIUS = 15;

/** A rotary switch, its spindle upward, with its contacts around it. */
function rotary(part: BoardPart): Footprint {
  const n = part.terminals.length;
  const r = Math.max(LEAST_RADIUS, (n * CONTACTS_APART) / (2 * Math.PI));
  const contact = (i: number): Point => pointAtAngle([0, 0], r, -90 + (360 * (i + 0.5)) / n);
  return {
    w: 2 * r + 12,
    h: 2 * r + 12,
    items: [circle([0, 0], r - 2.5, DASHED), circle([0, 0], 3, OUTLINE)],
    terminals: Object.fromEntries(part.terminals.map((t, i) => [t, contact(i)])),
    shapes: [
      { kind: 'cylinder', axis: 'z', from: [0, 0, 0], length: 14, radius: r - 2.5, assumed: true },
      { kind: 'cylinder', axis: 'z', from: [0, 0, 14], length: 14, radius: 9 },
    ],
    drills: [{ at: [0, 0], diameter: 10 }],
    assumed: true,
    words: 'above',
  };
}

/** A coil of which no sizes are known. */
function can(part: BoardPart): Footprint {
  const [w, h] = [42, 36];
  const n = part.terminals.length;
  return {
    w: w + 6,
    h,
    items: [rect(-w / 2, -h / 2, w, h, DASHED)],
    terminals: Object.fromEntries(
      part.terminals.map((t, i): [string, Point] => [t, [-w / 2 + 4 + ((w - 8) * i) / Math.max(1, n - 1), h / 2]]),
    ),
    shapes: [upright(0, 0, w, h, 30, true)],
    drills: [],
    assumed: true,
    words: 'inside',
    axis: 'up',
  };
}

/** A rod along the board, its middle so high over it. mm */
const lying = (from: number, length: number, radius: number, height: number) =>
  ({ kind: 'cylinder', axis: 'x', from: [from, 0, height], length, radius }) as const satisfies Shape;

const LOOP: ByKind<LoopDescription, Footprint, [BoardPart]> = {
  'ferrite rod': (rod, part) => {
    const [w, d, l] = [rod.length * 1e3, rod.diameter * 1e3, rod.winding * 1e3];
    const middle = (rod.position * (w - l)) / 2;
    return {
      w,
      h: d + 4,
      items: [rect(-w / 2, -d / 2, w, d, OUTLINE), rect(middle - l / 2, -d / 2 - 1, l, d + 2, OUTLINE)],
      terminals: endsAt(
        part,
        (t) => middle - l / 2 + (l * turnOf(t, rod.turns, 0)) / rod.turns,
        d / 2 + 1,
        (x, y) => [x, y],
      ),
      shapes: [
        lying(-w / 2, middle - l / 2 + w / 2, d / 2, d / 2 + 1),
        { ...lying(middle - l / 2, l, d / 2 + 1, d / 2 + 1), fill: 'copper', pitch: l / rod.turns },
        lying(middle + l / 2, w / 2 - middle - l / 2, d / 2, d / 2 + 1),
      ],
      drills: [],
      words: 'above',
      axis: 'x',
    };
  },
  // It stands beside the board: its leads end at posts.
  frame: (_, part) => posts(part.terminals),
};

/** Sizes of a bought variable capacitor: frame about this wide and deep, whatever its make. Common practice, no source. */
const BOUGHT = 50;
/** A home-made one's base beyond its sheets, and what of a moving tube one takes hold of, mm. */
const BASE_LONGER = 35;
const BASE_WIDER = 34;
const HAND_END = 80;
/** What stands out of its frame for the knob, mm. */
const SPINDLE = 12;

/** Of its knob the radius, and of a frame the greatest height, mm: common practice, no source. */
const KNOB = 14;
const FRAME_HIGH = 45;

/** A body with a spindle out of it, over the edge of the board. */
function framed(part: BoardPart, w: number, h: number, assumed: boolean): Footprint {
  const [fixed, moving] = part.terminals;
  // Two of them side by side look outward, or their knobs and dials would meet.
  const isLeft = part.role === 'aerial-tuning';
  // Middle of the body.
  const x = ((isLeft ? 1 : -1) * SPINDLE) / 2;
  return {
    w: w + SPINDLE,
    h,
    items: [
      rect(x - w / 2, -h / 2, w, h, assumed ? DASHED : OUTLINE),
      rect(isLeft ? x - w / 2 - SPINDLE : x + w / 2, -3, SPINDLE, 6, OUTLINE),
    ],
    terminals: { [fixed]: [x - w / 4, h / 2], [moving]: [x + w / 4, h / 2] },
    shapes: [
      upright(x, 0, w, h, Math.min(h, FRAME_HIGH), assumed),
      // The knob on its spindle.
      lying(isLeft ? x - w / 2 - SPINDLE : x + w / 2 + SPINDLE / 3, (2 * SPINDLE) / 3, KNOB, KNOB + 2),
    ],
    drills: [],
    assumed,
    body: w - SPINDLE,
    words: 'inside',
  };
}

/** Something that slides out to one side: its length within, its width and what is taken hold of, mm. */
function sliding({ terminals: [fixed, moving] }: BoardPart, l: number, h: number, out: number): Footprint {
  return {
    w: 2 * l + out,
    h,
    items: [
      rect(-l - out / 2, -h / 2, l + out / 2, h, OUTLINE),
      rect(0, -h / 2 + 1, l + out / 2, h - 2, { ...DASHED, stroke: 'soft' }),
    ],
    // The fixed foil's tab is on its short side; the moving one's lead ends at the base's long side.
    terminals: { [fixed]: [-l - out / 2, 0], [moving]: [l / 2, h / 2] },
    shapes: [
      upright(-l / 2 - out / 4, 0, l + out / 2, h, 6),
      { kind: 'box', from: [0, 1 - h / 2, 6], to: [l + out / 2, h / 2 - 1, 8] },
    ],
    drills: [],
    words: 'inside',
  };
}

const bought = (_: TuningDescription, part: BoardPart): Footprint => framed(part, BOUGHT, BOUGHT, true);

const VARIABLE: ByKind<TuningDescription, Footprint, [BoardPart]> = {
  variable: bought,
  measured: bought,
  fixed: bought,
  vanes: ({ outerRadius, vanes, gap }, part) =>
    framed(part, vanes * (gap * 1e3 + 0.7) + 20, 2 * outerRadius * 1e3 + 12, false),
  foil: ({ length, width }, part) => sliding(part, length * 1e3, width * 1e3 + BASE_WIDER, BASE_LONGER),
  tubes: ({ length, innerDiameter, gap }, part) =>
    sliding(part, length * 1e3, (innerDiameter + 2 * gap) * 1e3 + 4, HAND_END),
  book: ({ length, width }, { terminals: [fixed, moving] }) => {
    const [w, h] = [width * 1e3 + 6, length * 1e3 + 10];
    return {
      w,
      h,
      items: [
        rect(-w / 2, -h / 2, w, h, OUTLINE),
        line([-w / 2, -h / 2 + 4], [w / 2, -h / 2 + 4], { stroke: 'soft', width: 0.2 }),
      ],
      terminals: { [fixed]: [-w / 4, h / 2], [moving]: [w / 4, h / 2] },
      shapes: [upright(0, 0, w, h, 10)],
      drills: [],
      words: 'inside',
    };
  },
};

type DetectorPrint = (_: DetectorDescription, part: BoardPart) => Footprint;

/** The block of a crystal's stand, m: its size, and its two holes. */
export const CRYSTAL_BLOCK = { length: 0.058, width: 0.026, apart: 0.044, hole: 0.0032 };
/** From pin to pin of a diode, m. */
export const DIODE_PINS = 0.028;

/** The same in mm, its holes from the middle. */
const BLOCK = {
  w: CRYSTAL_BLOCK.length * 1e3,
  h: CRYSTAL_BLOCK.width * 1e3,
  hole: (CRYSTAL_BLOCK.apart * 1e3) / 2,
} as const;
const PIN = (DIODE_PINS * 1e3) / 2;

/** A stand with the crystal's cup and the arm of the whisker. */
const crystal: DetectorPrint = (_, { terminals: [anode, cathode] }) => ({
  w: BLOCK.w,
  h: BLOCK.h,
  items: [
    rect(-BLOCK.w / 2, -BLOCK.h / 2, BLOCK.w, BLOCK.h, OUTLINE),
    circle([15, 0], 7, { stroke: 'soft', width: 0.2 }),
    line([-16, 0], [13, 0], { stroke: 'soft', width: 0.2 }),
  ],
  terminals: { [anode]: [-BLOCK.hole, 0], [cathode]: [BLOCK.hole, 0] },
  shapes: [
    upright(0, 0, BLOCK.w, BLOCK.h, 8),
    // The crystal in its cup, and the arm over it.
    { kind: 'cylinder', axis: 'z', from: [15, 0, 8], length: 10, radius: 7, fill: 'metal' },
    { kind: 'cylinder', axis: 'z', from: [-16, 0, 8], length: 16, radius: 3, fill: 'metal' },
    { kind: 'box', from: [-18, -1, 24], to: [15, 1, 26] },
  ],
  drills: [
    { at: [-BLOCK.hole, 0], diameter: CRYSTAL_BLOCK.hole * 1e3 },
    { at: [BLOCK.hole, 0], diameter: CRYSTAL_BLOCK.hole * 1e3 },
  ],
  words: 'above',
});

const valve: DetectorPrint = (_, { terminals: [anode, cathode] }) => ({
  w: 34,
  h: 30,
  items: [circle([0, 0], 11, OUTLINE), circle([0, 0], 8, { stroke: 'soft', width: 0.2 })],
  terminals: { [anode]: [-11, 0], [cathode]: [11, 0] },
  // Its holder and the glass.
  shapes: [
    { kind: 'cylinder', axis: 'z', from: [0, 0, 0], length: 10, radius: 11 },
    { kind: 'cylinder', axis: 'z', from: [0, 0, 10], length: 38, radius: 9, fill: 'metal' },
  ],
  drills: [{ at: [0, 0], diameter: 16 }],
  words: 'above',
});

/** A diode with wires, its cathode marked by a ring. */
const diode: DetectorPrint = (_, { terminals: [anode, cathode] }) => ({
  w: 34,
  h: 9,
  items: [
    rect(-5, -2, 10, 4, OUTLINE),
    rect(2.5, -2, 1.3, 4, { fill: 'ink' }),
    line([-PIN, 0], [-5, 0], OUTLINE),
    line([5, 0], [PIN, 0], OUTLINE),
  ],
  terminals: { [anode]: [-PIN, 0], [cathode]: [PIN, 0] },
  shapes: [lying(-5, 10, 2, 3)],
  drills: [
    { at: [-PIN, 0], diameter: 1.5 },
    { at: [PIN, 0], diameter: 1.5 },
  ],
  words: 'above',
});

const DETECTOR: ByKind<DetectorDescription, Footprint, [BoardPart]> = {
  galena: crystal,
  mineral: crystal,
  valve,
  germanium: diode,
  schottky: diode,
  silicon: diode,
  exponential: diode,
  measured: diode,
};
