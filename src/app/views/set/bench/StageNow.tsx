import { hasRanges, type RangedStation, type StageId } from '../../../../engine/index.ts';
import {
  budgetSentence,
  chanceSentence,
  stageSentence,
  suggestionWords,
  setWords as texts,
  uncertaintyHeading,
  wantSuggestionWords,
  warningSentences,
} from '../../../../outputs/words/index.ts';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { hasWants } from '../../../state/wanted.ts';
import { unbroken } from '../../../widgets/unbroken.ts';

/** What happens at a stage for the chosen station, and what would improve it. */
export function StageNow({ id }: { id: StageId }) {
  const { suggestionsFor, receptionSet, wantSuggestions } = useOpenSet();
  const station = useChosenStation();
  const level = station?.path.find((one) => one.id === id);
  if (!station || !level) return null;
  const isHere = (one: { readonly stage: StageId }): boolean => one.stage === id;
  const suggestions = hasWants(receptionSet.value)
    ? (wantSuggestions.value?.answer.filter(isHere).map(wantSuggestionWords) ?? [])
    : (suggestionsFor(station)?.filter(isHere).map(suggestionWords) ?? []);
  const range = level.range && (id === 'ear' ? texts.rangeAtEar(level.range) : texts.range(level.range, level.kind));
  return (
    <div class="stage-now">
      <p>
        <strong>{texts.stageOf(station.name)}</strong> {stageSentence(level)}{' '}
        {range && <span class="figure-range">{range}</span>}
      </p>
      {id === 'ear' && hasRanges(station) && <Sureness station={station} />}
      {warningSentences(level.warnings).map((warning) => (
        <p class="figure-warning" key={warning}>
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
      {suggestions.length > 0 && <p class="stage-help">{unbroken(texts.suggestionsHere(suggestions))}</p>}
    </div>
  );
}

/** How many such sets hear the station, and what to measure to be surer. */
function Sureness({ station }: { station: RangedStation }) {
  const items = station.budget.slice(0, 3);
  return (
    <>
      <p>{chanceSentence(station)}</p>
      {items.length > 0 && (
        <>
          <p>{uncertaintyHeading}</p>
          <ul>
            {items.map((item) => (
              <li key={item.what}>{budgetSentence(item)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
