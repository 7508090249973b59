import { formatQuantity, type StageId } from '../../../../engine/index.ts';
import { stageSentence, suggestionWords, warningSentences } from '../../../../outputs/words/index.ts';
import { chosen, suggestionsFor } from '../../../state/reception.ts';

/** What happens at a stage for the chosen station, and what would improve it. */
export function StageNow({ id }: { id: StageId }) {
  const station = chosen.value;
  const level = station?.path.find((one) => one.id === id);
  if (!station || !level) return null;
  const suggestions = suggestionsFor(station)?.filter((one) => one.stage === id) ?? [];
  const range = level.range?.map((value) =>
    id === 'ear' ? `${Math.round(value)} dB` : formatQuantity(value, level.kind, 2),
  );
  return (
    <div class="stage-now">
      <p>
        <strong>{station.name}:</strong> {stageSentence(level)}{' '}
        {range && (
          <span class="figure-range">
            Between {range[0]} and {range[1]}.
          </span>
        )}
      </p>
      {warningSentences(level.warnings).map((warning) => (
        <p class="figure-warning" key={warning}>
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
      {suggestions.length > 0 && (
        <p class="stage-help">Would help here: {suggestions.map(suggestionWords).join('; ')}.</p>
      )}
    </div>
  );
}
