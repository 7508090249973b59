import { circle, line, polyline } from '../../scene/build.ts';
import type { Item, Point, Role, Scene } from '../../scene/scene.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import { setViewWords as texts } from '../../words/index.ts';
import type { BoardLayout } from '../board/layout.ts';
import { terminalPoints } from '../board/units.ts';
import { paintOrder } from './painter.ts';
import { difference, dot, normalOf, type Point3, type Solid, solidOf } from './solid.ts';

/** From where a set is looked at: turned about the upright, and how far from above; degrees. */
export interface Standpoint {
  readonly turn: number;
  readonly elevation: number;
}

/** As it stands before the builder, the phones' terminals in front. */
const USUAL: readonly Standpoint[] = [-30, 30, -55, 55].map((turn) => ({ turn, elevation: 40 }));

/** Of the board, mm: common practice, no source. */
const THICKNESS = 9;
const LETTERS = 2.7;
/** Between names one below another, and of each column of them, mm. */
const LINE = 4.6;
const COLUMN = 42;
const TAGS = 9;
const GUTTER = 4;

/** How points of space lie on the drawing. */
interface Projection {
  readonly toViewer: Point3;
  readonly flat: (p: Point3) => Point;
}

/** Axonometric: parallel, all three directions foreshortened alike all over. */
export function projection({ turn, elevation }: Standpoint): Projection {
  const [a, e] = [(turn * Math.PI) / 180, (elevation * Math.PI) / 180];
  const [c, s] = [Math.cos(a), Math.sin(a)];
  const [u, v] = [Math.cos(e), Math.sin(e)];
  return {
    toViewer: [-s * u, c * u, v],
    flat: ([x, y, z]) => [x * c + y * s, (y * c - x * s) * v - z * u],
  };
}

/** The bodies of all parts, and the board under them. */
export function solidsOf({ placed, width, height }: BoardLayout): Solid[] {
  const board = solidOf({ kind: 'box', from: [0, 0, -THICKNESS], to: [width, height, 0], fill: 'card' }, '', [0, 0], 0);
  const parts = placed.flatMap(({ part, print, at, turn }) =>
    print.shapes.map((shape) => solidOf(shape, part.tag, at, turn)),
  );
  return [board, ...parts];
}

/** How a view of the set is drawn. */
export interface SetViewOptions {
  /** Default one from which most parts are seen. */
  readonly from?: Standpoint;
  /** With the parts' tags alone in place of their names. */
  readonly tags?: boolean;
}

/**
 * The whole set as it will look, to scale: board, parts, terminals and wires from their sizes.
 * @param layout from `builtBoard`
 * @param size of the drawing with its names, mm
 * @param options from where, and with which names; angles in degrees
 */
export function setView(layout: BoardLayout, size: { w: number; h: number }, options: SetViewOptions = {}): Scene {
  const solids = solidsOf(layout);
  const from = options.from ?? standpointFor(layout);
  const { toViewer, flat } = projection(from);
  const corners = solids.flatMap((s) => s.corners.map(flat));
  const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [w, h] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const column = options.tags ? TAGS : COLUMN;
  const room = size.w - 2 * (column + GUTTER);
  const scale = Math.min(1, room / w, size.h / h);
  const origin: Point = [
    column + GUTTER + (room - w * scale) / 2 - left * scale,
    (size.h - h * scale) / 2 - top * scale,
  ];
  const place = (p: Point3): Point => {
    const [x, y] = flat(p);
    return [origin[0] + x * scale, origin[1] + y * scale];
  };
  // Seen from above, the board is behind all that stands on it.
  const [board, ...others] = solids;
  const parts = paintOrder(others, toViewer);
  // Wires and dots lie on the board's face: everything that stands on it hides them, and they hide nothing.
  const wires = layout.ways.map((way) =>
    polyline(
      way.map(([x, y]) => place([x, y, 0])),
      { stroke: 'copper', width: 0.35 },
    ),
  );
  const dots = [...terminalPoints(layout.placed).values()].map(([x, y]) =>
    circle(place([x, y, 0]), 0.5, { fill: 'ink' }),
  );
  const names = layout.placed.map(({ part }): Name => {
    const [x, y] = flat(topOf(parts, part.tag));
    const at: Point = [origin[0] + x * scale, origin[1] + y * scale];
    return { text: options.tags ? part.tag : texts.name(part), at };
  });
  return {
    unit: 'mm',
    width: size.w,
    height: size.h,
    title: texts.title,
    description: texts.description({
      parts: layout.placed.map(({ part }) => part),
      width: layout.width / 1e3,
      length: layout.height / 1e3,
    }),
    items: [
      ...drawn(board, toViewer, place),
      ...wires,
      ...dots,
      ...parts.flatMap((s) => drawn(s, toViewer, place)),
      ...columns(names, size, column),
    ],
    drawnAt: scale,
  };
}

