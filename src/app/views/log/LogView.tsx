import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { LogCells, LogProblem, SetDescription } from '../../../engine/index.ts';
import { logProblemText, logWords as texts } from '../../../outputs/words/index.ts';
import { download, fileStem } from '../../state/download.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { textOfFile } from '../../state/text-of-file.ts';
import { FilePicker } from '../../widgets/FilePicker.tsx';
import { useAnswer } from '../../workers/use-worker.ts';
import { HeardWhen } from './HeardWhen.tsx';
import { HeardWhere } from './HeardWhere.tsx';
import { LogEntries } from './LogEntries.tsx';
import type { LogAnswer, LogQuestion } from './log.worker.ts';
import { PredictedBeside } from './PredictedBeside.tsx';
import { QuickEntry } from './QuickEntry.tsx';
import { useLog } from './use-log.ts';
import './log.css';

const newLogWorker = (): Worker =>
  new Worker(new URL('./log.worker.ts', import.meta.url), { type: 'module', name: 'log' });

/** More are shown when asked for. */
const AT_ONCE = 50;

/** What was heard with the set: written down in three taps, and beside what was predicted. */
export function LogView({ set }: { readonly set: SetDescription }) {
  const { id } = useOpenSet();
  const { log, add, remove, join } = useLog();
  const picker = useRef<HTMLInputElement>(null);
  /** A file whose entries are being added to the log of a set. */
  const [file, setFile] = useState<{ readonly of: string; readonly text: string } | undefined>();
  const added = file?.of === id ? file.text : undefined;
  const [fileProblems, setFileProblems] = useState<readonly LogProblem[]>([]);
  const joining = useRef<string | undefined>(undefined);
  const [most, setMost] = useState(AT_ONCE);
  const question = useMemo((): LogQuestion => ({ set, log, added, most }), [set, log, added, most]);
  const { answer, error } = useAnswer<LogQuestion, LogAnswer>(newLogWorker, question);
  const write = async (cells: LogCells) => {
    if (!(await add(cells))) return;
    const undo = { label: texts.undo, run: () => void remove(cells) };
    tell(texts.written(cells.station ?? texts.unknown), { key: 'logged', of: id, action: undo });
  };
  const erase = async (cells: LogCells) => {
    await remove(cells);
    const undo = { label: texts.undo, run: () => void add(cells) };
    tell(texts.erased(cells.station ?? texts.unknown), { key: 'logged', of: id, action: undo });
  };
  const open = async (chosen: File) => {
    setFileProblems([]);
    const found = await textOfFile(chosen);
    if (found.text === undefined) {
      tell(texts.notRead(chosen.name), { key: 'log-file', of: id, stays: true });
      return;
    }
    setFile({ of: id, text: found.text });
  };
  const joined = answer?.added !== undefined && answer.added === added ? answer : undefined;
  // The worker has read both. Once they are joined the file is done with: what is erased from then on stays erased.
  useEffect(() => {
    if (joined?.added === undefined || joining.current !== undefined) return;
    joining.current = joined.added;
    setFileProblems(joined.addedProblems);
    void join(joined.added, joined.before, joined.log).finally(() => {
      joining.current = undefined;
      setFile((now) => (now === file ? undefined : now));
    });
  }, [joined]);
  // One that cannot be joined is put away.
  useEffect(() => {
    if (error === '' || added === undefined) return;
    tell(error, { key: 'log-file', of: id, stays: true });
    setFile(undefined);
  }, [error]);
  const problems = [...fileProblems, ...(answer?.beside.problems ?? [])];
  return (
    <section class="log" aria-label={texts.label}>
      <QuickEntry set={set} onWrite={(cells) => void write(cells)} />
      <div class="log-beside">
        {error && (
          <p class="problem" role="alert">
            {error}
          </p>
        )}
        {problems.length > 0 && (
          <ul class="sentences log-problems">
            {problems.map((problem) => (
              <li key={`${problem.row} ${problem.column} ${problem.fact.code}`}>{logProblemText(problem)}</li>
            ))}
          </ul>
        )}
        {answer ? (
          <PredictedBeside beside={answer.beside} count={answer.count} />
        ) : (
          <p class="quiet">{texts.working}</p>
        )}
        {answer && answer.count > 0 && (
          <>
            <HeardWhen stations={answer.beside.stations} columns={answer.columns} nights={answer.nights} />
            {set.place.position && (
              <HeardWhere
                set={set}
                stations={answer.beside.stations}
                columns={answer.columns}
                position={set.place.position}
              />
            )}
          </>
        )}
        <LogEntries
          latest={answer?.latest ?? []}
          count={answer?.count ?? 0}
          onMore={(more) => setMost(most + more)}
          onErase={(cells) => void erase(cells)}
        />
        <p class="buttons">
          <button
            type="button"
            disabled={log === ''}
            onClick={() => download(`${fileStem(set.name, 'set')}-log.csv`, log, 'text/csv')}
          >
            {texts.save}
          </button>
          <button type="button" onClick={() => picker.current?.click()}>
            {texts.open}
          </button>
        </p>
        <FilePicker
          picker={picker}
          accept=".csv,.tsv,.txt,text/csv"
          label={texts.picker}
          onFile={(chosen) => void open(chosen)}
        />
      </div>
    </section>
  );
}
