import type { SetDescription } from '../../../engine/index.ts';
import { faultsView as texts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { Causes } from './Causes.tsx';
import { NextCheckCard } from './NextCheckCard.tsx';
import { NoticedSigns, NoticedStations } from './Noticed.tsx';
import { useFaultSearch } from './use-fault-search.ts';
import './faults.css';

interface Props {
  readonly set: SetDescription;
  readonly time: When;
}

/** The set is built and too little is heard: what is noticed, what to check next, and what it may be. */
export function Faults({ set, time }: Props) {
  const { id, faultAnswers } = useOpenSet();
  const answers = faultAnswers.value;
  const { answer, isFinal, progress, error } = useFaultSearch(set, time, answers);
  const put = (key: string, value: string) => {
    const { [key]: _, ...others } = faultAnswers.peek();
    faultAnswers.value = value.trim() === '' ? others : { ...others, [key]: value };
  };
  const fields = { answers, notUnderstood: answer?.notUnderstood ?? [], onAnswer: put };
  const state = error !== '' ? texts.notWorkedOut(error) : isFinal ? '' : answer ? texts.refining : texts.calculating;
  return (
    <section class="faults" aria-label={texts.label}>
      <p class="faults-state" role="status">
        {state} {!isFinal && error === '' && <progress max={1} value={progress} aria-label={texts.progress} />}
      </p>
      {answer && (
        <>
          <NoticedStations checks={answer.checks} {...fields} />
          <div class="faults-found">
            <NextCheckCard next={answer.next} end={answer.search.end} onAnswer={put} />
            <Causes search={answer.search} isObserved={Object.keys(answers).length > 0} />
          </div>
          <NoticedSigns
            checks={answer.checks}
            {...fields}
            onClear={() => {
              faultAnswers.value = {};
              const putBack = () => {
                faultAnswers.value = { ...answers, ...faultAnswers.peek() };
              };
              tell(texts.cleared, { key: 'faults-cleared', of: id, action: { label: texts.putBack, run: putBack } });
            }}
          />
        </>
      )}
    </section>
  );
}
