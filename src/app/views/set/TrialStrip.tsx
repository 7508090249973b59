import { useRef } from 'preact/hooks';
import { trialWords as texts } from '../../../outputs/words/index.ts';
import { dismiss, type Notice, notices, TRIED } from '../../state/notices.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';

/** The change of the set in focus that is being tried, until it is kept, taken back or followed by another. */
export function useTrial(): Notice | undefined {
  const { id } = useOpenSet();
  return notices.value.find(({ key, of }) => key === TRIED && of === id);
}

/** The same until another station is chosen, whose sentence then has the room. */
export function useTrialHere(): Notice | undefined {
  const trial = useTrial();
  const { stationIndex } = useOpenSet();
  // As chosen by hand: the one that is best on the changed set may be another by itself.
  const station = stationIndex.value;
  const begun = useRef<{ readonly trial?: Notice; readonly station?: number }>({});
  if (begun.current.trial !== trial) begun.current = { trial, station };
  return begun.current.station === station ? trial : undefined;
}

/** What is being tried, in the room of the sentence about the station: nothing below moves. */
export function TrialStrip({ trial }: { readonly trial: Notice }) {
  const { id } = useOpenSet();
  const done = (run?: () => void) => {
    dismiss(TRIED, id);
    run?.();
    focusIfLost(() => document.getElementById('add-want'));
  };
  return (
    <section class="trial" role="status" aria-label={texts.label}>
      <p class="trial-line" title={trial.text}>
        {trial.text}
      </p>
      <button type="button" class="chip" onClick={() => done()}>
        {texts.keep}
      </button>
      {trial.action && (
        <button type="button" class="chip" onClick={() => done(trial.action?.run)}>
          {trial.action.label}
        </button>
      )}
    </section>
  );
}
