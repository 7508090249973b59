import { useMemo, useState } from 'preact/hooks';
import type { Reception, SetDescription } from '../../../engine/index.ts';
import {
  type PaperName,
  pageSvg,
  SHEET_IDS,
  SHEET_JOBS,
  type Sheet,
  type SheetJob,
} from '../../../outputs/sheets/index.ts';
import { errorText, sheetsView as texts } from '../../../outputs/words/index.ts';
import { fileStem } from '../../state/download.ts';
import { DrawnSvg } from '../../widgets/DrawnSvg.tsx';
import { useAnswer } from '../../workers/use-worker.ts';
import { PaperChoice } from './PaperChoice.tsx';
import { savePdf, saveSvg } from './save-sheets.ts';
import type { SheetsAnswer, SheetsQuestion } from './sheets-question.ts';
import { usePrint } from './use-print.ts';
import { WholeSetView } from './WholeSetView.tsx';
import './sheets.css';

interface Props {
  /** The description as written, for the sheet that carries it. */
  readonly written: unknown;
  readonly set: SetDescription;
  readonly reception: Reception;
}

const newSheetsWorker = () =>
  new Worker(new URL('./sheets.worker.ts', import.meta.url), { type: 'module', name: 'sheets' });

/** Its file is named like it. Planting every fault takes about as long as all other sheets together: a worker of its own draws that sheet. */
const SLOW = ['faults'] as const;
const OTHERS = SHEET_IDS.filter((id) => id !== 'faults');

const JOBS = Object.keys(SHEET_JOBS) as SheetJob[];

/** In a bound book. */
const placeOf = ({ id }: Sheet): number => (SHEET_IDS as readonly string[]).indexOf(id);

/** What can be printed of the set: each sheet to look at, and a PDF of those chosen. */
export function Sheets({ written, set, reception }: Props) {
  const [paper, setPaper] = useState<PaperName>('a4');
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [shown, setShown] = useState('');
  const [pageAt, setPageAt] = useState(0);
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState('');

  const question = useMemo(
    (): SheetsQuestion => ({ written, set, reception, paper, only: OTHERS }),
    [written, set, reception, paper],
  );
  const slowQuestion = useMemo((): SheetsQuestion => ({ ...question, only: SLOW }), [question]);
  const made = useAnswer<SheetsQuestion, SheetsAnswer>(newSheetsWorker, question);
  const slow = useAnswer<SheetsQuestion, SheetsAnswer>(newSheetsWorker, slowQuestion);
  const failure = made.isCurrent ? made.error : '';
  /** What is shown is this set on this paper; until then it may be looked at, not saved or printed. */
  const isReady = made.isCurrent && failure === '' && (slow.isCurrent || SLOW.every((id) => left.has(id)));
  const shownAnswer = failure === '' ? made.answer : undefined;
  // One of another set or paper must not be bound with the others.
  const slowAnswer = slow.isCurrent && slow.error === '' ? slow.answer : undefined;
  const sheets = useMemo(
    () => [...(shownAnswer?.sheets ?? []), ...(slowAnswer?.sheets ?? [])].sort((a, b) => placeOf(a) - placeOf(b)),
    [shownAnswer, slowAnswer],
  );
  const sheet = sheets.find((s) => s.file === shown) ?? sheets[0];
  const page = sheet?.pages[Math.min(pageAt, sheet.pages.length - 1)];
  const picture = useMemo(() => (page ? pageSvg(page) : ''), [page]);
  const chosen = sheets.filter((s) => !left.has(s.file));
  const pages = chosen.flatMap((s) => s.pages);
  const notPrinted = failure ? texts.notDrawn(failure) : isReady ? texts.noneChosen : texts.notYetDrawn;
  usePrint(isReady ? pages : [], notPrinted, isReady || failure !== '');

  async function save(): Promise<void> {
    if (!isReady || busy || chosen.length === 0) return;
    setBusy(true);
    setFailed('');
    try {
      await savePdf(chosen, texts.pdfTitle(set.name), `${fileStem(set.name, 'set')}-sheets.pdf`);
    } catch (error) {
      setFailed(texts.notSaved(errorText(error)));
    } finally {
      setBusy(false);
    }
  }

  if (!made.answer && !failed && failure === '') return <p role="status">{texts.drawing}</p>;
  const slowFailure = slow.isCurrent ? slow.error : '';
  const problem = failure || slowFailure;
  const statusText = failed || (problem && texts.notDrawn(problem)) || (isReady ? '' : texts.drawing);
  return (
    <section class="sheets" aria-label={texts.label}>
      <div class="sheets-choice">
        <PaperChoice paper={paper} onPaper={setPaper} />
        <fieldset class="sheets-jobs">
          <legend>{texts.job}</legend>
          {JOBS.map((job) => (
            <button
              key={job}
              type="button"
              aria-pressed={
                sheets.length > 0 && sheets.every((s) => left.has(s.file) !== SHEET_JOBS[job].includes(s.id))
              }
              onClick={() =>
                setLeft(
                  new Set([
                    ...sheets.flatMap((s) => (SHEET_JOBS[job].includes(s.id) ? [] : [s.file])),
                    // It may not be drawn yet.
                    ...SLOW.filter((id) => !SHEET_JOBS[job].includes(id)),
                  ]),
                )
              }
            >
              {texts.jobs[job]}
            </button>
          ))}
        </fieldset>
        <ul class="sheets-list">
          {sheets.map((s) => (
            <li key={s.file}>
              <input
                type="checkbox"
                checked={!left.has(s.file)}
                aria-label={texts.print(s.title)}
                onChange={() => {
                  const next = new Set(left);
                  if (!next.delete(s.file)) next.add(s.file);
                  setLeft(next);
                }}
              />
              <button
                type="button"
                aria-pressed={s === sheet}
                onClick={() => {
                  setShown(s.file);
                  setPageAt(0);
                }}
              >
                {texts.title({ title: s.title, pages: s.pages.length })}
              </button>
            </li>
          ))}
        </ul>
        <button
          type="button"
          class="primary"
          disabled={!isReady || busy || chosen.length === 0}
          onClick={() => void save()}
        >
          {busy ? texts.saving : texts.save(pages.length)}
        </button>
        {page && (
          <button type="button" disabled={!isReady} onClick={() => saveSvg(page, sheet.file)}>
            {texts.saveSvg}
          </button>
        )}
        <p>{texts.printHint}</p>
        <p role="status">{statusText}</p>
      </div>
      <div class="sheets-shown" aria-busy={!made.isCurrent}>
        {shownAnswer?.board && <WholeSetView board={shownAnswer.board} />}
        {page && (
          <figure class="sheets-page">
            {sheet.pages.length > 1 && (
              <p class="sheets-turn">
                <button type="button" disabled={pageAt <= 0} onClick={() => setPageAt(pageAt - 1)}>
                  {texts.before}
                </button>{' '}
                {texts.pageOf(Math.min(pageAt + 1, sheet.pages.length), sheet.pages.length)}{' '}
                <button type="button" disabled={pageAt >= sheet.pages.length - 1} onClick={() => setPageAt(pageAt + 1)}>
                  {texts.next}
                </button>
              </p>
            )}
            <DrawnSvg class="sheets-paper" svg={picture} />
          </figure>
        )}
      </div>
    </section>
  );
}
