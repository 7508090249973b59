import type { Terminal } from '../../../engine/built/built-set.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { alongPile, CHEEK_THICKNESS, cheekDiameter } from '../../drawings/coil/cheek.ts';
import { close, overall, SPARE } from '../../drawings/coil/drawn.ts';
import { solenoidLength } from '../../drawings/coil/solenoid.ts';
import { spiderOutline } from '../../drawings/coil/spider.ts';
import { circle, line, polyline, rect } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import type { BoardPart } from './parts.ts';

/** What a part covers of the board, about its middle; x to the right, y down, mm. */
export interface Footprint {
  readonly w: number;
  readonly h: number;
  readonly items: readonly Item[];
  /** Where wires are joined. */
  readonly terminals: Readonly<Record<string, Point>>;
  /** Holes: place and diameter. */
  readonly drills: readonly { readonly at: Point; readonly diameter: number }[];
  /** A body of unknown size is drawn dashed. */
  readonly assumed?: boolean;
  /** Width of the body alone, where something stands out of it; default `w`. */
  readonly body?: number;
  /** Room for words inside. */
  readonly words: 'inside' | 'above';
  /** Axis of a coil: along x, along y, or up through the board. */
  readonly axis?: 'x' | 'y' | 'up';
}

const OUTLINE = { stroke: 'ink', width: 0.3 } as const;
const DASHED = { ...OUTLINE, dash: [2, 1.2] } as const;

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
      return loopFootprint(part, set);
    case 'variable':
      return variableFootprint(part, part.tuning);
    case 'detector':
      return detectorFootprint(part, set);
    case 'cell':
      return block(part, 52, 17);
    case 'transformer':
      return block(part, 48, 40, true);
    case 'capacitor':
    case 'resistor':
      return small(part);
  }
}

const post = (terminal: string): Footprint => ({
  w: 16,
  h: 16,
  items: [circle([0, 0], 6, OUTLINE)],
  terminals: { [terminal]: [0, 0] },
  drills: [{ at: [0, 0], diameter: 4 }],
  words: 'above',
});

function posts(terminals: readonly string[]): Footprint {
  const at: Point[] = terminals.map((_, i) => [(i - (terminals.length - 1) / 2) * 24, 0]);
  return {
    w: 24 * terminals.length,
    h: 16,
    items: at.map((p) => circle(p, 6, OUTLINE)),
    terminals: Object.fromEntries(terminals.map((t, i) => [t, at[i]])),
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
    drills: [
      { at: [-12, 0], diameter: 1.5 },
      { at: [12, 0], diameter: 1.5 },
    ],
    words: 'above',
  };
}

/** Something with its terminals along two sides. */
function block(part: BoardPart, w: number, h: number, rows = false): Footprint {
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
    drills: [],
    assumed: true,
    words: 'inside',
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
    drills: [],
    assumed: true,
    words: 'inside',
    axis: 'up',
  };
}

const turnOf = ({ is, turn = 0 }: Terminal, turns: number, slider: number): number => {
  if (is === 'end') return turns;
  return is === 'slider' ? slider : turn;
};

