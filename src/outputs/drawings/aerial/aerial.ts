import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { isGivenAerial } from '../../../engine/kinds/given-aerials.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { wireShape } from '../../../engine/kinds/models.ts';
import { wireTree } from '../../../engine/parts/aerial/shapes.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { circle, group, line, rect, text } from '../../scene/build.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { aerialDrawing } from '../../words/index.ts';
import { BOLD, dimension, drawing, type Paper, type PaperRoom, PLAIN, paperFor, SMALL, THIN } from '../paper.ts';
import { earthDepth, earthItems, earthReach } from './earth.ts';
import { drawLoop } from './loop.ts';

type Measured = Extract<AerialDescription, { kind: 'measured' | 'impedance' }>;

const m = (metres: number): string => formatQuantity(metres, 'length', 3);

/**
 * Aerial and earth from the side, to scale, with a person to compare. Lengths of the description are metres; on paper a
 * metre is 1000 mm times the scale.
 * @param aerial as read, m
 * @param earth as read
 * @param room size of the picture, mm; default as large as it needs
 * @returns a scene, mm
 * @throws RangeError for sizes that cannot be built.
 */
export function drawAerial(aerial: AerialDescription, earth: EarthDescription, room: PaperRoom = {}): Scene {
  if (isLoop(aerial)) return drawLoop(aerial, room);
  const tree = isGivenAerial(aerial) ? undefined : wireTree(wireShape(aerial));
  // Wires that run across are seen a little from above, as they would be from the garden gate.
  const flat = (p: readonly number[]): Point => [p[0] + 0.4 * p[1], p[2] + 0.22 * p[1]];
  const foot: Point = tree ? flat(tree.points[0]) : [0, 1];
  const points = tree ? tree.points.map(flat) : measuredPoints(aerial as Measured);
  const parents = tree ? tree.parents : points.map((_, i) => i - 1);
  const reach = earthReach(earth);
  const depth = earthDepth(earth);
  const xs = [...points.map((p) => p[0]), foot[0] - 2.6, foot[0] + reach.right, foot[0] - reach.left];
  const top = Math.max(2, ...points.map((p) => p[1]));
  const [x0, x1] = [Math.min(...xs) - 0.5, Math.max(...xs) + 0.5];
  const paper = paperFor(
    { x: x0 * 1e3, y: -depth * 1e3, w: (x1 - x0) * 1e3, h: (top + depth) * 1e3 },
    { width: 150, ...room },
    { top: 12, bottom: 12, left: 12, right: 14 },
  );
  const at = (x: number, y: number): Point => paper.at(x * 1e3, y * 1e3);
  const ground = at(0, 0)[1];
  const items: Item[] = [
    rect(0, ground, paper.width, Math.max(0, paper.height - ground), { fill: 'soil', opacity: 0.55 }),
    line([0, ground], [paper.width, ground], { stroke: 'ink', width: PLAIN }),
    ...person(at, foot[0] - 1.9),
  ];
  const wires: Item[] = [];
  points.forEach((p, i) => {
    if (i === 0 || parents[i] < 0) return;
    wires.push(line(at(...points[parents[i]]), at(...p), { stroke: 'copper', width: BOLD }));
  });
  const supports = supported(points, parents, tree !== undefined);
  items.push(
    ...supports.map((p) =>
      line(at(p[0], 0), at(p[0], p[1] + 0.15), { stroke: 'metal', width: BOLD, title: aerialDrawing.mast }),
    ),
    group(
      [
        ...wires,
        ...supports.map((p) =>
          circle(at(...p), 0.8, { fill: 'paper', stroke: 'ink', width: THIN, title: aerialDrawing.insulator }),
        ),
        ...measuredWords(aerial, at, points),
      ],
      { part: 'aerial', title: aerialDrawing.aerial(aerial) },
    ),
    ...setBox(at, foot, paper),
    group(earthItems(earth, at, foot[0], paper), { part: 'earth', title: aerialDrawing.earth(earth) }),
    ...byKind(MEASURES, aerial, points, at),
    { ...paper.note },
  );
  return drawing(paper, aerialDrawing.title(aerial), aerialDrawing.description(aerial, earth), items);
}