/** The middle of a part's top. */
function topOf(solids: readonly Solid[], tag: string): Point3 {
  const corners = solids.filter((s) => s.tag === tag).flatMap((s) => s.corners);
  const highest = Math.max(...corners.map((p) => p[2]));
  const top = corners.filter((p) => p[2] > highest - 1);
  return [mean(top.map((p) => p[0])), mean(top.map((p) => p[1])), highest];
}

/**
 * From where to look at a set at first.
 * @param layout from `builtBoard`
 * @returns the usual standpoint from which fewest tops of parts are hidden by others
 */
export function standpointFor(layout: BoardLayout): Standpoint {
  const { placed } = layout;
  const solids = solidsOf(layout);
  const hidden = USUAL.map((from) => {
    const { toViewer } = projection(from);
    return placed.filter(({ part: { tag } }) => {
      const top = topOf(solids, tag);
      return solids.some((solid) => solid.tag !== tag && solid.tag !== '' && isBefore(solid, top, toViewer));
    }).length;
  });
  return USUAL[hidden.indexOf(Math.min(...hidden))];
}

/** Does a solid stand between a point and the viewer. */
function isBefore({ corners, faces }: Solid, from: Point3, toViewer: Point3): boolean {
  let [near, far] = [0, Number.POSITIVE_INFINITY];
  for (const face of faces) {
    const ring = face.map((i) => corners[i]);
    const normal = normalOf(ring);
    const [speed, away] = [dot(normal, toViewer), dot(normal, difference(ring[0], from))];
    if (Math.abs(speed) < 1e-12) {
      if (away < 0) return false;
    } else if (speed > 0) far = Math.min(far, away / speed);
    else near = Math.max(near, away / speed);
  }
  return far > near + 1e-6;
}

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

/** Faces nearer to the light from above are lighter: shade of ink on each, also where copper is printed grey. */
const SHADES = { top: 0, front: 0.1, side: 0.25 };

function drawn(
  { corners, faces, fill, rings = [], assumed }: Solid,
  toViewer: Point3,
  place: (p: Point3) => Point,
): Item[] {
  const normals = faces.map((face) => normalOf(face.map((i) => corners[i])));
  const isSeen = normals.map((n) => dot(n, toViewer) > 1e-9);
  const flat = corners.map(place);
  const items: Item[] = faces.flatMap((face, i): Item[] => {
    if (!isSeen[i]) return [];
    const points = face.map((k) => flat[k]);
    const [, y, z] = normals[i];
    const shade = z > 0.7 ? SHADES.top : Math.abs(y) > 0.6 ? SHADES.front : SHADES.side;
    // Its own colour also along its edges, that no paper shows between faces.
    const plain = face.length === 4 && faces.length > 6;
    const base: Item = polyline(points, {
      fill: tint(fill),
      stroke: plain ? tint(fill) : undefined,
      width: 0.1,
      closed: true,
    });
    return shade > 0 ? [base, polyline(points, { fill: 'ink', opacity: shade, closed: true })] : [base];
  });
  const dash = assumed ? [1.6, 0.9] : undefined;
  const borders = new Map<string, { ends: readonly [number, number]; faces: number[] }>();
  faces.forEach((face, f) => {
    face.forEach((i, k) => {
      const j = face[(k + 1) % face.length];
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      const known = borders.get(key) ?? { ends: [i, j] as const, faces: [] };
      known.faces.push(f);
      borders.set(key, known);
    });
  });
  for (const { ends, faces } of borders.values()) {
    const [a, b] = faces;
    if (!isSeen[a] && !isSeen[b]) continue;
    // A smooth side has no edges; what is round has its outline.
    if (isSeen[a] && isSeen[b] && dot(normals[a], normals[b]) > 0.7) continue;
    items.push(line(flat[ends[0]], flat[ends[1]], { stroke: 'ink', width: 0.25, dash }));
  }
  for (const ring of rings) items.push(...seenPart(ring, toViewer, place));
  return items;
}