/** Wound coils lie on the board with their axis along it; flat ones lie flat. */
function woundFootprint(
  part: BoardPart,
  coil: Exclude<CoilDescription, { shape: 'measured' }>,
  axis: 'x' | 'y',
): Footprint {
  const model = coilModel(coil);
  const turns = model.turns;
  if (coil.shape === 'spiral' || coil.shape === 'spider' || coil.shape === 'basket' || coil.shape === 'core') {
    const R =
      coil.shape === 'spider'
        ? spiderOutline(coil).rim
        : coil.shape === 'core'
          ? 16
          : coil.shape === 'basket'
            ? (coil.pegCircle * 1e3) / 2 + overall(coil) + coil.pegDiameter * 1e3
            : (model.outerDiameter * 1e3) / 2 + 4;
    const inner =
      coil.shape === 'core'
        ? 7
        : coil.shape === 'basket'
          ? R - 2 * overall(coil) - coil.pegDiameter * 1e3
          : (coil.innerDiameter * 1e3) / 2;
    const n = part.terminals.length;
    return {
      w: 2 * R,
      h: 2 * R,
      items: [
        circle([0, 0], R, coil.shape === 'core' ? DASHED : OUTLINE),
        circle([0, 0], Math.max(2, inner), { stroke: 'soft', width: 0.2 }),
      ],
      terminals: Object.fromEntries(
        part.terminals.map((t, i): [string, Point] => {
          const a = Math.PI * (0.25 + (0.5 * i) / Math.max(1, n - 1));
          return [t, [-R * Math.cos(a), R * Math.sin(a)]];
        }),
      ),
      drills: coil.shape === 'core' ? [] : [{ at: [0, 0], diameter: 4 }],
      assumed: coil.shape === 'core',
      words: 'inside',
      axis: 'up',
    };
  }
  const length = coil.shape === 'solenoid' ? solenoidLength(coil) : Math.max(model.windingLength * 1e3, close(coil));
  const across = coil.shape === 'solenoid' ? coil.formerDiameter * 1e3 + 2 * overall(coil) : model.outerDiameter * 1e3;
  const former = coil.formerDiameter * 1e3;
  const whole = length + 2 * SPARE;
  // A pile stands on its cheeks, and its ends come out at their rims.
  const widest = coil.shape === 'multilayer' ? cheekDiameter(coil) : across;
  const along = (t: Terminal): number => {
    const turn = turnOf(t, turns, turns / 2);
    return -length / 2 + length * (coil.shape === 'multilayer' ? alongPile(coil, turn) : turn / turns);
  };
  const place = (x: number, y: number): Point => (axis === 'x' ? [x, y] : [y, x]);
  const box = (x: number, y: number, w: number, h: number, look: object): Item =>
    axis === 'x' ? rect(x, y, w, h, look) : rect(y, x, h, w, look);
  const cheeks =
    coil.shape === 'multilayer'
      ? [-length / 2 - CHEEK_THICKNESS, length / 2].map((x) =>
          box(x, -widest / 2, CHEEK_THICKNESS, widest, { ...OUTLINE, fill: 'paper' }),
        )
      : [];
  const hatch: Item[] = [];
  for (let x = -length / 2 + 1.5; x < length / 2; x += 3)
    hatch.push(line(place(x, -across / 2), place(x, across / 2), { stroke: 'faint', width: 0.2 }));
  return {
    w: axis === 'x' ? whole : widest,
    h: axis === 'x' ? widest : whole,
    items: [
      ...hatch,
      box(-whole / 2, -former / 2, whole, former, OUTLINE),
      box(-length / 2, -across / 2, length, across, OUTLINE),
      ...cheeks,
      line(place(-whole / 2 - 3, 0), place(whole / 2 + 3, 0), { stroke: 'soft', width: 0.2, dash: [4, 1, 0.6, 1] }),
    ],
    terminals: endsAt(part, along, widest / 2, place),
    drills: [
      { at: place(-whole / 2 + 3, 0), diameter: 3 },
      { at: place(whole / 2 - 3, 0), diameter: 3 },
    ],
    words: 'inside',
    axis,
  };
}

/** Between two ends of a coil, that neither their wires nor a soldering iron meets the other, mm. */
const ENDS_APART = 5;

/**
 * Taps and ends along one side of a coil, moved apart where turns lie closer than wires can be joined. An end that comes
 * back over the start, as after an even number of layers, is brought out on the other side of the tube.
 */
function endsAt(
  { terminals, ends }: BoardPart,
  along: (terminal: Terminal) => number,
  side: number,
  place: (x: number, y: number) => Point,
): Record<string, Point> {
  const start = ends.find((t) => t.is === 'start');
  const isBack = (t: Terminal): boolean =>
    start !== undefined && t.is === 'end' && Math.abs(along(t) - along(start)) < ENDS_APART;
  const points: Record<string, Point> = {};
  const all = ends.map((end, i) => ({ name: terminals[i], end, x: along(end) }));
  for (const { name, x } of all.filter(({ end }) => isBack(end))) points[name] = place(x, -side);
  const row = all.filter(({ end }) => !isBack(end)).sort((a, b) => a.x - b.x);
  let last = Number.NEGATIVE_INFINITY;
  for (const { name, x } of row) {
    last = Math.max(x, last + ENDS_APART);
    points[name] = place(last, side);
  }
  return points;
}

function loopFootprint(part: BoardPart, set: SetDescription): Footprint {
  const { aerial } = set;
  if (aerial.kind === 'ferrite rod') {
    const [w, d, l] = [aerial.length * 1e3, aerial.diameter * 1e3, aerial.winding * 1e3];
    const middle = (aerial.position * (w - l)) / 2;
    return {
      w,
      h: d + 4,
      items: [rect(-w / 2, -d / 2, w, d, OUTLINE), rect(middle - l / 2, -d / 2 - 1, l, d + 2, OUTLINE)],
      terminals: endsAt(
        part,
        (t) => middle - l / 2 + (l * turnOf(t, aerial.turns, 0)) / aerial.turns,
        d / 2 + 1,
        (x, y) => [x, y],
      ),
      drills: [],
      words: 'above',
      axis: 'x',
    };
  }
  return { ...posts(part.terminals), words: 'above' };
}

