import { circle, group, line, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import type { Pen } from './pen.ts';

/**
 * A pen that keeps what it draws as items of a scene.
 * @param look pixels: waves as shares of pixels, for a drawing that is to become pixels at its own size; default as lines.
 */
export function scenePen(look: { readonly pixels?: boolean } = {}): {
  readonly pen: Pen;
  readonly items: () => readonly Item[];
} {
  const stack: { items: Item[]; clip?: { x: number; y: number; w: number; h: number } }[] = [{ items: [] }];
  const put = (item: Item): void => void stack[stack.length - 1].items.push(item);
  const points = (xs: ArrayLike<number>, ys: ArrayLike<number>, n: number): Point[] =>
    Array.from({ length: n }, (_, i): Point => [xs[i], ys[i]]);
  const pen: Pen = {
    rect: (x, y, w, h, fill, opacity, radius) => put(rect(x, y, w, h, { fill, opacity, radius })),
    line: (x1, y1, x2, y2, stroke, width, opacity) => put(line([x1, y1], [x2, y2], { stroke, width, opacity })),
    polyline: (xs, ys, n, stroke, width, opacity) => put(polyline(points(xs, ys, n), { stroke, width, opacity })),
    polygon: (xs, ys, n, fill, opacity) => put(polyline(points(xs, ys, n), { fill, opacity, closed: true })),
    circle: (x, y, radius, look) => put(circle([x, y], radius, look)),
    band(x, dx, top, bottom, n, fill, opacity) {
      const outline: Point[] = [];
      for (let i = 0; i < n; i++) outline.push([x + i * dx, top[i]]);
      for (let i = n - 1; i >= 0; i--) outline.push([x + i * dx, bottom[i]]);
      put(polyline(outline, { fill, opacity, closed: true }));
    },
    text(x, y, words, size, look = {}) {
      const { opacity, ...more } = look;
      const item = text([x, y], words, size, more);
      put(opacity === undefined || opacity >= 1 ? item : group([item], { opacity }));
    },
    clip: (x, y, w, h) => void stack.push({ items: [], clip: { x, y, w, h } }),
    unclip() {
      const inner = stack.pop()!;
      put(group(inner.items, { clip: inner.clip }));
    },
  };
  if (look.pixels)
    pen.coverage = (x, y, { columns, rows, shares }, density, fill, opacity) => {
      if (columns === 0 || rows === 0) return;
      const size = { w: columns / density, h: rows / density, columns, rows };
      // The map is used again for the next trace.
      put({
        kind: 'shares',
        x,
        y,
        ...size,
        shares: Uint8Array.from(shares.subarray(0, columns * rows)),
        fill,
        opacity,
      });
    };
  return { pen, items: () => stack[0].items };
}
