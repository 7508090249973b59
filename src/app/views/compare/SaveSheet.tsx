import { useState } from 'preact/hooks';
import type { ComparedSets, ResonanceCurve } from '../../../engine/index.ts';
import type { PaperName, Sheet } from '../../../outputs/sheets/index.ts';
import { compareView, errorText } from '../../../outputs/words/index.ts';
import { useWorker } from '../../workers/use-worker.ts';
import { PaperChoice } from '../sheets/PaperChoice.tsx';
import { savePdf } from '../sheets/save-sheets.ts';
import type { SheetQuestion } from './sheet.worker.ts';

const newSheetWorker = (): Worker =>
  new Worker(new URL('./sheet.worker.ts', import.meta.url), { type: 'module', name: 'comparison-sheet' });

const { sheet: texts } = compareView;

interface Props {
  readonly compared: ComparedSets;
  readonly curves: readonly (ResonanceCurve | undefined)[];
}

/** All of the comparison on one page, as a PDF. */
export function SaveSheet({ compared, curves }: Props) {
  const [paper, setPaper] = useState<PaperName>('a4');
  const [isWorking, setWorking] = useState(false);
  const [problem, setProblem] = useState('');
  const end = (reason: string) => {
    setWorking(false);
    setProblem(reason);
  };
  const ask = useWorker<SheetQuestion, Sheet>(newSheetWorker, (_question, reply) => {
    if ('error' in reply) {
      end(reply.error);
      return;
    }
    savePdf([reply.answer], texts.title, texts.file).then(
      () => end(''),
      (error: unknown) => end(errorText(error)),
    );
  });
  return (
    <div class="compare-sheet">
      <PaperChoice paper={paper} onPaper={setPaper} />
      <button
        type="button"
        disabled={isWorking}
        onClick={() => {
          setWorking(true);
          ask({ compared, curves, paper });
        }}
      >
        {isWorking ? texts.saving : texts.save}
      </button>
      {problem !== '' && (
        <p class="problem" role="alert">
          {texts.notSaved(problem)}
        </p>
      )}
    </div>
  );
}
