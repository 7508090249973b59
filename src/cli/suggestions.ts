import type { FieldOptions } from '../engine/reception/path/field.ts';
import type { Reception } from '../engine/reception/path/types.ts';
import type { SetDescription } from '../engine/set/description.ts';
import { type Suggestion, suggest } from '../engine/vary/suggest.ts';
import { trialsOf } from '../engine/vary/trial.ts';
import { suggestionWords } from '../outputs/words/index.ts';

/** For more stations the search would take long; the others are asked for one by one. */
const MOST_STATIONS = 8;

/** What would help each of the stations received best, as data with its sentence; sets tried are shared between them. */
export function suggestionsFor(
  set: SetDescription,
  { best }: Reception,
  when: FieldOptions,
): readonly (Suggestion & { readonly sentence: string })[] {
  const trials = trialsOf(set, when);
  return best
    .slice(0, MOST_STATIONS)
    .flatMap((station) => suggest(trials, station))
    .map((one) => ({ ...one, sentence: suggestionWords(one) }));
}
