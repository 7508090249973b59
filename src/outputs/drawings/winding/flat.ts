import { circle, path, polyline, rect } from '../../scene/build.ts';
import type { Item, PathSegment, Point, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import { drawnWire, hiddenWire, hole, label, moveArrow, stepScene } from './strokes.ts';

/** A spiral from its first turn outward. @param close turns touch. */
export function spiralOutward(close: boolean): Scene {
  const [x, y] = [33, 16];
  const [inner, pitch, turns] = [5, close ? 1 : 2.2, close ? 8 : 4];
  const points: Point[] = [];
  for (let a = 0; a <= turns * 72; a++) {
    const radius = inner + (pitch * a) / 72;
    const angle = (a / 72) * 2 * Math.PI;
    points.push([x + radius * Math.cos(angle), y + radius * Math.sin(angle)]);
  }
  const outer = inner + pitch * turns;
  return stepScene(texts.titles.spiral, 35.5, [
    circle([x, y], inner - 1.2, { stroke: 'ink', width: 0.18 }),
    polyline(points, { stroke: 'ink', width: close ? 0.5 : 0.7 }),
    hole([x + inner, y]),
    hole([x + outer, y]),
    label([x, y + 1], texts.start),
    label([x + outer + 2, y + 1], texts.end, 'start'),
    label([x, 34.4], texts.outward),
  ]);
}

/** Vanes of a spider, unrolled: in front of so many, behind the next. */
export function spiderWeave(over: number): Scene {
  const [left, wide, gap, vanes] = [5, 4.4, 2, 9];
  const step = wide + gap;
  const items: Item[] = [];
  for (let i = 0; i < vanes; i++)
    items.push(rect(left + i * step, 5, wide, 17, { stroke: 'ink', width: 0.35, fill: 'card' }));
  const row = (y: number, begin: number): Item[] => {
    const out: Item[] = [];
    for (let i = 0; i < vanes; i++) {
      const x = left + i * step;
      const isFront = Math.floor((i + begin) / over) % 2 === 0;
      const ends: [Point, Point] = [
        [x - gap / 2, y],
        [x + wide + gap / 2, y],
      ];
      if (isFront) out.push(drawnWire(...ends));
      else out.push(drawnWire(ends[0], [x, y]), hiddenWire([x, y], [x + wide, y]), drawnWire([x + wide, y], ends[1]));
    }
    return out;
  };
  return stepScene(texts.titles.spider, 31, [
    ...items,
    ...row(10, 0),
    // The next turn lies on the other side.
    ...row(15, over),
    ...moveArrow([20, 25], [46, 25]),
    label([33, 30], texts.frontAndBehind),
  ]);
}

/** Pegs of a basket, unrolled and seen from above: inside so many, outside the next. */
export function basketWeave(over: number): Scene {
  const [left, step, pegs, y] = [6, 6, 10, 12];
  const side = (i: number, turn: number): number => (Math.floor((i + turn * over) / over) % 2 === 0 ? 1 : -1);
  const course = (turn: number): Item => {
    const segments: PathSegment[] = [];
    for (let i = 0; i < pegs; i++) {
      const at: Point = [left + i * step, y + 2.6 * side(i, turn)];
      if (i === 0) segments.push(['M', ...at]);
      else {
        const [fromX, fromY] = [left + (i - 1) * step, y + 2.6 * side(i - 1, turn)];
        segments.push(['C', fromX + step / 2, fromY, at[0] - step / 2, at[1], at[0], at[1]]);
      }
    }
    return path(segments, turn === 0 ? { stroke: 'ink', width: 0.7 } : { stroke: 'ink', width: 0.35 });
  };
  return stepScene(texts.titles.basket, 28, [
    ...Array.from({ length: pegs }, (_, i) =>
      circle([left + i * step, y], 1.5, { stroke: 'ink', width: 0.35, fill: 'card' }),
    ),
    course(0),
    course(1),
    label([6, 4.6], texts.outside, 'start'),
    label([6, 20.6], texts.inside, 'start'),
    ...moveArrow([24, 20], [46, 20]),
    label([33, 26.4], texts.nextTurn),
  ]);
}

/** A ring, wound from the middle of the wire outward both ways. */
export function ringWound(): Scene {
  const [x, y, inner, outer] = [33, 17, 7, 13];
  const items: Item[] = [];
  // A gap is left at the bottom, between the two ends.
  for (let k = -7; k <= 7; k++) {
    const a = ((-90 + k * 20) * Math.PI) / 180;
    const b = a + 0.1;
    items.push(
      drawnWire(
        [x + (inner - 0.6) * Math.cos(a), y + (inner - 0.6) * Math.sin(a)],
        [x + (outer + 0.6) * Math.cos(b), y + (outer + 0.6) * Math.sin(b)],
      ),
    );
  }
  const end = (side: 1 | -1): Item => {
    const a = ((90 - side * 50) * Math.PI) / 180;
    return drawnWire([x + outer * Math.cos(a), y + outer * Math.sin(a)], [x + side * 8, y + 15.5]);
  };
  return stepScene(texts.titles.core, 38.5, [
    circle([x, y], outer, { stroke: 'ink', width: 0.35, fill: 'card' }),
    circle([x, y], inner, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    ...items,
    end(1),
    end(-1),
    ...moveArrow([x + 3, 1.6], [x + 12, 4.4]),
    ...moveArrow([x - 3, 1.6], [x - 12, 4.4]),
    label([x + 15, 3], texts.secondHalf, 'start'),
    label([x - 15, 3], texts.firstHalf, 'end'),
    label([x, 37.4], texts.gap),
  ]);
}
