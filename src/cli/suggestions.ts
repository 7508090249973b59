import { type Reception, type Suggestion, suggest, type Trials } from '../engine/index.ts';
import { suggestionWords } from '../outputs/words/index.ts';

/** For more stations the search would take long; the others are asked for one by one. */
export const MOST_ADVISED = 8;

/**
 * What would help each of the stations received best, as data with its sentence; sets tried are shared between them.
 * @param trials of the set. @param also index of a station that is asked for. @param onProgress told before each how much is done, 0 to 1.
 */
export function suggestionsFor(
  trials: Trials,
  { best }: Reception,
  { also, onProgress }: { also?: number; onProgress?: (share: number) => void } = {},
): readonly (Suggestion & { readonly sentence: string })[] {
  const indices = [...new Set([...(also === undefined ? [] : [also]), ...best.slice(0, MOST_ADVISED)])];
  return indices
    .flatMap((station, k) => {
      onProgress?.(k / indices.length);
      return suggest(trials, station);
    })
    .map((one) => ({ ...one, sentence: suggestionWords(one) }));
}
