import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { windingOf } from '../../../engine/parts/coil/shapes.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { boundsOf } from '../../scene/boxes.ts';
import { arc, group, line, path, rect, text } from '../../scene/build.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { dimension, drawing, millimetres, PLAIN, paperFor, type Room, SMALL, sketchNote, THIN } from '../paper.ts';
import { overall, shown, wireOf } from './drawn.ts';

export interface CoupledCoils {
  readonly first: CoilDescription;
  readonly second: CoilDescription;
  /** Middle to middle, along the axis of the first, m. */
  readonly distance: number;
  /** Between the axes, degrees. */
  readonly tilt: number;
}

interface SideView {
  /** Along the axis and across, mm. */
  readonly length: number;
  readonly diameter: number;
  /** Turns to draw across the length; none when it is a disc. */
  readonly turns: number;
}

/** Winding alone, seen from the side; undefined for coils without turns in space. */
function sideOf(coil: CoilDescription): SideView | undefined {
  if (coil.shape === 'measured' || coil.shape === 'core') return undefined;
  const winding = windingOf({
    ...coil,
    wire: wireOf(coil),
    ...(coil.shape === 'multilayer' ? { layerPitch: coil.layerSpacing } : {}),
  } as Parameters<typeof windingOf>[0]);
  const thick = overall(coil);
  const away = coil.shape === 'spider' ? coil.discThickness * 1e3 + 2 * thick : thick;
  return {
    length: Math.max(...winding.z) * 1e3 + away,
    diameter: 2 * Math.max(...winding.radius) * 1e3 + thick,
    turns: coil.shape === 'spiral' || coil.shape === 'spider' ? 1 : winding.columns,
  };
}

/** Two coils as they stand to one another: distance and tilt to scale. */
export function drawCoupledCoils(
  { first, second, distance, tilt }: CoupledCoils,
  options: Room & { parts?: readonly [string, string] } = {},
): Scene {
  const views = [sideOf(first), sideOf(second)] as const;
  const words = `Coil “${second.name}” stands ${formatNumber(distance * 1e3, 3)} mm from coil “${first.name}”, middle to middle, its axis turned by ${formatNumber(tilt, 3)}°.`;
  const title = 'How the coils stand';
  const [a, b] = views;
  if (!a || !b) {
    const { width = 130, height = 96 } = options;
    return drawing(
      { width, height },
      title,
      `${words} One of them has no turns in space: they do not reach each other.`,
      [
        text([width / 2, height / 2], 'These coils do not reach each other.', SMALL, { anchor: 'middle' }),
        sketchNote(width, height),
      ],
    );
  }
  const d = distance * 1e3;
  const turn = (tilt * Math.PI) / 180;
  const spun = ([x, y]: Point): Point => [
    d + x * Math.cos(turn) - y * Math.sin(turn),
    x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const corners = (v: SideView): Point[] => [
    [-v.length / 2, -v.diameter / 2],
    [v.length / 2, -v.diameter / 2],
    [v.length / 2, v.diameter / 2],
    [-v.length / 2, v.diameter / 2],
  ];
  const box = boundsOf([...corners(a), ...corners(b).map(spun)]);
  const paper = paperFor(box, options, { top: 14, bottom: 16, left: 12, right: 12 });
  const { at, mm } = paper;
  const view = (v: SideView): Item[] => {
    const items: Item[] = [
      rect(mm(-v.length / 2), mm(-v.diameter / 2), mm(v.length), mm(v.diameter), {
        fill: 'card',
        stroke: 'copper',
        width: THIN,
        opacity: 0.9,
      }),
    ];
    for (const i of shown(v.turns, mm(v.length / v.turns), 0.7).list) {
      const x = mm(-v.length / 2 + ((i + 0.5) * v.length) / v.turns);
      items.push(
        line([x, mm(-v.diameter / 2)], [x, mm(v.diameter / 2)], {
          stroke: 'copper',
          width: v.turns === 1 ? mm(v.length) : PLAIN,
          cap: 'butt',
        }),
      );
    }
    const reach = mm(v.length / 2) + 6;
    return [...items, line([-reach, 0], [reach, 0], { stroke: 'soft', width: THIN, dash: [3, 1, 0.6, 1] })];
  };
  const [pa, pb] = [at(0, 0), at(d, 0)];
  const top = at(0, box.y + box.h)[1];
  const items: Item[] = [
    group(view(a), { move: pa, part: options.parts?.[0], title: first.name }),
    group(view(b), { move: pb, turn: -tilt, part: options.parts?.[1], title: second.name }),
    ...(d > 0 ? dimension([pa[0], top], [pb[0], top], millimetres(d), 4) : []),
  ];
  const bottom = at(0, box.y)[1] + 5;
  const apart = Math.abs(pb[0] - pa[0]) > 34;
  items.push(
    text([pa[0], bottom], first.name, SMALL, { anchor: 'middle', rim: true }),
    text([pb[0], apart ? bottom : bottom + 4], second.name, SMALL, { anchor: 'middle', rim: true }),
  );
  if (tilt > 0) {
    const r = Math.max(8, mm(b.length / 2) + 4);
    const end: Point = [pb[0] + r * Math.cos(turn / 2) + 1, pb[1] - r * Math.sin(turn / 2)];
    items.push(
      line(pb, [pb[0] + r, pb[1]], { stroke: 'accent', width: THIN }),
      path(arc(pb, r - 1.5, -tilt, 0), { stroke: 'accent', width: THIN }),
      text(end, `${formatNumber(tilt, 3)}°`, SMALL, { role: 'accent', sits: 'middle', rim: true }),
    );
  }
  items.push(paper.note);
  return drawing(paper, title, words, items);
}
