import {
  cautionTexts,
  interferenceSentence,
  settingsWords,
  suggestionCosts,
  suggestionEffect,
  suggestionWords,
  warningSentences,
} from '../../outputs/words/index.ts';
import { fieldOf } from '../description/change-field.ts';
import { areSuggestionsBehind, chosen, reception, suggestionsFor } from '../state/reception.ts';
import { tryOut } from '../state/try-out.ts';
import { notes } from '../state/understanding.ts';
import { showField } from '../widgets/show-field.ts';

const unique = (texts: readonly string[]): string[] => [...new Set(texts)];

/** What would help most, what to beware of, and the cautions of this set. */
export function Side() {
  const station = chosen.value;
  const now = reception.value;
  const disturbing = station?.disturbances.filter((one) => one.effect !== 'none') ?? [];
  const suggestions = station && suggestionsFor(station);
  const warnings = unique(
    warningSentences([...(now?.warnings ?? []), ...(now?.dial.warnings ?? []), ...(station?.warnings ?? [])]),
  );
  return (
    <aside class="side" aria-label="Help and cautions">
      {station && (
        <section aria-labelledby="help-title">
          <h2 id="help-title">What would help {station.name} most</h2>
          {suggestions?.length === 0 && <p class="quiet">Nothing that this tool knows of would help much.</p>}
          {!suggestions && <p class="quiet">Trying changes…</p>}
          <ol class={`help${areSuggestionsBehind.value ? ' is-old' : ''}`}>
            {suggestions?.map((one) => {
              const what = settingsWords(one);
              const effect = suggestionEffect(one);
              const costs = suggestionCosts(one);
              return (
                <li key={what}>
                  <button
                    type="button"
                    class="help-item"
                    title="Show where this is changed"
                    onClick={() => showField(fieldOf(one.changes[0]))}
                  >
                    <span class="gain">{effect}</span>{' '}
                    <span>
                      {what}
                      {costs && <span class="cost"> ({costs})</span>}
                    </span>
                  </button>
                  <button
                    type="button"
                    class="try"
                    aria-label={`Try: ${what}`}
                    onClick={() => tryOut(one.changes, what, suggestionWords(one))}
                  >
                    Try
                  </button>
                </li>
              );
            })}
          </ol>
        </section>
      )}
      {station && (
        <section aria-labelledby="disturbances-title">
          <h2 id="disturbances-title">What disturbs it</h2>
          {disturbing.length === 0 && <p class="quiet">Nothing on the list does.</p>}
          <ul class="sentences">
            {disturbing.slice(0, 4).map((disturbance) => (
              <li key={disturbance.by}>{interferenceSentence(disturbance)}</li>
            ))}
          </ul>
        </section>
      )}
      {(warnings.length > 0 || notes.value.length > 0) && (
        <section aria-labelledby="warnings-title">
          <h2 id="warnings-title">Worth knowing</h2>
          <ul class="sentences">
            {[...warnings, ...notes.value].map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </section>
      )}
      {now && now.cautions.length > 0 && (
        <section class="cautions" aria-labelledby="cautions-title">
          <h2 id="cautions-title">Take care</h2>
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
