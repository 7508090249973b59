import {
  settingsWords,
  sideWords,
  wantTexts as texts,
  wantEffects,
  wantSuggestionWords,
} from '../../../outputs/words/index.ts';
import { fieldOf } from '../../description/change-field.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { tryOut } from '../../state/try-out.ts';
import { showField } from '../../widgets/show-field.ts';
import { unbroken } from '../../widgets/unbroken.ts';

/** What would serve the wants, each with what it does to every one of them. */
export function WantSuggestions() {
  const { stage, wantSuggestions, receptionSet, change, tellOfChange } = useOpenSet();
  const known = wantSuggestions.value;
  const isBehind = known?.set !== receptionSet.value;
  return (
    <section aria-labelledby="want-help-title">
      <h2 id="want-help-title">{texts.suggestions}</h2>
      {!known && <p class="quiet">{sideWords.trying}</p>}
      {known?.answer.length === 0 && <p class="quiet">{texts.nothing}</p>}
      {known && known.answer.length > 1 && <p class="help-order">{texts.order}</p>}
      <ol class={`help${isBehind ? ' is-old' : ''}`}>
        {known?.answer.map((one) => {
          const what = settingsWords(one);
          return (
            <li key={what}>
              <button
                type="button"
                class="help-item is-whole"
                title={sideWords.showField}
                onClick={() => showField(stage, fieldOf(one.changes[0]))}
              >
                <span>
                  {unbroken(what)}
                  <span class="besides">
                    {one.isTradeOff ? `${texts.tradeOff}: ` : ''}
                    {unbroken(wantEffects(one))}
                  </span>
                </span>
              </button>
              <button
                type="button"
                class="try"
                aria-label={sideWords.trySuggestion(what)}
                onClick={() => tryOut({ change, tellOfChange }, one.changes, what, wantSuggestionWords(one))}
              >
                {sideWords.tryIt}
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
