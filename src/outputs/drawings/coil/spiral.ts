import { circle, polyline, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { dimension, millimetres, type PaperRoom, paperFor, SMALL, THIN } from '../paper.ts';
import { type CoilOf, close, type DrawnCoil, overall, type Tap, tapLabels } from './drawn.ts';

/** Where on a flat coil taps are led off: angles in degrees, one after the other. */
const tapAngle = (i: number): number => 200 + 38 * i;

export function drawnSpiral(coil: CoilOf<'spiral'>, taps: readonly Tap[], room: PaperRoom): DrawnCoil {
  const pitch = coil.pitch !== undefined ? coil.pitch * 1e3 : close(coil);
  const inner = (coil.innerDiameter * 1e3) / 2;
  const outer = inner + coil.turns * pitch;
  const paper = flatPaper(outer, room);
  const { at, mm } = paper;
  const items: Item[] = [];
  if (coil.former !== 'air')
    items.push(circle(at(0, 0), mm(outer + Math.max(3, outer * 0.05)), { fill: 'card', stroke: 'ink', width: THIN }));
  // Draw fewer turns, evenly, where they would run into one another.
  const step = Math.max(1, Math.ceil(0.55 / mm(pitch)));
  const drawnTurns = Math.max(1, Math.round(coil.turns / step));
  const points: Point[] = [];
  const n = Math.ceil(drawnTurns * 48);
  for (let i = 0; i <= n; i++) {
    const t = (i / n) * coil.turns;
    const a = ((i / n) * drawnTurns * 2 * Math.PI) % (2 * Math.PI);
    const r = inner + t * pitch;
    points.push(at(r * Math.cos(a), r * Math.sin(a)));
  }
  const width = Math.max(THIN, Math.min(mm(overall(coil)), mm(pitch * step) * 0.7));
  if (step > 1)
    items.push(circle(at(0, 0), mm((inner + outer) / 2), { stroke: 'copper', width: mm(outer - inner), opacity: 0.3 }));
  items.push(
    polyline(points, { stroke: 'copper', width: step > 1 ? Math.min(width, 0.3) : width }),
    ...flatMeasures(paper, inner, outer),
  );
  items.push(...flatTaps(paper, taps, outer, (t) => inner + t * pitch));
  items.push(text([2, paper.height - 2], coilDrawing.turns(coil.turns), SMALL), paper.note);
  return { items, paper };
}

export const flatPaper = (outer: number, room: PaperRoom) =>
  paperFor({ x: -outer, y: -outer, w: 2 * outer, h: 2 * outer }, room, { top: 12, bottom: 16, left: 24, right: 24 });

/** Inner and outer diameter of a flat coil, and its centre. */
export function flatMeasures(paper: ReturnType<typeof paperFor>, inner: number, outer: number): Item[] {
  const { at } = paper;
  return [
    ...dimension(at(-outer, -outer), at(outer, -outer), millimetres(2 * outer), -5),
    ...dimension(at(-inner, 0), at(inner, 0), millimetres(2 * inner), 0.001),
  ];
}

export function flatTaps(
  paper: ReturnType<typeof paperFor>,
  taps: readonly Tap[],
  outer: number,
  radiusAt: (turn: number) => number,
): Item[] {
  const { at } = paper;
  const marks = taps.map((t, i) => {
    const a = (tapAngle(i) * Math.PI) / 180;
    const along = (r: number): Point => at(r * Math.cos(a), -r * Math.sin(a));
    const [x, y] = along(outer);
    return { ...t, at: along(radiusAt(t.turn)), toward: [x + 6 * Math.cos(a), y + 6 * Math.sin(a)] as Point };
  });
  return tapLabels(marks, { x: 1, y: 1, w: paper.width - 2, h: paper.height - 5 });
}
