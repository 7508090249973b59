import type { Path } from '../kinds/adjustment.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';

/**
 * Which coil the tuning capacitor tunes.
 * @param options the set as read
 * @returns its place in the list; 0 for a loop's winding
 */
export const tunedCoil = ({ arrangement, coils }: SetDescription): number =>
  'coil' in arrangement
    ? Math.max(
        0,
        coils.findIndex(({ name }) => name === arrangement.coil),
      )
    : 0;

/** Where the description has the winding that the tuning capacitor tunes. */
export const tunedWinding = (set: SetDescription): Path =>
  isLoop(set.aerial) ? ['aerial'] : ['coils', tunedCoil(set)];
