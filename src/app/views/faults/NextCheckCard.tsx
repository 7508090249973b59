import { useRef } from 'preact/hooks';
import { faultsView as texts } from '../../../outputs/words/index.ts';
import { SceneView } from '../../widgets/Plot.tsx';
import { AnswerField } from './AnswerField.tsx';
import type { ShownNextCheck } from './faults.worker.ts';

interface Props {
  readonly next: ShownNextCheck | undefined;
  /** Why there is none. */
  readonly end: string | undefined;
  readonly onAnswer: (key: string, value: string) => void;
}

/** The check that tells most for its trouble: how, what to expect, where on the set, and the place for its answer. */
export function NextCheckCard({ next, end, onAnswer }: Props) {
  const title = useRef<HTMLHeadingElement>(null);
  const give = (key: string, value: string) => {
    onAnswer(key, value);
    // What was pressed belongs to a check that gives way to the next one.
    title.current?.focus();
  };
  return (
    <section class="card faults-next" aria-labelledby="faults-next-title">
      <h2 id="faults-next-title" ref={title} tabIndex={-1}>
        {texts.next}
      </h2>
      <div aria-live="polite">
        {next ? (
          <>
            <p class="faults-question">{next.text}</p>
            <p>{next.expect}</p>
          </>
        ) : (
          <p>{end}</p>
        )}
      </div>
      {next && <NextBody key={next.check.key} next={next} onAnswer={give} />}
    </section>
  );
}

function NextBody({ next: { check, circuit, board }, onAnswer }: Pick<Props, 'onAnswer'> & { next: ShownNextCheck }) {
  return (
    <>
      {check.cautions.length > 0 && (
        <ul class="fault-caution">
          {check.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <form
        class="faults-give"
        onSubmit={(event) => {
          event.preventDefault();
          const value = String(new FormData(event.currentTarget).get('answer') ?? '').trim();
          if (value !== '') onAnswer(check.key, value);
        }}
      >
        <span class="fault-answer">
          <AnswerField check={check} name={texts.answer} value="" />
        </span>
        <button type="submit" class="primary">
          {texts.give}
        </button>
        <button type="button" onClick={() => onAnswer(check.key, texts.notPossible)}>
          {texts.cannot}
        </button>
      </form>
      <p class="quiet">{texts.how(check.help, texts.minutes(check.minutes))}</p>
      {(circuit || board) && (
        <>
          <h3>{texts.where}</h3>
          {circuit && (
            <figure class="drawing part-drawing circuit-diagram">
              <SceneView scene={circuit} />
            </figure>
          )}
          {board && (
            <figure class="drawing part-drawing faults-board">
              <SceneView scene={board} />
            </figure>
          )}
        </>
      )}
    </>
  );
}
