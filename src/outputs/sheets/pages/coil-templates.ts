import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { cheekDiameter, endsWhereItStarts, placeInPile } from '../../drawings/coil/cheek.ts';
import { type CoilOf, close, overall, SPARE, type Tap, type WoundDescription } from '../../drawings/coil/drawn.ts';
import { spiderOutline } from '../../drawings/coil/spider.ts';
import { circle, line, pointAtAngle, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { coilTemplate, tapLabel } from '../../words/index.ts';
import { PAGE_BODY } from '../paper/page.ts';

/** Something to cut, drill or prick at full size, mm. */
export interface CoilTemplate {
  readonly items: Item[];
  readonly w: number;
  readonly h: number;
}

/** The two holes that hold an end of the wire: so far from the tube's end and from each other, mm. */
export const HOLES_FROM_END = 4;
export const HOLES_APART = 3;

const CUT = { stroke: 'ink', width: 0.3 } as const;
const FINE = { stroke: 'ink', width: 0.2 } as const;
const CROSS = { stroke: 'ink', width: 0.15 } as const;
const LEADER = { stroke: 'soft', width: 0.15 } as const;
const DASHED = { stroke: 'soft', width: 0.2, dash: [1.5, 1] } as const;
const LETTERS = 2.4;

function cross([x, y]: Point, r = 4): Item[] {
  return [line([x - r, y], [x + r, y], CROSS), line([x, y - r], [x, y + r], CROSS)];
}

interface Mark {
  readonly words: string;
  readonly at: Point;
  readonly hole: boolean;
}

/** Marks with their names in a column beside the template, the outermost mark's on top, so that no leader crosses another. */
function named(outward: readonly Mark[], x: number): { items: Item[]; right: number } {
  const step = 4;
  const marks = [...outward].reverse();
  const [first, last] = [marks[0].at[1], marks[marks.length - 1].at[1]];
  // From the height of the outermost mark to that of the innermost, or lower.
  const top = Math.max(3, Math.min(first, last - step * (marks.length - 1)) + LETTERS / 3);
  return {
    items: marks.flatMap(({ words, at, hole }, i): Item[] => {
      const y = top + step * i;
      return [
        line(at, [x - 0.8, y - LETTERS * 0.35], LEADER),
        hole ? circle(at, 1, { ...FINE, fill: 'paper', title: words }) : circle(at, 0.5, { fill: 'ink', title: words }),
        text([x, y], words, LETTERS),
      ];
    }),
    right: x + Math.max(...marks.map((m) => textWidth(m.words, LETTERS))) + 1,
  };
}

/** Start, taps and end of a coil wound outward from its middle, each where its number of turns ends. */
function flatMarks(
  turns: number,
  taps: readonly Tap[],
  radiusAt: (turn: number) => number,
  hole: { readonly start: number; readonly end: number },
  put: (radius: number, turn: number) => Point,
): Mark[] {
  return [
    { words: coilTemplate.holeForStart, at: put(hole.start, 0), hole: true },
    ...taps.map((t) => ({ words: tapLabel(t), at: put(radiusAt(t.turn), t.turn), hole: false })),
    { words: coilTemplate.holeForEnd, at: put(hole.end, turns), hole: true },
  ];
}

export function spiderTemplate(coil: CoilOf<'spider'>, taps: readonly Tap[] = []): CoilTemplate {
  const { outline, hub, rim } = spiderOutline(coil);
  const size = 2 * rim + 6;
  const c: Point = [size / 2, size / 2];
  const radiusAt = (turn: number): number => hub + turn * overall(coil);
  const vaneOf = (turn: number): number => Math.floor((turn % 1) * coil.slots + 1e-6) % coil.slots;
  const middleOf = (vane: number): number => (-360 * (vane + 0.5)) / coil.slots;
  const marks = flatMarks(coil.turns, taps, radiusAt, { start: Math.max(2.5, hub - 2.5), end: rim - 3 }, (r, turn) =>
    pointAtAngle(c, r, middleOf(vaneOf(turn))),
  );
  const beside = named(marks, size + 3);
  const items: Item[] = [
    polyline(
      outline.map(([x, y]): Point => [c[0] + x, c[1] - y]),
      { ...CUT, closed: true, title: coilTemplate.cutHere },
    ),
    circle(c, hub, DASHED),
    circle(c, Math.min(2, hub / 4), CUT),
    ...cross(c, Math.min(4, hub / 2)),
    circle(c, radiusAt(coil.turns), DASHED),
    ...taps.map((t) => circle(c, radiusAt(t.turn), { stroke: 'soft', width: 0.15, dash: [0.8, 0.8] })),
    ...beside.items,
  ];
  if (hub > 16) items.push(text([c[0], c[1] + 9], coilTemplate.hubSize(coil.innerDiameter), 2.3, { anchor: 'middle' }));
  for (let vane = 0; vane < coil.slots; vane++) {
    if (vane === vaneOf(coil.turns)) continue;
    items.push(
      text(pointAtAngle(c, rim - 2.6, middleOf(vane)), `${vane + 1}`, 2.3, {
        anchor: 'middle',
        sits: 'middle',
        role: 'soft',
      }),
    );
  }
  return { items, w: Math.max(size, beside.right), h: size };
}

export function basketTemplate(coil: CoilOf<'basket'>): CoilTemplate {
  const R = (coil.pegCircle * 1e3) / 2;
  const r = (coil.pegDiameter * 1e3) / 2;
  const size = 2 * R + 26;
  const c: Point = [size / 2, size / 2];
  const items: Item[] = [circle(c, R, DASHED), circle(c, 2, CUT), ...cross(c)];
  for (let k = 0; k < coil.pegs; k++) {
    const a = (2 * Math.PI * k) / coil.pegs - Math.PI / 2;
    const p: Point = [c[0] + R * Math.cos(a), c[1] + R * Math.sin(a)];
    items.push(
      circle(p, r, { ...CUT, title: coilTemplate.peg }),
      ...cross(p, r + 1.5),
      text([c[0] + (R + r + 5) * Math.cos(a), c[1] + (R + r + 5) * Math.sin(a)], `${k + 1}`, PAGE_BODY - 0.6, {
        anchor: 'middle',
        sits: 'middle',
      }),
    );
  }
  return { items, w: size, h: size };
}

export function spiralTemplate(coil: CoilOf<'spiral'>, model: CoilModel, taps: readonly Tap[]): CoilTemplate {
  const R = (model.outerDiameter * 1e3) / 2;
  const size = 2 * R + 12;
  const c: Point = [size / 2, size / 2];
  const inner = (coil.innerDiameter * 1e3) / 2;
  const pitch = coil.pitch !== undefined ? coil.pitch * 1e3 : close(coil);
  const radiusAt = (turn: number): number => inner + turn * pitch;
  const marks = flatMarks(
    coil.turns,
    taps,
    radiusAt,
    { start: Math.max(2.5, inner - 2), end: R + 2 },
    (r, turn): Point => pointAtAngle(c, r, -360 * (turn % 1)),
  );
  const beside = named(marks, size + 1);
  return {
    w: Math.max(size, beside.right),
    h: size,
    items: [
      circle(c, inner, CUT),
      circle(c, R, CUT),
      ...taps.map((t) => circle(c, radiusAt(t.turn), DASHED)),
      circle(c, 2, CUT),
      ...cross(c),
      ...beside.items,
    ],
  };
}

/** Words under marks along a line, in as many rows as keep them apart. */
function rowsOf(marks: readonly { readonly x: number; readonly words: string; readonly bold: boolean }[], w: number) {
  const ends: number[] = [];
  return [...marks]
    .sort((a, b) => a.x - b.x)
    .map((m) => {
      const wide = textWidth(m.words, LETTERS, m.bold);
      const x = Math.max(0.6 + wide / 2, Math.min(w - 0.6 - wide / 2, m.x));
      const free = ends.findIndex((end) => end + 1.5 < x - wide / 2);
      const row = free < 0 ? ends.length : free;
      ends[row] = x + wide / 2;
      return { ...m, x, row };
    });
}

/** A strip as long as the tube: lines where the winding begins, is tapped and ends, and the holes that hold its ends. */
export function stripTemplate(coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): CoilTemplate {
  const length = model.windingLength * 1e3;
  const w = length + 2 * SPARE;
  const pile = coil.shape === 'multilayer';
  const marks = [
    { x: SPARE, words: pile ? coilTemplate.cheekAtStart : coilTemplate.start, title: coilTemplate.start, bold: true },
    ...(pile
      ? []
      : taps.map((t) => ({
          x: SPARE + (length * t.turn) / model.turns,
          words: tapLabel(t),
          title: formatNumber(t.turn, 4),
          bold: false,
        }))),
    { x: SPARE + length, words: pile ? coilTemplate.cheek : coilTemplate.end, title: coilTemplate.end, bold: true },
  ];
  const labels = rowsOf(marks, w);
  const rows = 1 + Math.max(...labels.map((l) => l.row));
  const h = 14 + rows * 3.4;
  const ends = pile && endsWhereItStarts(coil) ? [HOLES_FROM_END] : [HOLES_FROM_END, w - HOLES_FROM_END];
  return {
    w,
    h,
    items: [
      rect(0, 0, w, h, { ...CUT, title: coilTemplate.cutHere }),
      ...marks.map((m) =>
        line([m.x, 0], [m.x, 10], { stroke: 'ink', width: m.bold ? 0.3 : 0.2, cap: 'butt', title: m.title }),
      ),
      ...ends.flatMap((x) =>
        [3, 3 + HOLES_APART].map((y) => circle([x, y], 0.6, { ...FINE, title: coilTemplate.holeForWire })),
      ),
      ...labels.map((l) => text([l.x, 13.4 + l.row * 3.4], l.words, LETTERS, { anchor: 'middle', bold: l.bold })),
    ],
  };
}

/** The two cheeks of a pile, each with the holes and notches by which wire leaves at it. */
export function cheekTemplates(
  coil: CoilOf<'multilayer'>,
  taps: readonly Tap[],
): (CoilTemplate & { readonly which: 'start' | 'other' })[] {
  const back = endsWhereItStarts(coil);
  return (['start', 'other'] as const).map((which) => ({
    ...cheek(coil, {
      start: which === 'start',
      end: (which === 'start') === back,
      taps: taps.filter((t) => placeInPile(coil, t.turn).nearer === which),
    }),
    which,
  }));
}

function cheek(
  coil: CoilOf<'multilayer'>,
  wires: { readonly start: boolean; readonly end: boolean; readonly taps: readonly Tap[] },
): CoilTemplate {
  const R = cheekDiameter(coil) / 2;
  const former = (coil.formerDiameter * 1e3) / 2;
  const hole = Math.max(0.8, 0.7 * overall(coil));
  const side = 30;
  const c: Point = [R + side, R + 1];
  const layerPitch = coil.layerSpacing !== undefined ? coil.layerSpacing * 1e3 : close(coil);
  const items: Item[] = [
    circle(c, R, { ...CUT, title: coilTemplate.cheek }),
    circle(c, former, { ...CUT, title: coilTemplate.holeForTube }),
    ...cross(c),
  ];
  const labelled = (at: Point, words: string, degrees: number): void => {
    const p = pointAtAngle(c, R + 3, degrees);
    const across = Math.cos((degrees * Math.PI) / 180);
    items.push(
      line(at, pointAtAngle(c, R + 2, degrees), LEADER),
      text(p, words, LETTERS, {
        anchor: Math.abs(across) < 0.2 ? 'middle' : across > 0 ? 'start' : 'end',
        sits: 'middle',
      }),
    );
  };
  // The start lies against the tube, the end beyond the last layer and on the other side.
  if (wires.start) {
    const at = pointAtAngle(c, former + hole + 0.3, 180);
    items.push(circle(at, hole, { ...FINE, title: coilTemplate.holeForStart }));
    labelled(at, coilTemplate.holeStart, 180);
  }
  if (wires.end) {
    const at = pointAtAngle(c, R - 1.2 - hole, 0);
    items.push(circle(at, hole, { ...FINE, title: coilTemplate.holeForEnd }));
    labelled(at, coilTemplate.holeEnd, 0);
  }
  wires.taps.forEach((t, i) => {
    const degrees = 90 + 35 * (i - (wires.taps.length - 1) / 2);
    const { layer } = placeInPile(coil, t.turn);
    const deep = former + layer * layerPitch - overall(coil) / 2;
    const [ux, uy] = pointAtAngle([0, 0], hole, degrees + 90);
    const from = pointAtAngle(c, R, degrees);
    const to = pointAtAngle(c, Math.min(deep, R - 2), degrees);
    items.push(
      polyline(
        [
          [from[0] + ux, from[1] + uy],
          [to[0] + ux, to[1] + uy],
          [to[0] - ux, to[1] - uy],
          [from[0] - ux, from[1] - uy],
        ],
        { ...FINE, title: coilTemplate.notchFor(t.turn) },
      ),
    );
    const p = pointAtAngle(c, R + 3, degrees);
    const across = Math.cos((degrees * Math.PI) / 180);
    items.push(
      text([p[0], p[1] + 1.6], coilTemplate.notch(t), LETTERS, {
        anchor: Math.abs(across) < 0.2 ? 'middle' : across > 0 ? 'start' : 'end',
      }),
    );
  });
  return { items, w: 2 * (R + side), h: 2 * R + 2 + (wires.taps.length > 0 ? 7 : 0) };
}
