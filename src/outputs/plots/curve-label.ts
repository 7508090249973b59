import type { Box } from '../scene/boxes.ts';
import type { Label } from '../scene/labels.ts';
import type { Point, Role } from '../scene/scene.ts';
import { PLOT_LETTERS } from './frame.ts';

type Places = Label['places'];

/**
 * The name of a curve beside its upper end, else wherever nearest to the curve it stands clear within the box; one of the
 * shorter ones, longest first, where it has no room.
 */
export function curveLabel(
  { name, shorter = [] }: { readonly name: string; readonly shorter?: readonly string[] },
  curve: readonly Point[],
  box: Box,
  look: { role: Role; bold: boolean },
): Label {
  const along = [0.98, 0.9, 0.8, 0.65, 0.5].map((t) => curve[Math.round(t * (curve.length - 1))]);
  const end = curve[curve.length - 1];
  return {
    item: { text: name, size: PLOT_LETTERS, ...look, sits: 'middle', rim: true },
    shorter: shorter.filter((short) => short !== name),
    places: [
      { at: [end[0] - 8, end[1] + 8], anchor: 'end' },
      ...along.flatMap(
        ([px, py]): Places =>
          [0, -12, 12, 24, 38, 52].flatMap(
            (dy): Places => [
              { at: [px + 8, py + dy], anchor: 'start' },
              { at: [px - 8, py + dy], anchor: 'end' },
            ],
          ),
      ),
      ...placesNear(along, box),
    ],
    must: true,
  };
}

/** Room taken by a dot. */
export const dotBox = ([x, y]: Point, radius: number): Box => ({
  x: x - radius,
  y: y - radius,
  w: 2 * radius,
  h: 2 * radius,
});

/** Places all over a box, those nearest to given points first. */
export function placesNear(points: readonly Point[], box: Box): Places {
  const found: { place: Places[number]; far: number }[] = [];
  for (let y = box.y + PLOT_LETTERS; y < box.y + box.h; y += PLOT_LETTERS + 3)
    for (let x = box.x + 4; x < box.x + box.w; x += 16)
      for (const anchor of ['start', 'end'] as const)
        found.push({
          place: { at: [x, y], anchor },
          far: Math.min(...points.map(([px, py]) => Math.hypot(px - x, py - y))),
        });
  return found.sort((a, b) => a.far - b.far).map((f) => f.place);
}
