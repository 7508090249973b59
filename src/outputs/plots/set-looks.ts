import type { Label } from '../scene/labels.ts';
import type { Look, Point, Role } from '../scene/scene.ts';

/** How the sets of a comparison are drawn, A first: told apart by their dashes where colours are not seen. */
export const SET_LOOKS: readonly (Look & { readonly stroke: Role })[] = [
  { stroke: 'copper', width: 2 },
  { stroke: 'accent', width: 2, dash: [8, 4] },
  { stroke: 'ink', width: 2, dash: [1.5, 3.5] },
  { stroke: 'soft', width: 2, dash: [8, 3, 1.5, 3] },
];

/** More sets than this cannot be told apart. */
export const MOST_SETS = SET_LOOKS.length;

/** Where the name of a station may stand above its place at the top of a plot, the best first. */
export const placesAbove = ([x, y]: Point): Label['places'] =>
  [4, 18].flatMap((rise) =>
    (['middle', 'start', 'end'] as const).map((anchor) => ({ at: [x, y - rise] as Point, anchor })),
  );
