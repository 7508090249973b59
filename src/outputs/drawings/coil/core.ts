import { arc, circle, line, path, pointAtAngle, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing, drawingText } from '../../words/index.ts';
import { BOLD, type PaperRoom, PLAIN, SMALL, sketchNote } from '../paper.ts';
import { type CoilOf, type DrawnCoil, type Tap, tapLabels } from './drawn.ts';

/** Toroid or pot core: only A_L and the length of a turn are known, so the picture is not to scale. */
export function drawnCore(coil: CoilOf<'core'>, taps: readonly Tap[], room: PaperRoom): DrawnCoil {
  const { width = 130, height = 96 } = room;
  const centre: Point = [width / 2, height / 2 - 2];
  const items =
    coil.form === 'toroid' ? toroid(coil, centre, taps, width, height) : potCore(centre, taps, width, height);
  items.push(text([2, height - 2], coilDrawing.onCore(coil), SMALL), sketchNote(width, height));
  return { items, paper: { width, height } };
}

function toroid(coil: CoilOf<'core'>, centre: Point, taps: readonly Tap[], width: number, height: number): Item[] {
  const outer = Math.min(width, height) * 0.32;
  const inner = outer * 0.58;
  const items: Item[] = [
    circle(centre, (outer + inner) / 2, { stroke: 'metal', width: outer - inner, opacity: 0.6 }),
    circle(centre, outer, { stroke: 'ink', width: PLAIN }),
    circle(centre, inner, { stroke: 'ink', width: PLAIN }),
  ];
  // The ends stay a good way apart: the winding takes five sixths of the ring.
  const turns = Math.min(Math.ceil(coil.turns), 72);
  const angle = (share: number): number => 120 + 300 * share;
  for (let i = 0; i < turns; i++) {
    const a = angle((i + 0.5) / turns);
    items.push(
      line(pointAtAngle(centre, inner - 0.8, a), pointAtAngle(centre, outer + 0.8, a + 1.2), {
        stroke: 'copper',
        width: PLAIN * 1.4,
      }),
    );
  }
  for (const share of [0, 1])
    items.push(
      line(
        pointAtAngle(centre, outer + 0.8, angle(share)),
        [pointAtAngle(centre, outer + 8, angle(share))[0], pointAtAngle(centre, outer + 8, 90)[1]],
        { stroke: 'copper', width: PLAIN * 1.4 },
      ),
    );
  const marks = taps.map((t) => {
    const a = angle(t.turn / coil.turns);
    return { ...t, at: pointAtAngle(centre, outer + 0.8, a), toward: pointAtAngle(centre, outer + 7, a) };
  });
  return [...items, ...tapLabels(marks, { x: 1, y: 1, w: width - 2, h: height - 7 })];
}

/** Cut through the middle: two halves, centre post, the winding in between. */
function potCore([x, y]: Point, taps: readonly Tap[], width: number, height: number): Item[] {
  const [w, h] = [44, 30];
  const metal = { fill: 'metal', stroke: 'ink', width: PLAIN, opacity: 0.75 } as const;
  const items: Item[] = [];
  for (const side of [-1, 1]) {
    const top = side < 0 ? y - h / 2 : y + 0.4;
    items.push(
      rect(x - w / 2, top, 5, h / 2 - 0.4, metal),
      rect(x + w / 2 - 5, top, 5, h / 2 - 0.4, metal),
      rect(x - 6, top, 12, h / 2 - 0.4, metal),
      rect(x - w / 2, side < 0 ? y - h / 2 : y + h / 2 - 4, w, 4, metal),
    );
  }
  for (const left of [x - w / 2 + 6.5, x + 7.5])
    for (let i = 0; i < 5; i++)
      for (let j = 0; j < 8; j++) items.push(circle([left + 0.9 + i * 2.2, y - 8 + j * 2.3], 0.85, { fill: 'copper' }));
  items.push(line([x, y - h / 2 - 5], [x, y + h / 2 + 5], { stroke: 'soft', width: PLAIN, dash: [4, 1, 0.7, 1] }));
  const marks = taps.map((t, i) => ({
    ...t,
    at: [x + w / 2 - 8 + i, y - 6 + 5 * i] as Point,
    toward: [x + w / 2 + 6, y - 6 + 5 * i] as Point,
  }));
  return [...items, ...tapLabels(marks, { x: 1, y: 1, w: width - 2, h: height - 7 })];
}

/** Known only by what was measured. */
export function drawnMeasured(coil: CoilOf<'measured'>, room: PaperRoom): DrawnCoil {
  const { width = 130, height = 96 } = room;
  const y = height / 2;
  const x = width / 2 - 24;
  const items: Item[] = [
    line([x - 14, y], [x, y], { stroke: 'ink', width: BOLD }),
    line([x + 48, y], [x + 62, y], { stroke: 'ink', width: BOLD }),
    ...[0, 1, 2, 3].map((i) => path(arc([x + 6 + 12 * i, y], 6, 180, 360), { stroke: 'copper', width: 0.8 })),
    text([width / 2, y + 9], coilDrawing.measured(coil), SMALL, { anchor: 'middle', sits: 'top' }),
    sketchNote(width, height, drawingText.measured),
  ];
  return { items, paper: { width, height } };
}
