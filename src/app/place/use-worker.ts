import { useCallback, useEffect, useRef } from 'preact/hooks';
import { type Latest, latestWins, type Reply } from '../workers/latest.ts';

/**
 * A place worker as long as the component is there; a newer question takes the place of one still waiting.
 * @param heard is called with each answered question; the latest function given is used.
 */
export function usePlaceWorker<Question, Answer>(
  name: string,
  heard: (question: Question, reply: Reply<Answer>) => void,
): (question: Question) => void {
  const line = useRef<Latest<Question> | undefined>(undefined);
  const worker = useRef<Worker | undefined>(undefined);
  const latest = useRef(heard);
  latest.current = heard;
  useEffect(
    () => () => {
      worker.current?.terminate();
      worker.current = undefined;
      line.current = undefined;
    },
    [],
  );
  return useCallback(
    (question) => {
      if (!line.current) {
        worker.current = new Worker(new URL('../workers/place.worker.ts', import.meta.url), { type: 'module', name });
        line.current = latestWins<Question, Answer>(worker.current, (asked, reply) => latest.current(asked, reply));
      }
      line.current.ask(question);
    },
    [name],
  );
}
