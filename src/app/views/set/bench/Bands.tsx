import { useMemo, useState } from 'preact/hooks';
import { BANDS, type BandCoil, type BandName, canShareCoil, coilNamesOf } from '../../../../engine/index.ts';
import { bandSwitchWords as texts } from '../../../../outputs/words/index.ts';
import { bandNames } from '../../../description/on-band.ts';
import { pathText } from '../../../description/schema-at.ts';
import { useProblems } from '../../../editing/controls.tsx';
import { Problems } from '../../../editing/Problems.tsx';
import { useDraft } from '../../../editing/use-draft.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { focusIfLost } from '../../../widgets/focus-if-lost.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import type { AddBandAnswer, AddBandQuestion } from './add-band.worker.ts';

const startWorker = () =>
  new Worker(new URL('./add-band.worker.ts', import.meta.url), { type: 'module', name: 'add-band' });

const TITLE = 'bands-title';

/** The bands of the set, and one more proposed: coils wound for it on the formers that there are. */
export function Bands() {
  const { written } = useOpenSet();
  const names = bandNames(written.value);
  return (
    <details class="card" open={names.length > 0}>
      <summary id={TITLE}>{texts.title}</summary>
      <p class="about">{texts.about}</p>
      {names.length > 0 && (
        <ul class="bands">
          {names.map((name, i) => (
            <Band key={i} index={i} name={name} />
          ))}
        </ul>
      )}
      <MoreBands />
    </details>
  );
}

function Band({ index, name }: { readonly index: number; readonly name: string }) {
  const { band, turnTo, removeBand, tellOfChange, receptionSet } = useOpenSet();
  const path = ['bands', index, 'name'];
  const draft = useDraft(path, name, (text) => text);
  const problems = useProblems(path);
  const id = `f-${pathText(path)}`;
  const shown = texts.name(name, index);
  const set = receptionSet.value;
  const arrangement = set?.bands?.[index]?.arrangement ?? (index === band.value ? set?.arrangement : undefined);
  const remove = () => {
    removeBand(index, texts.removeStep(shown));
    tellOfChange(texts.removed(shown), 'band');
    focusIfLost(() => document.getElementById(TITLE));
  };
  return (
    <li>
      <input
        type="text"
        id={id}
        aria-label={texts.bandName(index)}
        aria-describedby={problems.length > 0 ? `${id}-problem` : undefined}
        aria-invalid={problems.length > 0 || undefined}
        autocomplete="off"
        {...draft}
      />
      <span class="quiet">{arrangement && texts.coils([...coilNamesOf(arrangement)])}</span>
      {index === band.value ? (
        <span class="quiet">{texts.shown}</span>
      ) : (
        <button type="button" class="chip" aria-label={texts.showLabel(shown)} onClick={() => turnTo(index)}>
          {texts.show}
        </button>
      )}
      <button type="button" class="chip" aria-label={texts.removeLabel(shown)} onClick={remove}>
        {texts.remove}
      </button>
      <Problems id={`${id}-problem`} problems={problems} />
    </li>
  );
}

function MoreBands() {
  const { whole, apply, turnTo, tellOfChange } = useOpenSet();
  const [to, setTo] = useState<BandName | undefined>(undefined);
  const [chosen, setCoil] = useState<BandCoil>('own');
  const now = whole.value;
  const canShare = canShareCoil(now);
  const coil = canShare ? chosen : 'own';
  const question = useMemo(
    (): AddBandQuestion | undefined => (to === undefined ? undefined : { written: now, to, coil }),
    [to, now, coil],
  );
  const { answer, error, isCurrent } = useAnswer<AddBandQuestion, AddBandAnswer | undefined>(startWorker, question);
  const taken = bandNames(now).map((name) => name.toLowerCase());
  const take = ({ written, index }: AddBandAnswer, name: BandName) => {
    apply({ make: () => written, options: { label: texts.addLabel(name) } });
    turnTo(index);
    tellOfChange(texts.added(name), 'band');
    setTo(undefined);
  };
  return (
    <>
      <p>
        {(Object.keys(BANDS) as BandName[])
          .filter((name) => !taken.includes(name))
          .map((name) => (
            <button key={name} type="button" class="chip" aria-pressed={name === to} onClick={() => setTo(name)}>
              {texts.propose[name]}
            </button>
          ))}
      </p>
      {to !== undefined && canShare && (
        <fieldset>
          <legend>{texts.coilOfBand}</legend>
          {(['own', 'shared'] as const).map((one) => (
            <div key={one}>
              <label>
                <input type="radio" name="band-coil" checked={coil === one} onChange={() => setCoil(one)} />{' '}
                {texts.coilChoices[one]}
              </label>
            </div>
          ))}
        </fieldset>
      )}
      {to !== undefined && !isCurrent && <p class="quiet">{texts.trying}</p>}
      {to !== undefined && isCurrent && error !== '' && <p class="problem">{texts.notFound(error)}</p>}
      {to !== undefined && isCurrent && error === '' && !answer && <p class="problem">{texts.none}</p>}
      {to !== undefined && isCurrent && error === '' && answer && (
        <>
          <ul class="sentences">
            {[answer.coils.length > 0 ? texts.copies(answer.coils) : texts.shares, ...answer.sentences].map(
              (sentence) => (
                <li key={sentence}>{sentence}</li>
              ),
            )}
          </ul>
          <button type="button" class="primary" onClick={() => take(answer, to)}>
            {texts.take}
          </button>
        </>
      )}
    </>
  );
}
