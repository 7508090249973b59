import { signal } from '@preact/signals';
import { MOST_SETS } from '../../outputs/plots/index.ts';

/** Of sets beside the one in focus. */
export const MOST_BESIDE = MOST_SETS - 1;

/** Sets of the shelf, by their ids, that stand beside the one in focus when sets are compared. */
export const comparedIds = signal<readonly string[]>([]);

/** The chosen ones that can stand beside a set: not itself, and none that left the shelf. */
export const besideOf = (
  ids: readonly string[],
  focused: string,
  entries: readonly { readonly id: string }[],
): readonly string[] =>
  ids.filter((id) => id !== focused && entries.some((entry) => entry.id === id)).slice(0, MOST_BESIDE);
