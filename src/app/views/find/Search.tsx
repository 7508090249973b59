import { useMemo } from 'preact/hooks';
import { keepRefusal, type TimeOfDay } from '../../../engine/index.ts';
import { keepRefusalText, problemSentence, findView as texts, wantName } from '../../../outputs/words/index.ts';
import { fieldPath } from '../../description/places.ts';
import { finding, findingKey, goOnFinding, startFinding, stopFinding } from '../../state/finding.ts';
import type { OpenBox } from '../../state/open-boxes.ts';
import { view } from '../../state/page-view.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { askedOf } from './find-question.ts';

const newFindWorker = (): Worker =>
  new Worker(new URL('../../workers/find.worker.ts', import.meta.url), { type: 'module', name: 'find' });

/** What is wanted and where, the search, and how far it has come. */
export function Search({ box, time }: { readonly box: OpenBox; readonly time: TimeOfDay }) {
  const { lastValidSet, problems, written } = useOpenSet();
  const ofBox = box.understood.value;
  const ofSet = lastValidSet.value;
  const asked = useMemo(() => ofBox && ofSet && askedOf(ofBox, ofSet), [ofBox, ofSet]);
  const now = finding.value;
  const isReady = box.reading.value.ok && asked?.ok === true;
  const key = useMemo(() => (asked?.ok ? findingKey(asked.question, time) : ''), [asked, time]);
  const isOld = now !== undefined && asked?.ok === true && now.key !== key;
  const start = () => {
    if (asked?.ok) startFinding(asked.question, time, newFindWorker);
  };
  return (
    <div class="find-search">
      <div class="find-wanted">
        <h2 id="find-wanted">{texts.wanted(ofSet?.set.place.name ?? '')}</h2>
        <ul aria-labelledby="find-wanted" class="find-wants">
          {asked?.ok && asked.question.read.wants.map((want, i) => <li key={i}>{wantName(want)}</li>)}
        </ul>
        <button type="button" class="link" onClick={() => (view.value = 'set')}>
          {texts.editWants}
        </button>
      </div>
      <p class="about">{texts.fromSet}</p>
      {asked?.ok === false && (
        <ul class="problem">
          {asked.problems.map((problem) => (
            <li key={problem.path}>{problemSentence(problem)}</li>
          ))}
        </ul>
      )}
      {asked?.ok &&
        asked.unkept.map((part) => (
          <p key={part} class="about">
            {texts.unkept(fieldPath(part, written.value), keepRefusalText(keepRefusal(ofSet!.set, part)!))}
          </p>
        ))}
      {problems.value.length > 0 && <p class="about">{texts.setNotReady}</p>}
      {!box.reading.value.ok && <p class="problem">{texts.mendFirst}</p>}
      <div class="find-go">
        <button type="button" class={now && !isOld ? '' : 'primary'} disabled={!isReady} onClick={start}>
          {now ? texts.searchAgain : texts.search}
        </button>
        {now?.state === 'searching' && (
          <button type="button" onClick={stopFinding}>
            {texts.stop}
          </button>
        )}
        {now?.state === 'stopped' && (
          <button type="button" onClick={goOnFinding}>
            {texts.goOn}
          </button>
        )}
        {now && now.state !== 'done' && (
          <div class="find-progress">
            <progress aria-label={texts.search} max={1} value={now.progress.share} />
            <p>{now.state === 'stopped' ? texts.stopped : texts.progress(now.progress)}</p>
          </div>
        )}
      </div>
      <p class="about" role="status">
        {isOld ? texts.outdated : now?.state === 'searching' ? texts.searching(now.sets.length) : ''}
      </p>
    </div>
  );
}
