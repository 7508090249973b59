import type { Reception, StageId, StationReception, Warning } from '../../engine/index.ts';
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
import { unbroken } from '../widgets/unbroken.ts';

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
  const here = new Set(warningSentences(warningsOnBench(stage.value, now, station)));
  const warnings = unique(
    warningSentences([...(now?.warnings ?? []), ...(now?.dial.warnings ?? []), ...(station?.warnings ?? [])]),
  ).filter((sentence) => !here.has(sentence));
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
                      {unbroken(what)}
                      {besides && <span class="besides">{unbroken(texts.besides(besides))}</span>}
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
      {station && !station.outOfRange && (
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
        // In full where one puts something up; elsewhere at hand, and in full beside the parts that they are about.
        <details class="cautions" open={stage.value === 'aerial'} key={stage.value === 'aerial' ? 'aerial' : 'other'}>
          <summary>
            <span aria-hidden="true">⚠ </span>
            {texts.cautions(now.cautions.length)}
          </summary>
          <ul class="sentences">
            {now.cautions.map(({ code }) => (
              <li key={code}>{cautionTexts[code]}</li>
            ))}
          </ul>
        </details>
      )}
    </aside>
  );
}

/** Warnings that the open workbench says beside the parts they are about: they are not said a second time. */
function warningsOnBench(
  stage: StageId,
  now: Reception | undefined,
  station: StationReception | undefined,
): readonly Warning[] {
  const ofStage = station?.path.find(({ id }) => id === stage)?.warnings ?? [];
  if (!now) return ofStage;
  const { aerial, earth, coils, tuning, detector, load } = now.parts;
  const parts: Partial<Record<StageId, readonly { readonly warnings: readonly Warning[] }[]>> = {
    aerial: [aerial, earth],
    'tuned circuit': [...coils, tuning],
    detector: [detector],
    phones: [load],
  };
  return [...ofStage, ...(parts[stage] ?? []).flatMap(({ warnings }) => warnings)];
}
