import { expect } from 'vitest';
import { inside, shapesOverlap, textBoxes } from '../../src/outputs/scene/boxes.ts';
import type { Scene } from '../../src/outputs/scene/index.ts';

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
