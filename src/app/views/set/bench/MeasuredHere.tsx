import { type ComponentChildren, createContext } from 'preact';
import { useContext, useId } from 'preact/hooks';
import { isMeasured, type MeasuredFigure, type Path, type SetDescription } from '../../../../engine/index.ts';
import { measureView as texts } from '../../../../outputs/words/index.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { MeasuredFigures } from '../../../widgets/MeasuredFigures.tsx';
import { useAnswer } from '../../../workers/use-worker.ts';

const Measured = createContext<readonly MeasuredFigure[]>([]);

const newWorker = (): Worker =>
  new Worker(new URL('./measured.worker.ts', import.meta.url), { type: 'module', name: 'measured' });

/** Works out once for all panels inside what of the set is measured; asks nothing of a set that is not. */
export function MeasuredOfSet({ children }: { readonly children: ComponentChildren }) {
  const set = useOpenSet().receptionSet.value;
  const asked = set && isMeasured(set) ? set : undefined;
  const { answer } = useAnswer<SetDescription, readonly MeasuredFigure[]>(newWorker, asked);
  return <Measured.Provider value={(asked && answer) ?? []}>{children}</Measured.Provider>;
}

/** Figures of one part whose measured value wins, in the panel of that part. */
export function MeasuredHere({ part }: { readonly part: Path }) {
  const measured = useContext(Measured).filter(({ path }) => part.every((key, i) => path[i] === key));
  const id = useId();
  if (measured.length === 0) return null;
  return (
    <section class="measured-here" aria-labelledby={id}>
      <h4 id={id}>{texts.wins}</h4>
      <MeasuredFigures measured={measured} whenNone={() => document.getElementById('workbench')} />
    </section>
  );
}
