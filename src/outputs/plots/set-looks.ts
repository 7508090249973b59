import type { Look, Role } from '../scene/scene.ts';

/** How the sets of a comparison are drawn, A first: told apart by their dashes where colours are not seen. */
export const SET_LOOKS: readonly (Look & { readonly stroke: Role })[] = [
  { stroke: 'copper', width: 2 },
  { stroke: 'accent', width: 2, dash: [8, 4] },
  { stroke: 'ink', width: 2, dash: [1.5, 3.5] },
  { stroke: 'soft', width: 2, dash: [8, 3, 1.5, 3] },
];

/** More sets than this cannot be told apart. */
export const MOST_SETS = SET_LOOKS.length;