/** A wire as high as its effective height stands for one known only by measurement. */
const measuredPoints = (aerial: Measured): Point[] => [
  [0, 1],
  [0, Math.max(2, 1 + aerial.effectiveHeight)],
];

function measuredWords(
  aerial: AerialDescription,
  at: (x: number, y: number) => Point,
  points: readonly Point[],
): Item[] {
  if (aerial.kind !== 'measured' && aerial.kind !== 'impedance') return [];
  const [x, y] = at(...points[1]);
  return [text([x + 3, y + 2], aerialDrawing.measured(aerial.effectiveHeight), SMALL, { sits: 'middle' })];
}

/** Ends and corners high up that something has to carry. */
function supported(points: readonly Point[], parents: readonly number[], wire: boolean): Point[] {
  if (!wire) return [];
  const isEnd = points.map((_, i) => i > 0 && !parents.includes(i));
  const kept: Point[] = [];
  points.forEach((p, i) => {
    if (p[1] < 2.2 || (!isEnd[i] && i > 1)) return;
    if (kept.some((k) => Math.abs(k[0] - p[0]) < 0.6)) return;
    kept.push(p);
  });
  return kept;
}

/** 1.75 m tall. */
function person(at: (x: number, y: number) => Point, x: number): Item[] {
  const head = at(x, 1.62);
  const r = Math.abs(at(0, 0.13)[1] - at(0, 0)[1]);
  const width = Math.max(THIN, Math.min(0.9, r * 0.9));
  const limb = (a: Point, b: Point): Item => line(at(...a), at(...b), { stroke: 'soft', width });
  return [
    group(
      [
        circle(head, r, { fill: 'soft' }),
        limb([x, 1.45], [x, 0.8]),
        limb([x, 0.8], [x - 0.18, 0]),
        limb([x, 0.8], [x + 0.18, 0]),
        limb([x, 1.35], [x - 0.28, 0.9]),
        limb([x, 1.35], [x + 0.28, 0.9]),
      ],
      { title: aerialDrawing.person },
    ),
  ];
}

/** The set on its table, where the lead-in comes down. */
function setBox(at: (x: number, y: number) => Point, foot: Point, paper: Paper): Item[] {
  const [x, y] = foot;
  const size = Math.max(2.4, paper.mm(400));
  const [px, py] = at(x, y);
  const table = Math.max(0, y - 0.05);
  const items: Item[] = [
    rect(px - size / 2, py, size, size * 0.55, { fill: 'card', stroke: 'ink', width: PLAIN, title: aerialDrawing.set }),
  ];
  if (y <= 3 && table > 0.3)
    for (const dx of [-0.5, 0.5])
      items.push(
        line([px + dx * size, py + size * 0.55], [px + dx * size, at(x, 0)[1]], { stroke: 'soft', width: THIN }),
      );
  return items;
}

type At = (x: number, y: number) => Point;
/** Points of the wire as drawn, m, and where they come to lie. */
type Measures = (points: readonly Point[], at: At) => Item[];

/** A flat top from left to right at a height, m. */
const flatTop = (
  left: number,
  { length, height }: { readonly length: number; readonly height: number },
  at: At,
): Item[] => [
  ...dimension(at(left, height), at(left + length, height), m(length), 4),
  ...dimension(at(left + length, 0), at(left + length, height), m(height), -5),
];
const noMeasures = (): Item[] => [];

const MEASURES: ByKind<AerialDescription, Item[], Parameters<Measures>> = {
  'inverted-L': (aerial, _, at) => flatTop(0, aerial, at),
  T: (aerial, _, at) => flatTop(-aerial.length / 2, aerial, at),
  horizontal: (aerial, _, at) => flatTop(0, aerial, at),
  vertical: ({ height }, _, at) => dimension(at(0, 0), at(0, height), m(height), -6),
  sloping: ({ length, height, farHeight }, points, at) => {
    const far = points[points.length - 1];
    return [
      ...dimension(at(0, height), at(...far), m(length), 4),
      ...dimension(at(far[0], 0), at(...far), m(farHeight), -5),
      ...dimension(at(0, 0), at(0, height), m(height), 4),
    ];
  },
  // Its corners are in the description, and would cover the wire.
  bent: noMeasures,
  measured: noMeasures,
  impedance: noMeasures,
  // Drawn by themselves.
  frame: noMeasures,
  'ferrite rod': noMeasures,
};
