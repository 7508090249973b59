import type { Terminal } from '../../../engine/built/built-set.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { alongPile, CHEEK_THICKNESS, cheekDiameter } from '../../drawings/coil/cheek.ts';
import { type CoilOf, close, overall, SPARE, type WoundDescription } from '../../drawings/coil/drawn.ts';
import { solenoidLength } from '../../drawings/coil/solenoid.ts';
import { spiderOutline } from '../../drawings/coil/spider.ts';
import { circle, line, rect } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import type { Shape } from '../view/solid.ts';
import { DASHED, type Footprint, OUTLINE } from './footprint.ts';
import type { BoardPart } from './parts.ts';

type Axis = 'x' | 'y';
type Tube = CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>;
type Print<D> = (coil: D, part: BoardPart, model: CoilModel, axis: Axis) => Footprint;

const WOUND: ByKind<WoundDescription, Footprint, [BoardPart, CoilModel, Axis]> = {
  solenoid: (coil, part, model, axis) => {
    const across = coil.formerDiameter * 1e3 + 2 * overall(coil);
    return onTube(coil, part, model, axis, { ...LAID, length: solenoidLength(coil), across, widest: across });
  },
  'bank-wound': (coil, part, model, axis) => {
    const across = model.outerDiameter * 1e3;
    return onTube(coil, part, model, axis, { ...LAID, length: lengthOf(coil, model), across, widest: across });
  },
  // A pile stands on its cheeks, and its ends come out at their rims.
  multilayer: (coil, part, model, axis) =>
    onTube(coil, part, model, axis, {
      length: lengthOf(coil, model),
      across: model.outerDiameter * 1e3,
      widest: cheekDiameter(coil),
      share: (turn) => alongPile(coil, turn),
      cheeks: true,
    }),
  spiral: flat(({ innerDiameter }, { outerDiameter }) => ({
    R: (outerDiameter * 1e3) / 2 + 4,
    inner: (innerDiameter * 1e3) / 2,
  })),
  spider: flat((coil) => ({ R: spiderOutline(coil).rim, inner: (coil.innerDiameter * 1e3) / 2 })),
  basket: flat((coil) => {
    const R = (coil.pegCircle * 1e3) / 2 + overall(coil) + coil.pegDiameter * 1e3;
    return { R, inner: R - 2 * overall(coil) - coil.pegDiameter * 1e3 };
  }),
  core: flat(() => ({ R: 16, inner: 7, assumed: true })),
};

/** Wound coils lie on the board with their axis along it; flat ones lie flat. */
export const woundFootprint = (part: BoardPart, coil: WoundDescription, axis: Axis): Footprint =>
  byKind(WOUND, coil, part, coilModel(coil), axis);

const lengthOf = (coil: Tube, { windingLength }: CoilModel): number => Math.max(windingLength * 1e3, close(coil));

interface Disc {
  /** Radii, mm. */
  readonly R: number;
  readonly inner: number;
  /** Of a size that is not known, and not screwed down. */
  readonly assumed?: boolean;
}

/** Of a flat coil: what it stands on, and how thick it is, mm. */
const SPACER = 6;
const DISC = 4;

/** A disc, its terminals along its lower rim. */
function flat<D extends WoundDescription>(discOf: (coil: D, model: CoilModel) => Disc): Print<D> {
  return (coil, { terminals }, model) => {
    const { R, inner, assumed = false } = discOf(coil, model);
    return {
      w: 2 * R,
      h: 2 * R,
      items: [
        circle([0, 0], R, assumed ? DASHED : OUTLINE),
        circle([0, 0], Math.max(2, inner), { stroke: 'soft', width: 0.2 }),
      ],
      terminals: Object.fromEntries(
        terminals.map((t, i): [string, Point] => {
          const a = Math.PI * (0.25 + (0.5 * i) / Math.max(1, terminals.length - 1));
          return [t, [-R * Math.cos(a), R * Math.sin(a)]];
        }),
      ),
      // On a spacer, its winding between the rim and the middle.
      shapes: [
        { kind: 'cylinder', axis: 'z', from: [0, 0, 0], length: SPACER, radius: Math.max(2, 0.6 * inner) },
        { kind: 'cylinder', axis: 'z', from: [0, 0, SPACER], length: DISC, radius: R, fill: 'copper', assumed },
        { kind: 'cylinder', axis: 'z', from: [0, 0, SPACER + DISC], length: 0.5, radius: Math.max(2, inner) },
      ],
      drills: assumed ? [] : [{ at: [0, 0], diameter: 4 }],
      assumed,
      words: 'inside',
      axis: 'up',
    };
  };
}

/** How a winding lies on its tube, mm. */
interface Winding {
  readonly length: number;
  readonly across: number;
  /** With its cheeks. */
  readonly widest: number;
  /** Of the length, up to where a turn lies. */
  readonly share: (turn: number, turns: number) => number;
  readonly cheeks: boolean;
}
const LAID: Pick<Winding, 'share' | 'cheeks'> = { share: (turn, turns) => turn / turns, cheeks: false };

export const turnOf = ({ is, turn = 0 }: Terminal, turns: number, slider: number): number => {
  if (is === 'end') return turns;
  return is === 'slider' ? slider : turn;
};

function onTube(
  coil: Tube,
  part: BoardPart,
  { turns }: CoilModel,
  axis: Axis,
  { length, across, widest, share, cheeks }: Winding,
): Footprint {
  const former = coil.formerDiameter * 1e3;
  const whole = length + 2 * SPARE;
  const along = (t: Terminal): number => -length / 2 + length * share(turnOf(t, turns, turns / 2), turns);
  const place = (x: number, y: number): Point => (axis === 'x' ? [x, y] : [y, x]);
  const box = (x: number, y: number, w: number, h: number, look: object): Item =>
    axis === 'x' ? rect(x, y, w, h, look) : rect(y, x, h, w, look);
  const ring = (x: number): Item => box(x, -widest / 2, CHEEK_THICKNESS, widest, { ...OUTLINE, fill: 'paper' });
  const tube = (from: number, length: number, radius: number, more: object = {}): Shape => ({
    kind: 'cylinder',
    axis,
    from: axis === 'x' ? [from, 0, widest / 2] : [0, from, widest / 2],
    length,
    radius,
    ...more,
  });
  const cheek = cheeks ? CHEEK_THICKNESS : 0;
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
      ...(cheeks ? [-length / 2 - CHEEK_THICKNESS, length / 2].map(ring) : []),
      line(place(-whole / 2 - 3, 0), place(whole / 2 + 3, 0), { stroke: 'soft', width: 0.2, dash: [4, 1, 0.6, 1] }),
    ],
    terminals: endsAt(part, along, widest / 2, place),
    shapes: [
      tube(-whole / 2, (whole - length) / 2 - cheek, former / 2),
      tube(length / 2 + cheek, (whole - length) / 2 - cheek, former / 2),
      tube(-length / 2, length, across / 2, { fill: 'copper', pitch: length / turns }),
      ...(cheeks ? [-length / 2 - cheek, length / 2].map((x) => tube(x, cheek, widest / 2)) : []),
    ],
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
export function endsAt(
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
