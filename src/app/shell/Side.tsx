import {
  cautionTexts,
  interferenceSentence,
  settingsWords,
  suggestionEffect,
  suggestionEffects,
  suggestionWords,
  sideWords as texts,
  wantTexts,
  warningSentences,
} from '../../outputs/words/index.ts';
import { fieldOf } from '../description/change-field.ts';
import { useChosenStation } from '../state/chosen-station.ts';
import { useOpenSet } from '../state/set-context.ts';
import { tryOut } from '../state/try-out.ts';
import { hasWants } from '../state/wanted.ts';
import { WantSuggestions } from '../views/set/WantSuggestions.tsx';
import { showField } from '../widgets/show-field.ts';

const unique = (texts: readonly string[]): string[] => [...new Set(texts)];

/** What would help most, what to beware of, and the cautions of this set. */
export function Side() {
  const { stage, reception, receptionSet, notes, suggestionsFor, areSuggestionsBehind, change, tellOfChange } =
    useOpenSet();
  const isForWants = hasWants(receptionSet.value);
  const station = useChosenStation();
  const now = reception.value;
  const disturbing = station?.disturbances.filter((one) => one.effect !== 'none') ?? [];
  const suggestions = station && suggestionsFor(station);
  const warnings = unique(
    warningSentences([...(now?.warnings ?? []), ...(now?.dial.warnings ?? []), ...(station?.warnings ?? [])]),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and without a suggestion nothing in it takes the keyboard
    <aside id="suggestions" class="side" aria-label={texts.label} tabIndex={0}>
      {isForWants && <WantSuggestions />}
      {station && !isForWants && (
        <section aria-labelledby="help-title">
          <h2 id="help-title">{texts.suggestions(station.name)}</h2>
          {suggestions?.length === 0 && <p class="quiet">{texts.noSuggestions}</p>}
          {!suggestions && <p class="quiet">{texts.trying}</p>}
          {suggestions && suggestions.length > 1 && <p class="help-order">{wantTexts.orderForStation}</p>}
          <ol class={`help${areSuggestionsBehind.value ? ' is-old' : ''}`}>
            {suggestions?.map((one) => {
              const what = settingsWords(one);
              const effect = suggestionEffect(one);
              const besides = suggestionEffects(one);
              return (
                <li key={what}>
                  <button
                    type="button"
                    class="help-item"
                    title={texts.showField}
                    onClick={() => showField(stage, fieldOf(one.changes[0]))}
                  >
                    <span class="gain">{effect}</span>{' '}
                    <span>
                      {what}
                      {besides && <span class="besides">{texts.besides(besides)}</span>}
                    </span>
                  </button>
                  <button
                    type="button"
                    class="try"
                    aria-label={texts.trySuggestion(what)}
                    onClick={() => tryOut({ change, tellOfChange }, one.changes, what, suggestionWords(one))}
                  >
                    {texts.tryIt}
                  </button>
                </li>
              );
            })}
          </ol>
        </section>
      )}
      {station && (
        <section aria-labelledby="disturbances-title">
          <h2 id="disturbances-title">{texts.interference}</h2>
          {disturbing.length === 0 && <p class="quiet">{texts.noInterference}</p>}
          <ul class="sentences">
            {disturbing.slice(0, 4).map((disturbance) => (
              <li key={disturbance.index}>{interferenceSentence(disturbance)}</li>
            ))}
          </ul>
        </section>
      )}
      {(warnings.length > 0 || notes.value.length > 0) && (
        <section aria-labelledby="warnings-title">
          <h2 id="warnings-title">{texts.warnings}</h2>
          <ul class="sentences">
            {[...warnings, ...notes.value].map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </section>
      )}
      {now && now.cautions.length > 0 && (
        <section class="cautions" aria-labelledby="cautions-title">
          <h2 id="cautions-title">{texts.cautions}</h2>
          <ul class="sentences">
            {now.cautions.map(({ code }) => (
              <li key={code}>{cautionTexts[code]}</li>
            ))}
          </ul>
        </section>
      )}
    </aside>
  );
}
