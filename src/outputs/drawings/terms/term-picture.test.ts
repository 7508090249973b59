import { expect, it } from 'vitest';
import { textBoxes } from '../../scene/boxes.ts';
import { sceneToSvg } from '../../scene/index.ts';
import { type GlossaryId, glossary, glossaryInOrder } from '../../words/index.ts';
import { termPicture } from './term-picture.ts';

const pictured = glossaryInOrder().flatMap(([id]) => (termPicture(id) ? [id] : []));

it.each<GlossaryId>(['decibel', 'q', 'loadedQ', 'unloadedQ', 'bandwidth', 'lossTangent', 'ideality'])(
  '%s has a picture and two sentences',
  (id) => {
    expect(pictured).toContain(id);
    expect(glossary[id].text.split(/[.?!](?:\s|$)/).filter(Boolean)).toHaveLength(2);
  },
);

it.each(pictured)('the picture of %s says in words what it shows, and no letters of it meet or leave it', (id) => {
  const scene = termPicture(id)!;
  expect(scene.description).toMatch(/^\p{Lu}.*\.$/u);
  expect(sceneToSvg(scene)).toContain(scene.title);
  const boxes = textBoxes(scene.items).map(({ box }) => box);
  for (const [i, a] of boxes.entries()) {
    expect(a.x >= 0 && a.y >= 0 && a.x + a.w <= scene.width && a.y + a.h <= scene.height, `text ${i}`).toBe(true);
    for (const b of boxes.slice(i + 1))
      expect(a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y, `text ${i}`).toBe(true);
  }
});
