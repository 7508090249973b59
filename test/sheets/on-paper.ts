import { baseShift } from '../../src/outputs/scene/boxes.ts';
import type { Item, Point, Scene } from '../../src/outputs/scene/scene.ts';
import { textWidth } from '../../src/outputs/scene/text-width.ts';

export interface Placed {
  readonly item: Exclude<Item, { kind: 'group' }>;
  /** From the item's own coordinates to the page's. */
  readonly put: (p: Point) => Point;
  /** Of lengths. */
  readonly scale: number;
  readonly turn: number;
}

/** Every item of a page with its place on it, groups opened; all from the display list alone. */
export function placedOn(items: readonly Item[], put: (p: Point) => Point = (p) => p, scale = 1, turn = 0): Placed[] {
  return items.flatMap((item): Placed[] => {
    if (item.kind !== 'group') return [{ item, put, scale, turn }];
    const [mx, my] = item.move ?? [0, 0];
    const a = ((item.turn ?? 0) * Math.PI) / 180;
    const s = item.scale ?? 1;
    const inner = ([x, y]: Point): Point =>
      put([mx + s * (x * Math.cos(a) - y * Math.sin(a)), my + s * (x * Math.sin(a) + y * Math.cos(a))]);
    return placedOn(item.items, inner, scale * s, turn + (item.turn ?? 0));
  });
}

export interface Words {
  readonly text: string;
  readonly corners: readonly Point[];
}

/** Words as the turned boxes that they cover. */
export function wordsOn(scene: Scene): Words[] {
  return placedOn(scene.items).flatMap(({ item, put }): Words[] => {
    if (item.kind !== 'text') return [];
    const w = textWidth(item.text, item.size, item.bold);
    const x = item.anchor === 'middle' ? -w / 2 : item.anchor === 'end' ? -w : 0;
    const base = baseShift(item.sits) * item.size;
    const a = ((item.turn ?? 0) * Math.PI) / 180;
    const at = (u: number, v: number): Point =>
      put([item.at[0] + u * Math.cos(a) - v * Math.sin(a), item.at[1] + u * Math.sin(a) + v * Math.cos(a)]);
    const [top, foot] = [base - 0.74 * item.size, base + 0.2 * item.size];
    return [{ text: item.text, corners: [at(x, top), at(x + w, top), at(x + w, foot), at(x, foot)] }];
  });
}

/** The stretch that points cover along a direction. */
function span(points: readonly Point[], nx: number, ny: number): [number, number] {
  const along = points.map(([x, y]) => x * nx + y * ny);
  return [Math.min(...along), Math.max(...along)];
}

/** How far two stretches lie in one another. */
const shared = ([a0, a1]: readonly [number, number], [b0, b1]: readonly [number, number]): number =>
  Math.min(a1, b1) - Math.max(a0, b0);

/** How deep two convex shapes lie in one another, along the direction in which they do so least; 0 or less when apart. */
function depth(a: readonly Point[], b: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const shape of [a, b])
    shape.forEach((p, i) => {
      const q = shape[(i + 1) % shape.length];
      const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
      const [nx, ny] = [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
      least = Math.min(least, shared(span(a, nx, ny), span(b, nx, ny)));
    });
  return least;
}

/** Sentences about words that lie over others or reach beyond the paper's rim. @param rim mm no printer needs. */
export function untidy(scene: Scene, rim = 4, slack = 0.35): string[] {
  const words = wordsOn(scene).map((one) => ({
    ...one,
    across: span(one.corners, 1, 0),
    down: span(one.corners, 0, 1),
  }));
  const found: string[] = [];
  words.forEach((a, i) => {
    if (a.corners.some(([x, y]) => x < rim || y < rim || x > scene.width - rim || y > scene.height - rim))
      found.push(`"${a.text}" is cut off`);
    for (let k = i + 1; k < words.length; k++) {
      const b = words[k];
      // Most lie apart across or down the page already.
      if (shared(a.across, b.across) <= 0 || shared(a.down, b.down) <= 0) continue;
      if (depth(a.corners, b.corners) > slack) found.push(`"${a.text}" lies over "${b.text}"`);
    }
  });
  return found;
}
