import { formatQuantity, type StageId } from '../../../../engine/index.ts';
import {
  stageSentence,
  suggestionWords,
  setWords as texts,
  warningSentences,
} from '../../../../outputs/words/index.ts';
import { chosen, suggestionsFor } from '../../../state/reception.ts';

/** What happens at a stage for the chosen station, and what would improve it. */
export function StageNow({ id }: { id: StageId }) {
  const station = chosen.value;
  const level = station?.path.find((one) => one.id === id);
  if (!station || !level) return null;
  const suggestions = suggestionsFor(station)?.filter((one) => one.stage === id) ?? [];
  const range = level.range?.map((value) =>
    id === 'ear' ? texts.rangeDecibels(value) : formatQuantity(value, level.kind, 2),
  );
  return (
    <div class="stage-now">
      <p>
        <strong>{texts.stageOf(station.name)}</strong> {stageSentence(level)}{' '}
        {range && <span class="figure-range">{texts.range(range[0], range[1])}</span>}
      </p>
      {warningSentences(level.warnings).map((warning) => (
        <p class="figure-warning" key={warning}>
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
      {suggestions.length > 0 && <p class="stage-help">{texts.suggestionsHere(suggestions.map(suggestionWords))}</p>}
    </div>
  );
}
