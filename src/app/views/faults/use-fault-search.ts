import { useEffect, useMemo, useState } from 'preact/hooks';
import type { SetDescription } from '../../../engine/index.ts';
import type { When } from '../../description/when.ts';
import { useWorker } from '../../workers/use-worker.ts';
import type { FaultAnswer, FaultQuestion } from './faults.worker.ts';

/** Cases of each fault: few for an answer at once, then enough for probabilities to hold. */
const FIRST = 2;
const FULL = 32;

const newFaultsWorker = (): Worker =>
  new Worker(new URL('./faults.worker.ts', import.meta.url), { type: 'module', name: 'faults' });

interface Heard {
  readonly of?: FaultQuestion;
  readonly answer?: FaultAnswer;
  readonly error: string;
}

/** A worker that keeps its model of the set, and its answer to the newest question it has come to. */
function useModel(question: FaultQuestion): Heard & { readonly progress: number } {
  const [heard, setHeard] = useState<Heard>({ error: '' });
  const [progress, setProgress] = useState(0);
  const ask = useWorker<FaultQuestion, FaultAnswer>(
    newFaultsWorker,
    (of, reply) =>
      setHeard((before) =>
        'answer' in reply ? { of, answer: reply.answer, error: '' } : { of, answer: before.answer, error: reply.error },
      ),
    setProgress,
  );
  useEffect(() => ask(question), [ask, question]);
  return { ...heard, progress };
}

/** What follows from the answers so far: first from few cases, a few seconds later from all. */
export interface FaultSearching {
  readonly answer?: FaultAnswer;
  /** The answer is to these observations, and from all cases. */
  readonly isFinal: boolean;
  /** Of planting all faults in this set, 0…1. */
  readonly progress: number;
  readonly error: string;
}

/** Causes and next check of a set, worked out beside the page. */
export function useFaultSearch(
  set: SetDescription,
  time: When,
  answers: Readonly<Record<string, string>>,
): FaultSearching {
  const first = useMemo((): FaultQuestion => ({ set, time, answers, cases: FIRST }), [set, time, answers]);
  const full = useMemo((): FaultQuestion => ({ set, time, answers, cases: FULL }), [set, time, answers]);
  const quick = useModel(first);
  const fine = useModel(full);
  const isFinal = fine.of === full;
  const best = isFinal || (quick.of !== first && fine.answer) ? fine : quick;
  return { answer: best.answer, isFinal, progress: fine.progress, error: best.error };
}
