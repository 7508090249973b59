import type { Reply } from '../../../workers/latest.ts';
import { useWorker } from '../../../workers/use-worker.ts';

/** A place worker as long as the component is there; see `useWorker`. */
export const usePlaceWorker = <Question, Answer>(
  name: string,
  heard: (question: Question, reply: Reply<Answer>) => void,
): ((question: Question) => void) =>
  useWorker<Question, Answer>(
    () => new Worker(new URL('../../../workers/place.worker.ts', import.meta.url), { type: 'module', name }),
    heard,
  );