/** Sizes of a bought variable capacitor: frame about this wide and deep, whatever its make. Common practice, no source. */
const BOUGHT = 50;
/** A home-made one's base beyond its sheets, and what of a moving tube one takes hold of, mm. */
const BASE_LONGER = 35;
const BASE_WIDER = 34;
const HAND_END = 80;
/** What stands out of its frame for the knob, mm. */
const SPINDLE = 12;

function variableFootprint(part: BoardPart, tuning: TuningDescription | undefined): Footprint {
  const [fixed, moving] = part.terminals;
  // Two of them side by side look outward, or their knobs and dials would meet.
  const isLeft = part.role === 'aerial-tuning';
  const framed = (w: number, h: number, assumed: boolean): Footprint => {
    // Middle of the body; the spindle stands out of it, over the edge of the board.
    const x = ((isLeft ? 1 : -1) * SPINDLE) / 2;
    return {
      w: w + SPINDLE,
      h,
      items: [
        rect(x - w / 2, -h / 2, w, h, assumed ? DASHED : OUTLINE),
        rect(isLeft ? x - w / 2 - SPINDLE : x + w / 2, -3, SPINDLE, 6, OUTLINE),
      ],
      terminals: { [fixed]: [x - w / 4, h / 2], [moving]: [x + w / 4, h / 2] },
      drills: [],
      assumed,
      body: w - SPINDLE,
      words: 'inside',
    };
  };
  switch (tuning?.kind) {
    case 'vanes': {
      const across = 2 * tuning.outerRadius * 1e3 + 12;
      const deep = tuning.vanes * (tuning.gap * 1e3 + 0.7) + 20;
      return framed(deep, across, false);
    }
    case 'foil':
    case 'tubes': {
      const l = tuning.length * 1e3;
      const foil = tuning.kind === 'foil';
      const h = foil ? tuning.width * 1e3 + BASE_WIDER : (tuning.innerDiameter + 2 * tuning.gap) * 1e3 + 4;
      const out = foil ? BASE_LONGER : HAND_END;
      return {
        w: 2 * l + out,
        h,
        items: [
          rect(-l - out / 2, -h / 2, l + out / 2, h, OUTLINE),
          rect(0, -h / 2 + 1, l + out / 2, h - 2, { ...DASHED, stroke: 'soft' }),
        ],
        // The fixed foil's tab is on its short side; the moving one's lead ends at the base's long side.
        terminals: { [fixed]: [-l - out / 2, 0], [moving]: [l / 2, h / 2] },
        drills: [],
        words: 'inside',
      };
    }
    case 'book': {
      const [w, h] = [tuning.width * 1e3 + 6, tuning.length * 1e3 + 10];
      return {
        w,
        h,
        items: [
          rect(-w / 2, -h / 2, w, h, OUTLINE),
          polyline(
            [
              [-w / 2, -h / 2 + 4],
              [w / 2, -h / 2 + 4],
            ],
            { stroke: 'soft', width: 0.2 },
          ),
        ],
        terminals: { [fixed]: [-w / 4, h / 2], [moving]: [w / 4, h / 2] },
        drills: [],
        words: 'inside',
      };
    }
    default:
      return framed(BOUGHT, BOUGHT, true);
  }
}

function detectorFootprint(part: BoardPart, set: SetDescription): Footprint {
  const [anode, cathode] = part.terminals;
  const { kind } = set.detector;
  if (kind === 'galena' || kind === 'mineral')
    return {
      w: 58,
      h: 26,
      items: [
        rect(-29, -13, 58, 26, OUTLINE),
        circle([15, 0], 7, { stroke: 'soft', width: 0.2 }),
        line([-16, 0], [13, 0], { stroke: 'soft', width: 0.2 }),
      ],
      terminals: { [anode]: [-22, 0], [cathode]: [22, 0] },
      drills: [
        { at: [-22, 0], diameter: 3.2 },
        { at: [22, 0], diameter: 3.2 },
      ],
      words: 'above',
    };
  if (kind === 'valve')
    return {
      w: 34,
      h: 30,
      items: [circle([0, 0], 11, OUTLINE), circle([0, 0], 8, { stroke: 'soft', width: 0.2 })],
      terminals: { [anode]: [-11, 0], [cathode]: [11, 0] },
      drills: [{ at: [0, 0], diameter: 16 }],
      words: 'above',
    };
  return {
    w: 34,
    h: 9,
    items: [
      rect(-5, -2, 10, 4, OUTLINE),
      rect(2.5, -2, 1.3, 4, { fill: 'ink' }),
      line([-14, 0], [-5, 0], OUTLINE),
      line([5, 0], [14, 0], OUTLINE),
    ],
    terminals: { [anode]: [-14, 0], [cathode]: [14, 0] },
    drills: [
      { at: [-14, 0], diameter: 1.5 },
      { at: [14, 0], diameter: 1.5 },
    ],
    words: 'above',
  };
}
