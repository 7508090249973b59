import type { ComparedSets } from '../../../engine/index.ts';
import { compareView, listeningTexts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { audibleSets, useComparedSound } from './use-compared-sound.ts';

interface Props {
  readonly compared: ComparedSets;
  readonly time: When;
}

const { hear: texts, letter } = compareView;

/** One button steps from set to set at the same place of the programme; each has one of its own too. */
export function HearEach({ compared, time }: Props) {
  const { heard, isReady, problem, hear, stop } = useComparedSound(compared, time);
  const audible = audibleSets(compared);
  const next = audible[(audible.indexOf(heard ?? -1) + 1) % audible.length];
  const nameOf = (index: number): string => compared.sets[index].set.name;
  if (audible.length === 0) return null;
  return (
    <section class="card compare-hear" aria-labelledby="compare-hear-title">
      <h3 id="compare-hear-title">{texts.title}</h3>
      <p>
        {texts.about} {listeningTexts.care}
      </p>
      <div class="compare-keys">
        <button type="button" class="primary" title={texts.key} onClick={() => hear(next)}>
          {heard === undefined ? texts.start : texts.next(next)}
        </button>
        {compared.sets.map(({ set, station }, i) => (
          <button
            key={letter(i)}
            type="button"
            aria-pressed={heard === i}
            aria-label={texts.one(i, set.name)}
            disabled={!station.dial}
            title={station.dial ? undefined : texts.cannot(i)}
            onClick={() => hear(i)}
          >
            {letter(i)}
          </button>
        ))}
        <button type="button" disabled={heard === undefined} onClick={stop}>
          {texts.stop}
        </button>
      </div>
      <p role="status" data-heard={isReady ? heard : undefined}>
        {heard !== undefined && (isReady ? texts.now(heard, nameOf(heard)) : texts.preparing(heard))}
      </p>
      {problem !== '' && (
        <p class="problem" role="alert">
          {texts.failed(problem)}
        </p>
      )}
    </section>
  );
}
