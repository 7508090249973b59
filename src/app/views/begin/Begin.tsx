import { useEffect, useRef, useState } from 'preact/hooks';
import { type Problem, STARTERS, variantChoices } from '../../../engine/index.ts';
import { kindName, problemText, beginWords as texts } from '../../../outputs/words/index.ts';
import { type Bench, type BenchField, benchFieldAt } from '../../description/bench.ts';
import { fieldPath } from '../../description/places.ts';
import { schemaAt } from '../../description/schema-at.ts';
import { type Reading, readingAsSent } from '../../description/stand-ins.ts';
import { isBeginning } from '../../state/begin.ts';
import { beginDraft } from '../../state/begin-draft.ts';
import { openReading } from '../../state/files.ts';
import { useShelf } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { useWorker } from '../../workers/use-worker.ts';
import './begin.css';

/** What a text field that is left empty is assumed to be. */
const TYPICAL: Readonly<Partial<Record<BenchField, unknown>>> = {
  former: STARTERS['coil/solenoid'].formerDiameter,
  wire: STARTERS.wire.size,
  capacitor: STARTERS['tuning/variable'].maximum,
  aerialLength: STARTERS['aerial/inverted-L'].length,
  aerialHeight: STARTERS['aerial/inverted-L'].height,
};

/** Kinds to choose from, and the one that is assumed. */
const KINDS = { detector: 'germanium', load: 'phones', earth: 'rod' } as const;
type Chosen = keyof typeof KINDS;
/** Kinds that say no more than that figures follow. */
const WITHOUT_FIGURES: ReadonlySet<string> = new Set(['measured', 'exponential']);

const choicesOf = (part: Chosen): string[] =>
  variantChoices(schemaAt({}, [part])!)!.choices.filter((kind) => !WITHOUT_FIGURES.has(kind));

const newCompleteWorker = (): Worker =>
  new Worker(new URL('./complete.worker.ts', import.meta.url), { type: 'module', name: 'complete' });

/** A set from the parts at hand: what is left empty is completed and marked as assumed. */
export function Begin() {
  const shelf = useShelf();
  const dialog = useRef<HTMLDialogElement>(null);
  const bench = beginDraft.value;
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  /** Why what is left empty could not be worked out. */
  const [failure, setFailure] = useState('');
  const [isWorking, setWorking] = useState(false);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  const close = () => {
    isBeginning.value = false;
  };
  const complete = useWorker<Bench, Reading>(newCompleteWorker, (asked, reply) => {
    setWorking(false);
    const refused =
      'answer' in reply ? openReading(shelf, readingAsSent(reply.answer, reply.answer.written), texts.fileName) : [];
    setProblems(refused);
    setFailure('error' in reply ? reply.error : '');
    if (refused.length > 0 || 'error' in reply) return;
    if (beginDraft.peek() === asked) beginDraft.value = {};
    // The new set comes with a page of its own, without the dialog.
    close();
    focusIfLost(() => document.querySelector<HTMLElement>('.assumed-chip') ?? document.getElementById('workbench'));
  });
  const begin = (event: Event) => {
    event.preventDefault();
    setWorking(true);
    complete(bench);
  };
  const rows = (fields: readonly BenchField[]) =>
    fields.map((field) => (
      <BenchRow
        key={field}
        field={field}
        value={bench[field] ?? ''}
        problems={problems.filter(({ path }) => benchFieldAt(path) === field)}
        onInput={(value) => {
          beginDraft.value = { ...bench, [field]: value };
        }}
      />
    ));
  const others = problems.filter(({ path }) => benchFieldAt(path) === undefined);
  return (
    <dialog ref={dialog} class="dialog begin" aria-labelledby="begin-title" onClose={close}>
      <form onSubmit={begin}>
        <h2 id="begin-title">{texts.title}</h2>
        <p class="about">{texts.about}</p>
        <fieldset>
          <legend>{texts.parts}</legend>
          {rows(['former', 'wire', 'turns', 'capacitor', 'detector', 'load'])}
        </fieldset>
        <fieldset>
          <legend>{texts.where}</legend>
          {rows(['place', 'stations'])}
        </fieldset>
        <fieldset>
          <legend>{texts.outdoors}</legend>
          {rows(['aerialLength', 'aerialHeight', 'earth'])}
        </fieldset>
        {others.length > 0 && (
          <div class="problem" role="alert">
            <p>{texts.failed}</p>
            <ul>
              {others.map((problem) => (
                <li key={problem.path}>
                  {fieldPath(problem.path)}: {problemText(problem).expected}
                </li>
              ))}
            </ul>
          </div>
        )}
        {failure !== '' && (
          <p class="problem" role="alert">
            {texts.notCompleted(failure)}
          </p>
        )}
        <p class="buttons">
          <button type="submit" class="primary" disabled={isWorking}>
            {isWorking ? texts.working : texts.begin}
          </button>
          <button type="button" onClick={() => dialog.current?.close()}>
            {texts.cancel}
          </button>
          {Object.values(bench).some((text) => text !== '') && (
            <button
              type="button"
              onClick={() => {
                beginDraft.value = {};
                setProblems([]);
                setFailure('');
                document.getElementById('begin-former')?.focus();
              }}
            >
              {texts.clear}
            </button>
          )}
        </p>
      </form>
    </dialog>
  );
}

interface RowProps {
  readonly field: BenchField;
  readonly value: string;
  readonly problems: readonly Problem[];
  readonly onInput: (value: string) => void;
}

function BenchRow({ field, value, problems, onInput }: RowProps) {
  const id = `begin-${field}`;
  const { label, example } = texts.fields[field];
  const typical = TYPICAL[field];
  const common = {
    id,
    'aria-invalid': problems.length > 0,
    'aria-describedby': problems.length > 0 ? `${id}-problem` : undefined,
  };
  const isChosen = Object.hasOwn(KINDS, field);
  const onText = (event: { currentTarget: { value: string } }) => onInput(event.currentTarget.value);
  return (
    <div class={`begin-row${problems.length > 0 ? ' has-problem' : ''}`}>
      <label for={id}>{label}</label>
      {isChosen ? (
        <select {...common} value={value} onChange={onText}>
          <option value="">{texts.notChosen(kindName(field as Chosen, KINDS[field as Chosen]))}</option>
          {choicesOf(field as Chosen).map((kind) => (
            <option key={kind} value={kind}>
              {kindName(field as Chosen, kind)}
            </option>
          ))}
        </select>
      ) : field === 'stations' ? (
        <textarea {...common} data-typing rows={3} value={value} placeholder={texts.stationsExample} onInput={onText} />
      ) : (
        <input
          {...common}
          type="text"
          data-typing
          autocomplete="off"
          value={value}
          placeholder={typical === undefined ? example : texts.typically(String(typical))}
          onInput={onText}
        />
      )}
      {problems.length > 0 && (
        <p class="problem" id={`${id}-problem`} role="alert">
          {problems
            .map((problem) => problemText(problem))
            .map(({ expected, hint }) => [expected, hint].filter(Boolean).join('; '))
            .join('. ')}
        </p>
      )}
    </div>
  );
}
