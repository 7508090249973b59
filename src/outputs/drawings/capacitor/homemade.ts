import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { circle, group, line, pointAtAngle, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { capacitorDrawing, dielectricNames } from '../../words/index.ts';
import { dimension, millimetres, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { type DrawnCapacitor, FOOT, footWords } from './drawn.ts';

type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;

/** From above: the fixed sheet, the dielectric over it, and the moving sheet drawn out to its place. */
export function drawnFoil(tuning: Tuning<'foil'>, position: number, room: PaperRoom): DrawnCapacitor {
  const [l, w] = [tuning.length * 1e3, tuning.width * 1e3];
  const out = (1 - position) * l;
  const paper = paperFor({ x: 0, y: 0, w: 2 * l, h: w }, room, { top: 12, bottom: FOOT, left: 16, right: 16 });
  const { at, mm } = paper;
  const [x, y] = at(0, w);
  const items: Item[] = [
    rect(x - 1.5, y - 1.5, mm(l) + 3, mm(w) + 3, {
      stroke: 'soft',
      width: THIN,
      dash: [1.5, 1],
      title: dielectricNames[tuning.dielectric].name,
    }),
    rect(x, y, mm(l), mm(w), {
      fill: 'metal',
      stroke: 'ink',
      width: PLAIN,
      opacity: 0.55,
      title: capacitorDrawing.fixedSheet,
    }),
    rect(x + mm(out), y, mm(l), mm(w), {
      fill: 'card',
      stroke: 'ink',
      width: PLAIN,
      opacity: 0.75,
      title: capacitorDrawing.movingSheet,
    }),
  ];
  if (position > 0.005) {
    const lines: Item[] = [];
    const [ow, oh] = [mm(l - out), mm(w)];
    for (let c = 2; c < ow + oh; c += 2.4) lines.push(line([c, 0], [c - oh, oh], { stroke: 'accent', width: THIN }));
    items.push(
      group(lines, { move: [x + mm(out), y], clip: { x: 0, y: 0, w: ow, h: oh }, title: capacitorDrawing.overlapping }),
    );
  }
  items.push(
    ...dimension(at(out, w), at(l, w), position > 0.02 ? capacitorDrawing.overlap((l - out) / 1e3) : '', 4.5),
    ...dimension(at(0, 0), at(l, 0), millimetres(l), -5),
    ...dimension(at(0, 0), at(0, w), millimetres(w), 5),
    footWords(paper.height, capacitorDrawing.sheets(tuning)),
    paper.note,
  );
  return { items, paper };
}

/** From the side: the outer tube cut open, the inner one drawn out. */
export function drawnTubes(tuning: Tuning<'tubes'>, position: number, room: PaperRoom): DrawnCapacitor {
  const [l, d, gap] = [tuning.length * 1e3, tuning.innerDiameter * 1e3, tuning.gap * 1e3];
  const wall = Math.max(0.8, d * 0.03);
  const outer = d + 2 * gap + 2 * wall;
  const out = (1 - position) * l;
  const paper = paperFor({ x: 0, y: -outer / 2, w: 2 * l + 8, h: outer }, room, {
    top: 14,
    bottom: FOOT,
    left: 12,
    right: 12,
  });
  const { at, mm } = paper;
  const items: Item[] = [];
  for (const y of [outer / 2, -d / 2 - gap]) {
    const [px, py] = at(0, y);
    items.push(
      rect(px, py, mm(l), Math.max(0.5, mm(wall)), {
        fill: 'metal',
        stroke: 'ink',
        width: THIN,
        title: capacitorDrawing.outerTube,
      }),
    );
  }
  const [ix, iy] = at(out + 2, d / 2);
  items.push(
    rect(ix, iy, mm(l + 4), mm(d), { fill: 'card', stroke: 'ink', width: PLAIN, title: capacitorDrawing.innerTube }),
    line(at(-3, 0), at(2 * l + 9, 0), { stroke: 'soft', width: THIN, dash: [4, 1, 0.7, 1] }),
    ...dimension(
      at(out + 2, outer / 2),
      at(l, outer / 2),
      position > 0.03 ? capacitorDrawing.overlap((l - out) / 1e3) : '',
      4,
    ),
    ...dimension(at(0, -outer / 2), at(l, -outer / 2), millimetres(l), -5),
    footWords(
      paper.height,
      capacitorDrawing.tubes({ diameter: tuning.innerDiameter, dielectric: tuning.dielectric, thickness: tuning.gap }),
    ),
    paper.note,
  );
  return { items, paper };
}

/** From the end of the hinge: the lower leaf lies, the upper one is open so far. */
export function drawnBook(tuning: Tuning<'book'>, position: number, room: PaperRoom): DrawnCapacitor {
  const l = tuning.length * 1e3;
  const angle = tuning.opening * (1 - position);
  const most = Math.min(90, tuning.opening);
  const high = l * Math.sin((most * Math.PI) / 180) + 6;
  const paper = paperFor(
    { x: tuning.opening > 90 ? -l : -4, y: -6, w: tuning.opening > 90 ? 2 * l : l + 8, h: high + 8 },
    room,
    { top: 10, bottom: FOOT, left: 10, right: 10 },
  );
  const { at, mm } = paper;
  const hinge = at(0, 0);
  const leaf = (degrees: number): Item[] => {
    const end = pointAtAngle(hinge, mm(l), -degrees);
    const [nx, ny] = pointAtAngle([0, 0], 0.9, -degrees + 90);
    const off = (p: Point, k: number): Point => [p[0] + nx * k, p[1] + ny * k];
    const board = degrees === 0 ? 1 : -1;
    return [
      polyline([hinge, end, off(end, board * 2), off(hinge, board * 2)], {
        fill: 'card',
        stroke: 'ink',
        width: THIN,
        closed: true,
      }),
      line(pointAtAngle(hinge, mm(3), -degrees), end, { stroke: 'copper', width: 0.7, title: capacitorDrawing.foil }),
    ];
  };
  const items: Item[] = [
    ...leaf(0),
    line([pointAtAngle(hinge, mm(3), 0)[0], hinge[1] - 0.7], [hinge[0] + mm(l), hinge[1] - 0.7], {
      stroke: 'soft',
      width: 0.5,
      dash: [1.5, 1],
      title: dielectricNames[tuning.dielectric].name,
    }),
    ...leaf(angle),
    circle(hinge, 1.3, { fill: 'paper', stroke: 'ink', width: PLAIN }),
    ...dimension(at(0, 0), at(l, 0), millimetres(l), -6),
    text(
      [
        pointAtAngle(hinge, Math.min(mm(l) * 0.45, 26), -angle / 2)[0],
        pointAtAngle(hinge, Math.min(mm(l) * 0.45, 26), -angle / 2)[1],
      ],
      `${Math.round(angle)}°`,
      SMALL,
      { anchor: 'middle', sits: 'middle', role: 'accent', rim: true },
    ),
    footWords(paper.height, capacitorDrawing.leaves(tuning)),
    paper.note,
  ];
  return { items, paper };
}
