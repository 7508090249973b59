import { line, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { dimension, millimetres, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { type CoilOf, close, type DrawnCoil, overall, SPARE, shown, type Tap, tapLabels } from './drawn.ts';

/** Former and turns seen from the side; x 0 at the first turn, y 0 on the axis, mm of the thing. */
function solenoidSide(coil: CoilOf<'solenoid'>, at: (x: number, y: number) => Point, scale: number): Item[] {
  const d = coil.formerDiameter * 1e3;
  const wire = overall(coil);
  const pitch = coil.pitch !== undefined ? coil.pitch * 1e3 : close(coil);
  const length = coil.turns * pitch;
  const former: Item[] = [];
  if (coil.former !== 'air') {
    const [x, y] = at(-SPARE, d / 2);
    former.push(rect(x, y, (length + 2 * SPARE) * scale, d * scale, { fill: 'card', stroke: 'ink', width: PLAIN }));
  } else {
    former.push(line(at(-SPARE, 0), at(length + SPARE, 0), { stroke: 'faint', width: THIN, dash: [3, 1, 0.6, 1] }));
  }
  const reach = d / 2 + wire;
  const { step, list } = shown(coil.turns, pitch * scale, 0.6);
  const items: Item[] = [...former];
  if (step > 1) {
    const [x, y] = at(0, reach);
    items.push(rect(x, y, length * scale, 2 * reach * scale, { fill: 'copper', opacity: 0.35 }));
  }
  const width = Math.max(THIN, Math.min(0.75 * pitch * step, step > 1 ? 0.5 / scale : wire) * scale);
  // The near half of each turn climbs half a pitch from bottom to top.
  for (const i of list)
    items.push(
      line(at((i + 0.25) * pitch, -reach), at((i + 0.75) * pitch, reach), {
        stroke: 'copper',
        width,
        cap: step > 1 ? 'butt' : 'round',
      }),
    );
  return items;
}

export const solenoidLength = (coil: CoilOf<'solenoid'>): number =>
  coil.turns * (coil.pitch !== undefined ? coil.pitch * 1e3 : close(coil));

export function drawnSolenoid(coil: CoilOf<'solenoid'>, taps: readonly Tap[], room: PaperRoom): DrawnCoil {
  const d = coil.formerDiameter * 1e3;
  const pitch = coil.pitch !== undefined ? coil.pitch * 1e3 : close(coil);
  const length = coil.turns * pitch;
  const reach = d / 2 + overall(coil);
  const paper = paperFor({ x: -SPARE, y: -reach, w: length + 2 * SPARE, h: 2 * reach }, room, {
    top: taps.length > 0 ? 16 : 10,
    bottom: 15,
    left: 14,
    right: 8,
  });
  const { at, mm } = paper;
  const items = solenoidSide(coil, at, paper.drawnAt);
  const [left, right] = [at(0, -reach), at(length, -reach)];
  items.push(
    line([left[0] + mm(pitch / 4), left[1]], [left[0] + mm(pitch / 4) - 2, left[1] + 4.5], {
      stroke: 'copper',
      width: PLAIN,
    }),
    line(at(length - pitch / 4, reach), [at(length - pitch / 4, reach)[0] + 2, at(0, reach)[1] - 4.5], {
      stroke: 'copper',
      width: PLAIN,
    }),
    text([at(length, 0)[0] + 3.5, at(0, reach)[1] - 4], coilDrawing.end, SMALL, { role: 'copper' }),
    text([left[0] - 3, left[1] + 4.5], coilDrawing.start, SMALL, { anchor: 'end', role: 'copper' }),
    ...dimension(left, right, coilDrawing.turnsIn({ turns: coil.turns, length: length / 1e3 }), -9.5),
    ...dimension(at(-SPARE, -d / 2), at(-SPARE, d / 2), millimetres(d), 5),
    paper.note,
  );
  const end = { x: at(length, 0)[0] + 1, y: at(0, reach)[1] - 7, w: 14, h: 6 };
  const marks = taps.map((t) => {
    const p = at(t.turn * pitch, reach);
    return { ...t, at: p, toward: [p[0], p[1] - 7] as Point };
  });
  items.push(...tapLabels(marks, { x: 1, y: 1, w: paper.width - 2, h: at(0, reach)[1] - 2 }, [end]));
  return { items, paper };
}
