import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { VariableCapacitor } from '../../../engine/parts/capacitor/model.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { arc, circle, line, path, pointAtAngle, polyline, rect, text } from '../../scene/build.ts';
import type { Item, PathSegment, Point } from '../../scene/scene.ts';
import { capacitorDrawing, drawingText } from '../../words/index.ts';
import { BOLD, dimension, type PaperRoom, PLAIN, paperFor, SMALL, sketchNote, THIN } from '../paper.ts';
import { type DrawnCapacitor, FOOT, footWords } from './drawn.ts';

type Vaned = Extract<TuningDescription, { kind: 'variable' | 'vanes' }>;

/**
 * Seen along the spindle: fixed vanes in the upper half, moving vane turned to its place, scale round it. The leading
 * edge enters from the left and turns clockwise.
 */
export function drawnVanes(tuning: Vaned, model: VariableCapacitor, position: number, room: PaperRoom): DrawnCapacitor {
  const outline = model.rotorOutline(90);
  const outer = Math.max(...outline.map((p) => p.radius)) * 1e3;
  const inner = Math.min(...outline.map((p) => p.radius)) * 1e3;
  const fixed = outer + Math.max(2, outer * 0.08);
  const ring = fixed + Math.max(3, outer * 0.12);
  const paper = paperFor({ x: -ring, y: -outer, w: 2 * ring, h: outer + ring }, room, {
    top: 9,
    bottom: FOOT,
    left: 14,
    right: 14,
  });
  const { at, mm } = paper;
  const centre = at(0, 0);
  const vaneAngle = Math.min(tuning.swing, 180);
  const lead = 180 + vaneAngle * position;
  const stator: PathSegment[] = [
    ['M', centre[0] - mm(fixed), centre[1]],
    ['A', mm(fixed), false, true, centre[0] + mm(fixed), centre[1]],
    ['L', centre[0] + mm(inner), centre[1]],
    ['A', mm(inner), false, false, centre[0] - mm(inner), centre[1]],
    ['Z'],
  ];
  const rotor = outline.map((p): Point => pointAtAngle(centre, mm(p.radius * 1e3), lead - (p.angle * 180) / Math.PI));
  const items: Item[] = [
    path(stator, { fill: 'card', stroke: 'ink', width: PLAIN, title: capacitorDrawing.fixedVanes }),
    polyline(rotor, {
      fill: 'metal',
      stroke: 'ink',
      width: PLAIN,
      closed: true,
      opacity: 0.72,
      title: capacitorDrawing.movingVanes,
    }),
    circle(centre, mm(Math.min(3, inner * 0.5)), { fill: 'paper', stroke: 'ink', width: PLAIN }),
  ];
  // The scale: the leading edge reads it.
  const radius = mm(ring);
  items.push(path(arc(centre, radius, 180, 180 + vaneAngle), { stroke: 'soft', width: THIN }));
  for (let k = 0; k <= 10; k++) {
    const a = 180 + (vaneAngle * k) / 10;
    items.push(
      line(pointAtAngle(centre, radius, a), pointAtAngle(centre, radius + (k % 5 === 0 ? 2.2 : 1.2), a), {
        stroke: 'soft',
        width: THIN,
      }),
    );
    if (k % 5 === 0) {
      const p = pointAtAngle(centre, radius + 3.6, a);
      items.push(
        text(p, `${formatNumber((tuning.swing * k) / 10, 3)}°`, SMALL, {
          anchor: k === 5 ? 'middle' : k === 0 ? 'end' : 'start',
          sits: k === 5 ? 'base' : 'middle',
          role: 'soft',
        }),
      );
    }
  }
  items.push(line(centre, pointAtAngle(centre, radius, lead), { stroke: 'accent', width: BOLD }));
  const words = tuning.kind === 'vanes' ? capacitorDrawing.vanes(tuning) : capacitorDrawing.assumedVanes(tuning.law);
  items.push(
    ...dimension(at(0, -outer), at(outer, -outer), capacitorDrawing.radius(outer / 1e3), -4),
    footWords(paper.height, words),
    model.outlineAssumed ? sketchNote(paper.width, paper.height) : paper.note,
  );
  return { items, paper: model.outlineAssumed ? { width: paper.width, height: paper.height } : paper };
}

/** Nothing is known of it but its scale. */
export function drawnKnob(angle: number, swing: number, room: PaperRoom): DrawnCapacitor {
  const { width = 130, height = 80 } = room;
  const centre: Point = [width / 2, height / 2 + 6];
  const r = Math.min(width, height) * 0.28;
  const from = 270 - swing / 2;
  const items: Item[] = [
    circle(centre, r * 0.72, { fill: 'card', stroke: 'ink', width: PLAIN }),
    path(arc(centre, r, from, from + swing), { stroke: 'soft', width: PLAIN }),
  ];
  for (let k = 0; k <= 10; k++) {
    const a = from + (swing * k) / 10;
    items.push(
      line(pointAtAngle(centre, r, a), pointAtAngle(centre, r + (k % 5 === 0 ? 2.4 : 1.4), a), {
        stroke: 'soft',
        width: THIN,
      }),
    );
    if (k % 5 === 0)
      items.push(
        text(pointAtAngle(centre, r + 7, a), `${formatNumber((swing * k) / 10, 3)}°`, SMALL, {
          anchor: 'middle',
          sits: 'middle',
          role: 'soft',
        }),
      );
  }
  items.push(
    line(centre, pointAtAngle(centre, r * 0.95, from + angle), { stroke: 'accent', width: BOLD }),
    circle(centre, 1.4, { fill: 'ink' }),
    sketchNote(width, height, drawingText.measured),
  );
  return { items, paper: { width, height } };
}

export function drawnFixed(capacitance: number, room: PaperRoom): DrawnCapacitor {
  const { width = 130, height = 60 } = room;
  const [x, y] = [width / 2, height / 2 - 4];
  const items: Item[] = [
    line([x - 5, y], [x - 5, y + 26], { stroke: 'metal', width: 0.7 }),
    line([x + 5, y], [x + 5, y + 26], { stroke: 'metal', width: 0.7 }),
    rect(x - 14, y - 12, 28, 20, { fill: 'card', stroke: 'ink', width: PLAIN, radius: 2 }),
    text([x, y - 2], formatQuantity(capacitance, 'capacitance'), 4, { anchor: 'middle', sits: 'middle' }),
    sketchNote(width, height),
  ];
  return { items, paper: { width, height } };
}
