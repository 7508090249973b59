import jsqr from 'jsqr';
import type { Item } from '../../src/outputs/scene/scene.ts';

/** Dots to the millimetre, a common printer's and more than a phone's camera has at arm's length. */
const DOTS = 8;
const QUIET = 5;

/** What a reader of QR codes (ISO/IEC 18004) sees in a drawing of nothing but one. @throws Error when it reads none. */
export function scanned(items: readonly Item[]): string {
  const strokes = items.flatMap((i) => (i.kind === 'line' ? [i] : []));
  const xs = strokes.flatMap((s) => [s.from[0], s.to[0]]);
  const ys = strokes.map((s) => s.from[1]);
  const [left, top] = [Math.min(...xs) - QUIET, Math.min(...ys) - QUIET];
  const width = Math.ceil((Math.max(...xs) + QUIET - left) * DOTS);
  const height = Math.ceil((Math.max(...ys) + QUIET - top) * DOTS);
  const dots = new Uint8ClampedArray(4 * width * height).fill(255);
  for (const { from, to, width: thickness = 0 } of strokes) {
    const half = thickness / 2;
    for (let y = Math.round((from[1] - half - top) * DOTS); y < Math.round((from[1] + half - top) * DOTS); y++)
      for (let x = Math.round((from[0] - left) * DOTS); x < Math.round((to[0] - left) * DOTS); x++)
        dots.fill(0, 4 * (y * width + x), 4 * (y * width + x) + 3);
  }
  const found = jsqr(dots, width, height);
  if (!found) throw new Error('no code was read');
  return found.data;
}
