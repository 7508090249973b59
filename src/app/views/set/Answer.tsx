import { problemText, receptionSummary, stationSentence } from '../../../outputs/words/index.ts';
import { fieldWords, nameOf } from '../../description/places.ts';
import { written } from '../../state/document.ts';
import { chosen, reception, receptionError } from '../../state/reception.ts';
import { isBehind, problems } from '../../state/understanding.ts';
import { kilohertz } from '../../widgets/figure.ts';
import { showField } from '../../widgets/show-field.ts';

/** The answer first, in words; below it the chosen station's. */
export function Answer() {
  const now = reception.value;
  const station = chosen.value;
  return (
    <section class="answer" aria-label="What you would hear">
      <p class="summary" aria-live="polite">
        {now ? receptionSummary(now) : receptionError.value ? 'This set could not be worked out.' : 'Working it out…'}
      </p>
      {station && (
        <p class="chosen-sentence">
          <strong>{station.name}</strong>, {kilohertz(station.frequency)}. {stationSentence(station)}
        </p>
      )}
      {receptionError.value && (
        <p class="problem" role="alert">
          {receptionError.value} {now ? 'The figures are those of the set before.' : ''}
        </p>
      )}
      {isBehind.value && <AsLastUnderstood />}
    </section>
  );
}

/** While something is not right yet, the figures stay and say what they are of. */
function AsLastUnderstood() {
  const list = problems.value;
  return (
    <div class="behind" role="status">
      <strong>As last understood.</strong>{' '}
      {list.length === 1 ? 'One thing is not right yet:' : `${list.length} things are not right yet:`}
      <ul>
        {list
          .slice(0, 6)
          .map((problem) => problemText(problem, nameOf(written.value)))
          .map((problem) => (
            <li key={problem.path + problem.expected}>
              <button type="button" class="link" onClick={() => showField(problem.path)}>
                {fieldWords(problem.path, written.value)}
              </button>
              : expected {problem.expected}
              {problem.hint ? ` (${problem.hint})` : ''}
            </li>
          ))}
        {list.length > 6 && <li>and {list.length - 6} more</li>}
      </ul>
    </div>
  );
}
