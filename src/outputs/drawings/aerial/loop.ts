import { wireOf } from '../../../engine/kinds/coils/wire-of.ts';
import type { LoopDescription } from '../../../engine/kinds/loops.ts';
import { overallDiameter } from '../../../engine/parts/wire/wire.ts';
import { circle, group, line, rect, text } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { loopDrawing } from '../../words/index.ts';
import { BOLD, dimension, drawing, millimetres, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { frameParts } from './frame-parts.ts';

type Loop<K extends LoopDescription['kind']> = Extract<LoopDescription, { kind: K }>;

export const drawLoop = (aerial: LoopDescription, room: PaperRoom): Scene =>
  aerial.kind === 'frame' ? drawFrame(aerial, room) : drawRod(aerial, room);

/** How far the middle of a rod's coil is from the nearer end of the rod, m: at ±1 the coil's end is flush with the rod's. */
export const coilFromEnd = ({ length, winding, position }: Loop<'ferrite rod'>): number =>
  length / 2 - (Math.abs(position) * (length - winding)) / 2;

/** From the front on its stand, and from the side with its turns. */
function drawFrame(aerial: Loop<'frame'>, room: PaperRoom): Scene {
  const s = aerial.side * 1e3;
  const pitch = aerial.pitch * 1e3;
  const parts = frameParts(aerial);
  const depth = aerial.winding === 'spiral' ? 0 : parts.depth * 1e3;
  const stand = parts.mast * 1e3 - s / 2;
  const foot = parts.foot * 1e3;
  const gap = s * 0.25;
  const paper = paperFor({ x: -s / 2, y: -s / 2 - stand, w: s + gap + depth, h: s + stand }, room, {
    top: 8,
    bottom: 14,
    left: 14,
    right: 14,
  });
  const { at, mm } = paper;
  const [x, y] = at(-s / 2, s / 2);
  const side = at(s / 2 + gap, s / 2);
  const corner = aerial.outline === 'square' ? s / 2 : s / 2 / Math.SQRT2;
  const lath = { stroke: 'soft', width: 1 } as const;
  const items: Item[] = [
    line(at(0, 0), at(0, -s / 2 - stand), lath),
    line(at(-corner, -corner), at(corner, corner), lath),
    line(at(-corner, corner), at(corner, -corner), lath),
    line(at(-foot / 2, -s / 2 - stand), at(foot / 2, -s / 2 - stand), { stroke: 'soft', width: 1.4 }),
  ];
  const spiral = aerial.winding === 'spiral';
  const step = Math.max(1, Math.ceil(0.6 / Math.max(mm(pitch), 1e-6)));
  // A spiral winds inward from its outermost turn; of a box only the nearest turn is seen from the front.
  for (let i = 0; i < (spiral ? aerial.turns : 1); i += step) {
    const inward = mm(i * pitch);
    const size = mm(s) - 2 * inward;
    if (!(size > 0)) break;
    const look = { stroke: 'copper', width: spiral ? PLAIN : BOLD * 1.4 } as const;
    items.push(
      aerial.outline === 'square' ? rect(x + inward, y + inward, size, size, look) : circle(at(0, 0), size / 2, look),
    );
  }
  for (let i = 0; i < (spiral ? 1 : aerial.turns); i += step) {
    const px = side[0] + mm(i * pitch);
    items.push(line([px, side[1]], [px, side[1] + mm(s)], { stroke: 'copper', width: PLAIN }));
  }
  items.push(
    ...dimension(at(-s / 2, -s / 2), at(-s / 2, s / 2), millimetres(s), 5),
    ...(spiral ? [] : dimension(at(s / 2 + gap, -s / 2), at(s / 2 + gap + depth, -s / 2), millimetres(depth), -5)),
    text([2, paper.height - 2], loopDrawing.turnsApart(aerial), SMALL),
    paper.note,
  );
  return drawing(paper, loopDrawing.titles.frame, loopDrawing.description(aerial), [
    group(items, { part: 'aerial', title: loopDrawing.parts.frame }),
  ]);
}

function drawRod(aerial: Loop<'ferrite rod'>, room: PaperRoom): Scene {
  const [l, d, w] = [aerial.length * 1e3, aerial.diameter * 1e3, aerial.winding * 1e3];
  const wire = overallDiameter(wireOf(aerial.wire)) * 1e3;
  const paper = paperFor({ x: -l / 2, y: -d, w: l, h: 2 * d }, room, { top: 14, bottom: 24, left: 10, right: 10 });
  const { at, mm } = paper;
  const [x, y] = at(-l / 2, d / 2);
  // At ±1 the coil's middle is as far out as the coil's end may go.
  const middle = (aerial.position * (l - w)) / 2;
  const near = coilFromEnd(aerial) * 1e3;
  const items: Item[] = [
    rect(x, y, mm(l), mm(d), { fill: 'metal', stroke: 'ink', width: PLAIN, radius: Math.min(1.5, mm(d) / 4) }),
  ];
  const shown = Math.min(Math.ceil(aerial.turns), Math.max(2, Math.floor(mm(w) / 0.55)));
  const r = (aerial.coilDiameter !== undefined ? aerial.coilDiameter * 1e3 : d + 1) / 2;
  for (let i = 0; i < shown; i++) {
    const px = middle - w / 2 + ((i + 0.5) * w) / shown;
    items.push(
      line(at(px - w / shown / 4, -r), at(px + w / shown / 4, r), {
        stroke: 'copper',
        width: Math.max(THIN, Math.min(0.8, mm(wire) * 0.8)),
      }),
    );
  }
  items.push(
    ...dimension(at(middle - w / 2, r), at(middle + w / 2, r), loopDrawing.turnsIn(aerial), 4),
    ...(middle < 0
      ? dimension(at(-l / 2, -d / 2), at(middle, -d / 2), millimetres(near), -6)
      : dimension(at(middle, -d / 2), at(l / 2, -d / 2), millimetres(near), -6)),
    ...dimension(at(-l / 2, -d / 2), at(l / 2, -d / 2), millimetres(l), -12.5),
    text([2, paper.height - 2], loopDrawing.rod(aerial), SMALL),
    paper.note,
  );
  return drawing(paper, loopDrawing.titles['ferrite rod'], loopDrawing.description(aerial), [
    group(items, { part: 'aerial', title: loopDrawing.parts['ferrite rod'] }),
  ]);
}