/** Filled with paper, or with what is as pale: names and lines stay readable. */
const tint = (fill: Role): Role => (fill === 'copper' ? 'paper' : fill);

/** Of a turn of wire the side towards the viewer. */
function seenPart(ring: readonly Point3[], toViewer: Point3, place: (p: Point3) => Point): Item[] {
  const middle: Point3 = [mean(ring.map((p) => p[0])), mean(ring.map((p) => p[1])), mean(ring.map((p) => p[2]))];
  const seen = ring.map((p) => dot(difference(p, middle), toViewer) > 0);
  const from = seen.findIndex((is, i) => is && !seen[(i + seen.length - 1) % seen.length]);
  if (from < 0) return [];
  const points = seen.filter(Boolean).map((_, i) => place(ring[(from + i) % ring.length]));
  return [polyline(points, { stroke: 'copper', width: 0.3 })];
}

interface Name {
  readonly text: string;
  readonly at: Point;
}

/** Names in a column on either side, each joined to its part, none over another, no leader across another of its side. */
function columns(names: readonly Name[], { w, h }: { readonly w: number; readonly h: number }, column: number): Item[] {
  const sorted = [...names].sort((a, b) => a.at[0] - b.at[0]);
  const half = Math.ceil(sorted.length / 2);
  const side = (list: readonly Name[], isLeft: boolean): Item[] => {
    const x = isLeft ? column : w - column;
    const step = Math.min(LINE, (h - LETTERS) / Math.max(1, list.length));
    const byHeight = [...list].sort((a, b) => a.at[1] - b.at[1]);
    // As near to their parts as the others let them, from the top down, then pushed up from the foot.
    const ys: number[] = [];
    for (const { at } of byHeight) ys.push(Math.max(at[1], (ys[ys.length - 1] ?? LETTERS - step) + step));
    for (let i = ys.length - 1, most = h - LETTERS / 2; i >= 0; i--, most -= step) ys[i] = Math.min(ys[i], most);
    const order = uncrossed(byHeight, ys, x);
    return order.flatMap((name, i): Item[] => {
      const words = textWidth(name.text, LETTERS) > column ? shorten(name.text, LETTERS, column) : name.text;
      return [
        line([isLeft ? x + 1 : x - 1, ys[i]], name.at, { stroke: 'ink', width: 0.15 }),
        { kind: 'text', at: [x, ys[i]], text: words, size: LETTERS, anchor: isLeft ? 'end' : 'start', sits: 'middle' },
      ];
    });
  };
  return [...side(sorted.slice(0, half), true), ...side(sorted.slice(half), false)];
}

/** Names in such an order down a column that the sum of their leaders is least: then no two of them cross. */
function uncrossed(names: readonly Name[], ys: readonly number[], x: number): Name[] {
  const order = [...names];
  const long = (name: Name, i: number): number => Math.hypot(name.at[0] - x, name.at[1] - ys[i]);
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < order.length; i++)
      for (let k = i + 1; k < order.length; k++)
        if (long(order[k], i) + long(order[i], k) < long(order[i], i) + long(order[k], k) - 1e-9) {
          [order[i], order[k]] = [order[k], order[i]];
          changed = true;
        }
  }
  return order;
}
