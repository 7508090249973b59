import { expect } from 'vitest';
import { inside, textBoxes } from '../../src/outputs/scene/boxes.ts';
import type { Scene } from '../../src/outputs/scene/index.ts';
import type { Point } from '../../src/outputs/scene/scene.ts';

/** No words are cut off at the edge or lie over others. `slack` in the scene's unit. */
export function expectTidy(scene: Scene, slack = scene.unit === 'mm' ? 0.4 : 1): void {
  const boxes = textBoxes(scene.items);
  boxes.forEach((a, i) => {
    const sheet = { x: -slack, y: -slack, w: scene.width + 2 * slack, h: scene.height + 2 * slack };
    expect(inside(a.box, sheet), `"${a.text}" is cut off`).toBe(true);
    for (const b of boxes.slice(i + 1))
      expect(shapesOverlap(a.corners, b.corners, slack), `"${a.text}" lies over "${b.text}"`).toBe(false);
  });
  expect(scene.title.length).toBeGreaterThan(3);
  expect(scene.description.length, 'a description in words').toBeGreaterThan(20);
}

/** Do two four-cornered shapes overlap by more than `slack`: no line between them keeps them apart. */
function shapesOverlap(a: readonly Point[], b: readonly Point[], slack = 0): boolean {
  for (const shape of [a, b])
    for (let i = 0; i < shape.length; i++) {
      const [p, q] = [shape[i], shape[(i + 1) % shape.length]];
      const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
      if (!(length > 0)) continue;
      const [nx, ny] = [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
      const along = (points: readonly Point[]): [number, number] => {
        const values = points.map((v) => v[0] * nx + v[1] * ny);
        return [Math.min(...values), Math.max(...values)];
      };
      const [a0, a1] = along(a);
      const [b0, b1] = along(b);
      if (a1 <= b0 + slack || b1 <= a0 + slack) return false;
    }
  return true;
}
