import { type Box, inside, overlap, textBox } from './boxes.ts';
import type { Point, TextItem } from './scene.ts';

export interface Label {
  readonly item: Omit<TextItem, 'at' | 'anchor' | 'kind'>;
  /** Where it may go, best first. */
  readonly places: readonly { readonly at: Point; readonly anchor?: TextItem['anchor'] }[];
  /** Shorter words to try when the first find no room. */
  readonly shorter?: readonly string[];
  /** Kept even where it must overlap; otherwise it is left out when there is no room. */
  readonly must?: boolean;
}

/**
 * Put labels where they neither overlap each other nor what is given to be avoided, the first ones first.
 * @returns the texts that found room, in order, and whether each label did.
 */
export function placeLabels(
  labels: readonly Label[],
  frame: Box,
  avoid: readonly Box[] = [],
  gap = 2,
): { items: TextItem[]; placed: boolean[]; boxes: Box[] } {
  const taken: Box[] = [...avoid];
  const items: TextItem[] = [];
  const placed = labels.map(({ item, places, must, shorter = [] }) => {
    const choices = [item.text, ...shorter].flatMap((words) =>
      places.map(({ at, anchor }): TextItem => ({ kind: 'text', ...item, text: words, at, anchor })),
    );
    const free = choices.find((choice) => {
      const box = textBox(choice);
      return inside(box, frame) && !taken.some((other) => overlap(box, other, gap));
    });
    const chosen = free ?? (must ? leastCovered(choices, taken, frame) : undefined);
    if (!chosen) return false;
    items.push(chosen);
    taken.push(textBox(chosen));
    return true;
  });
  return { items, placed, boxes: taken };
}

function leastCovered(choices: readonly TextItem[], taken: readonly Box[], frame: Box): TextItem {
  const cost = (choice: TextItem): number => {
    const b = textBox(choice);
    const covered = taken.reduce(
      (sum, o) =>
        sum +
        Math.max(0, Math.min(b.x + b.w, o.x + o.w) - Math.max(b.x, o.x)) *
          Math.max(0, Math.min(b.y + b.h, o.y + o.h) - Math.max(b.y, o.y)),
      0,
    );
    return covered + (inside(b, frame) ? 0 : 1e6);
  };
  return choices.reduce((best, choice) => (cost(choice) < cost(best) ? choice : best));
}

/** Boxes along a line that a label should keep off. */
export function boxesAlong(points: readonly Point[], thickness = 4): Box[] {
  const boxes: Box[] = [];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 12));
    for (let k = 0; k < n; k++) {
      const p = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      const [u, v] = [p(k / n), p((k + 1) / n)];
      boxes.push({
        x: Math.min(u[0], v[0]) - thickness / 2,
        y: Math.min(u[1], v[1]) - thickness / 2,
        w: Math.abs(u[0] - v[0]) + thickness,
        h: Math.abs(u[1] - v[1]) + thickness,
      });
    }
  }
  return boxes;
}
