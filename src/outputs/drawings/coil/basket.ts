import { circle, line, polyline, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { dimension, millimetres, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { type CoilOf, type DrawnCoil, overall, type Tap, tapLabels } from './drawn.ts';

/** Distance of the wire from the circle of pegs round one turn, −1 inside to 1 outside; `turns` from the start. */
function weave(pegs: number, over: number, turns: number): number {
  const repeat = 2 * over;
  // Peg k stands at k + ½; the wire crosses halfway between pegs.
  const p = (((turns * pegs) % repeat) + repeat) % repeat;
  const within = p % over;
  const fromEdge = Math.min(within, over - within);
  const side = p < over ? 1 : -1;
  return side * Math.sin((Math.min(1, fromEdge / 0.5) * Math.PI) / 2);
}

/** Seen along the pegs: the circle of pegs and the few courses the wire repeats; beside it how high it piles up. */
export function drawnBasket(coil: CoilOf<'basket'>, taps: readonly Tap[], room: PaperRoom): DrawnCoil {
  const R = (coil.pegCircle * 1e3) / 2;
  const wire = overall(coil);
  const peg = coil.pegDiameter * 1e3;
  const away = (peg + wire) / 2;
  const reach = R + away + wire / 2;
  const high = coil.turns * wire;
  const gap = Math.max(10, R * 0.3);
  const paper = paperFor({ x: -reach, y: -reach, w: 2 * reach + gap + high, h: 2 * reach }, room, {
    top: 14,
    bottom: 16,
    left: 12,
    right: 10,
  });
  const { at, mm } = paper;
  const items: Item[] = [];
  const courses = Math.min(Math.ceil(coil.turns), 2 * coil.over);
  for (let c = 0; c < courses; c++) {
    const points: Point[] = [];
    const n = coil.pegs * 16;
    for (let i = 0; i <= n; i++) {
      const a = (2 * Math.PI * i) / n;
      const r = R + away * weave(coil.pegs, coil.over, c + i / n);
      points.push(at(r * Math.cos(a), r * Math.sin(a)));
    }
    items.push(polyline(points, { stroke: 'copper', width: Math.max(THIN, Math.min(0.8, mm(wire))) }));
  }
  for (let k = 0; k < coil.pegs; k++) {
    const a = (2 * Math.PI * (k + 0.5)) / coil.pegs;
    items.push(circle(at(R * Math.cos(a), R * Math.sin(a)), mm(peg / 2), { fill: 'card', stroke: 'ink', width: THIN }));
  }
  // From the side: the pile.
  const x = reach + gap;
  const side = [at(x, reach), at(x + high, -reach)];
  const step = Math.max(wire, 0.6 / paper.drawnAt);
  for (let h = wire / 2; h < high; h += step)
    items.push(
      line([at(x + h, 0)[0], side[0][1]], [at(x + h, 0)[0], side[1][1]], {
        stroke: 'copper',
        width: Math.max(THIN, mm(Math.min(wire, step) * 0.7)),
      }),
    );
  items.push(
    ...dimension(at(-R, -reach), at(R, -reach), millimetres(2 * R), -5),
    ...dimension(at(x, -reach), at(x + high, -reach), millimetres(high), -5),
    text([2, paper.height - 2], coilDrawing.onPegs(coil), SMALL),
    paper.note,
  );
  const marks = taps.map((t) => {
    const p = at(x + t.turn * wire, reach);
    return { ...t, at: p, toward: [p[0], p[1] - 5] as Point };
  });
  items.push(
    ...tapLabels(marks, { x: 1, y: 1, w: paper.width - 2, h: at(0, reach)[1] - 2 }),
    line(at(-2, 0), at(2, 0), { stroke: 'soft', width: PLAIN }),
    line(at(0, -2), at(0, 2), { stroke: 'soft', width: PLAIN }),
  );
  return { items, paper };
}
