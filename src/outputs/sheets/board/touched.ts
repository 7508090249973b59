import type { TouchPoints } from '../../../engine/faults/touch.ts';
import type { BoardParts } from './parts.ts';

/** What a check touches, by the names of the wiring list. */
export interface TouchedNames {
  /** The positive lead's terminal, then the negative one's: "L1 end", "E". */
  readonly leads: readonly string[];
  /** Parts in words. */
  readonly parts: readonly string[];
  /** The same parts by their tags; of those that have some. */
  readonly tags: readonly string[];
}

/**
 * What a check touches, named as on the sheets.
 * @param board parts of a set
 * @param touched from `touchOf`, of the same set
 */
export function touchedNames({ parts: all }: BoardParts, { leads, parts }: TouchPoints): TouchedNames {
  const own = parts.flatMap((part) => all.find(({ id }) => id === part) ?? []);
  return {
    leads: leads.flatMap(({ part, terminal }) => {
      const found = all.find(({ id }) => id === part);
      const i = found?.ends.findIndex(({ id }) => id === terminal) ?? -1;
      return found && i >= 0 ? [found.terminals[i]] : [];
    }),
    parts: own.map(({ words }) => words),
    tags: own.flatMap(({ tag, kind }) => (kind === 'outputs' ? [] : [tag])),
  };
}
