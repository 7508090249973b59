import { useEffect, useRef, useState } from 'preact/hooks';
import type { OfferedMeasurement, ReadingsProblem, SetDescription } from '../../../engine/index.ts';
import { measureAnswer, measureView as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { useWorker } from '../../workers/use-worker.ts';
import type { FileAnswer, FileQuestion } from './measure.worker.ts';
import { newMeasureWorker } from './measure-answers.ts';
import { problemLine } from './problem-lines.ts';
import { useReadings } from './use-readings-of-set.ts';
import { cardFor } from './written-readings.ts';

interface Taken {
  readonly card: OfferedMeasurement;
  readonly written: Readonly<Record<string, unknown>>;
}

interface Props {
  readonly card: OfferedMeasurement;
  /** All that the set allows: a file may hold readings of another card than the one that is open. */
  readonly offered: readonly OfferedMeasurement[];
  readonly set: SetDescription;
  /** Name of the file that the readings in the card are from. */
  readonly source: string | undefined;
  /** What it has is not all understood. */
  readonly isRefused: boolean;
  readonly dropped: File | undefined;
  readonly onTaken: (taken: Taken, name: string) => void;
}

type State =
  | { readonly is: 'idle'; readonly notRead?: readonly string[] }
  | { readonly is: 'refused'; readonly name: string; readonly problems: readonly ReadingsProblem[] }
  | {
      readonly is: 'several';
      readonly name: string;
      readonly measurements: readonly Readonly<Record<string, unknown>>[];
    };

/** A file of readings instead of typing them: what the command line reads, or what an instrument wrote. */
export function ReadingsFile({ card, offered, set, source, isRefused, dropped, onTaken }: Props) {
  const { chosen } = useOpenSet();
  const [state, setState] = useState<State>({ is: 'idle' });
  const picker = useRef<HTMLInputElement>(null);
  const { add, isWorking, outcome } = useReadings(set);
  const ask = useWorker<FileQuestion, FileAnswer>(newMeasureWorker, ({ name }, reply) => {
    if ('error' in reply)
      setState({
        is: 'refused',
        name,
        problems: [
          { path: '', expected: { code: 'readable-file' }, hint: { code: 'system-message', message: reply.error } },
        ],
      });
    else if (!reply.answer.ok) setState({ is: 'refused', name, problems: reply.answer.problems });
    else {
      const { measurements, notRead } = reply.answer;
      const [only] = measurements;
      const coils = set.coils.map((coil) => coil.name);
      const of = measurements.length === 1 ? cardFor(offered, only, coils, card, chosen.peek()?.name) : undefined;
      if (!of) setState({ is: 'several', name, measurements });
      else {
        setState({ is: 'idle', notRead });
        onTaken({ card: of, written: only }, name);
      }
    }
  });
  const take = async (file: File) =>
    ask({ about: 'file', name: file.name, kind: card.kind, set, bytes: new Uint8Array(await file.arrayBuffer()) });
  useEffect(() => {
    if (dropped) void take(dropped);
  }, [dropped]);
  return (
    <div class="readings-file">
      <label for="measure-file">{texts.file}</label>
      <input
        id="measure-file"
        ref={picker}
        type="file"
        accept=".csv,.txt,.json,.wav,.tsv,.s1p,.s2p"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void take(file);
        }}
      />
      <p class="about">{texts.fileHint}</p>
      <div role="status">
        {state.is === 'idle' && source !== undefined && (
          <p>{isRefused ? texts.fileRefused(source) : texts.fileTaken(source)}</p>
        )}
        {state.is === 'idle' && state.notRead && <p>{measureAnswer.columnsNotRead(state.notRead)}</p>}
        {state.is === 'several' && (
          <p>
            {texts.severalTaken(state.measurements.length, state.name)}{' '}
            <button
              type="button"
              aria-disabled={isWorking || undefined}
              onClick={() =>
                add(state.measurements, () => {
                  setState({ is: 'idle' });
                  focusIfLost(() => picker.current);
                })
              }
            >
              {texts.useAll(state.measurements.length)}
            </button>
          </p>
        )}
        {state.is === 'refused' && (
          <>
            <p class="problem">{texts.fileProblems(state.name, state.problems.length)}</p>
            <ul class="sentences">
              {state.problems.map((one) => (
                <li key={`${one.path} ${one.line}`}>{problemLine(one)}</li>
              ))}
            </ul>
          </>
        )}
        {outcome !== '' && <p>{outcome}</p>}
      </div>
    </div>
  );
}
