import { windingOf } from '../../../engine/parts/coil/shapes.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { circle, line, rect } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { dimension, millimetres, PLAIN, paperFor, type Room, THIN } from '../paper.ts';
import { type CoilOf, type DrawnCoil, overall, type Tap, tapLabels, wireOf } from './drawn.ts';

const SPARE = 8;

/** A coil of several layers cut through its axis: every turn is seen twice, as the engine places it. */
export function drawnSection(
  coil: CoilOf<'multilayer'> | CoilOf<'bank-wound'>,
  taps: readonly Tap[],
  room: Room,
): DrawnCoil {
  const wire = wireOf(coil);
  const winding =
    coil.shape === 'multilayer'
      ? windingOf({
          shape: 'multilayer',
          wire,
          turnsPerLayer: coil.turnsPerLayer,
          layers: coil.layers,
          formerDiameter: coil.formerDiameter,
          layerPitch: coil.layerSpacing,
        })
      : windingOf({
          shape: 'bank-wound',
          wire,
          turns: coil.turns,
          layers: coil.layers,
          formerDiameter: coil.formerDiameter,
        });
  const d = coil.formerDiameter * 1e3;
  const thick = overall(coil);
  const z = Array.from(winding.z, (v) => v * 1e3);
  const r = Array.from(winding.radius, (v) => v * 1e3);
  const length = Math.max(...z) + thick;
  const outer = Math.max(...r) + thick / 2;
  const wall = Math.min(2, d / 12);
  const paper = paperFor({ x: -SPARE, y: -outer, w: length + 2 * SPARE, h: 2 * outer }, room, {
    top: taps.length > 0 ? 16 : 10,
    bottom: 14,
    left: 14,
    right: 16,
  });
  const { at, mm } = paper;
  const items: Item[] = [];
  for (const side of [1, -1]) {
    const [x, y] = at(-SPARE, side > 0 ? d / 2 : -d / 2 + wall);
    if (coil.former !== 'air') {
      items.push(rect(x, y, mm(length + 2 * SPARE), mm(wall), { fill: 'card', stroke: 'ink', width: THIN }));
    }
  }
  items.push(line(at(-SPARE - 2, 0), at(length + SPARE + 2, 0), { stroke: 'soft', width: THIN, dash: [4, 1, 0.7, 1] }));
  const size = mm(thick);
  const each = size >= 0.5 && z.length <= 1500;
  for (const side of [1, -1]) {
    if (each) {
      for (let i = 0; i < z.length; i++)
        items.push(circle(at(z[i] + thick / 2, side * r[i]), (size / 2) * 0.92, { fill: 'copper' }));
    } else {
      const [x, y] = at(0, side > 0 ? outer : -d / 2);
      items.push(
        rect(x, y, mm(length), mm(outer - d / 2), { fill: 'copper', opacity: 0.35, stroke: 'copper', width: PLAIN }),
        ...hatch(x, y, mm(length), mm(outer - d / 2)),
      );
    }
  }
  const layers = coil.layers;
  items.push(
    ...dimension(
      at(0, -outer),
      at(length, -outer),
      `${millimetres(length)}, ${formatNumber(winding.turns, 4)} turns`,
      -6,
    ),
    ...dimension(at(-SPARE, -d / 2), at(-SPARE, d / 2), millimetres(d), 5),
    ...dimension(
      at(length + SPARE, d / 2),
      at(length + SPARE, outer),
      `${layers} ${coil.shape === 'bank-wound' ? 'banks' : 'layers'}`,
      -3,
    ),
    paper.note,
  );
  const marks = taps.map((t) => {
    const i = Math.min(z.length - 1, Math.max(0, Math.round(t.turn) - 1));
    const p = at(z[i] + thick / 2, r[i]);
    return { ...t, at: p, toward: [p[0], at(0, outer)[1] - 5] as Point };
  });
  items.push(...tapLabels(marks, { x: 1, y: 1, w: paper.width - 2, h: at(0, outer)[1] - 2 }));
  return { items, paper };
}

/** Slanting lines within a rectangle, for wire too fine to be drawn turn by turn. */
export function hatch(x: number, y: number, w: number, h: number, every = 1.2): Item[] {
  const lines: Item[] = [];
  for (let c = every; c < w + h; c += every) {
    const a: Point = c <= w ? [x + c, y] : [x + w, y + c - w];
    const b: Point = c <= h ? [x, y + c] : [x + c - h, y + h];
    lines.push(line(a, b, { stroke: 'copper', width: THIN }));
  }
  return lines;
}
