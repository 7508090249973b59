import { wireOf } from '../../../engine/kinds/coils/wire-of.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import { windingOf } from '../../../engine/parts/coil/shapes.ts';
import { circle, line, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { dimension, millimetres, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { CHEEK_THICKNESS, cheekDiameter, endsWhereItStarts } from './cheek.ts';
import { type CoilOf, type DrawnCoil, overall, SPARE, type Tap, tapLabels } from './drawn.ts';

/** A coil of several layers cut through its axis: every turn is seen twice, as the engine places it. */
export function drawnSection(
  coil: CoilOf<'multilayer'> | CoilOf<'bank-wound'>,
  taps: readonly Tap[],
  room: PaperRoom,
): DrawnCoil {
  const wire = wireOf(coil.wire);
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
  const length = Math.max(coilModel(coil).windingLength * 1e3, Math.max(...z) + thick);
  const outer = Math.max(...r) + thick / 2;
  const wall = Math.min(2, d / 12);
  const reach = coil.shape === 'multilayer' ? cheekDiameter(coil) / 2 : outer;
  const paper = paperFor({ x: -SPARE, y: -reach, w: length + 2 * SPARE, h: 2 * reach }, room, {
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
  if (coil.shape === 'multilayer')
    for (const side of [1, -1])
      for (const from of [-CHEEK_THICKNESS, length]) {
        const [x, y] = at(from, side > 0 ? reach : -d / 2);
        items.push(
          rect(x, y, mm(CHEEK_THICKNESS), mm(reach - d / 2), {
            fill: 'card',
            stroke: 'ink',
            width: THIN,
            title: coilDrawing.cheek,
          }),
        );
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
      at(0, -reach),
      at(length, -reach),
      coilDrawing.lengthAndTurns({ length: length / 1e3, turns: winding.turns }),
      -6,
    ),
    ...dimension(at(-SPARE, -d / 2), at(-SPARE, d / 2), millimetres(d), 5),
    ...dimension(
      at(length + SPARE, d / 2),
      at(length + SPARE, outer),
      coil.shape === 'bank-wound' ? coilDrawing.banks(layers) : coilDrawing.layers(layers),
      -3,
    ),
    paper.note,
  );
  // Beyond the pile: the start low by the former, the end high over the last layer.
  const beside = Math.max(2, mm(CHEEK_THICKNESS) + 1);
  const left = at(0, 0)[0] - beside;
  const low = at(0, d / 2)[1] - 1;
  const top = at(0, reach)[1];
  const back = coil.shape === 'multilayer' && endsWhereItStarts(coil);
  const ends: { words: string; from: Point; label: Point; anchor: 'start' | 'end' }[] = [
    { words: coilDrawing.start, from: at(0, d / 2 + thick / 2), label: [left, low], anchor: 'end' },
    back
      ? { words: coilDrawing.end, from: at(0, outer - thick / 2), label: [left, low - 3.8], anchor: 'end' }
      : {
          words: coilDrawing.end,
          from: at(length, outer - thick / 2),
          label: [at(length, 0)[0] + beside, top - 1.2],
          anchor: 'start',
        },
  ];
  for (const { words, from, label, anchor } of ends)
    items.push(
      line(from, [label[0], label[1] - 0.8], { stroke: 'copper', width: PLAIN }),
      text([label[0] + (anchor === 'end' ? -0.6 : 0.6), label[1]], words, SMALL, { anchor, role: 'copper' }),
    );
  // The cores of these words: names of taps keep a gap from them anyhow.
  const taken = ends.map(({ label, anchor }) => ({
    x: anchor === 'end' ? label[0] - 7.5 : label[0] + 1,
    y: label[1] - 1.2,
    w: 6.5,
    h: 0.8,
  }));
  const marks = taps.map((t) => {
    const i = Math.min(z.length - 1, Math.max(0, Math.round(t.turn) - 1));
    const p = at(z[i] + thick / 2, r[i]);
    return { ...t, at: p, toward: [p[0], top - 5] as Point };
  });
  items.push(...tapLabels(marks, { x: 1, y: 1, w: paper.width - 2, h: top - 2 }, taken));
  return { items, paper };
}

/** Slanting lines within a rectangle, for wire too fine to be drawn turn by turn. */
function hatch(x: number, y: number, w: number, h: number, every = 1.2): Item[] {
  const lines: Item[] = [];
  for (let c = every; c < w + h; c += every) {
    const a: Point = c <= w ? [x + c, y] : [x + w, y + c - w];
    const b: Point = c <= h ? [x, y + c] : [x + c - h, y + h];
    lines.push(line(a, b, { stroke: 'copper', width: THIN }));
  }
  return lines;
}
