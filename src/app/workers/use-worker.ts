import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { type Latest, latestWins, type Reply } from './latest.ts';

/**
 * A worker from the first question on and for as long as the component is there; a newer question takes the place of
 * one still waiting.
 * @param make starts it: the address must stand where it is made for the bundler to find it.
 * @param heard is called with each answered question; the latest function given is used.
 * @param onProgress is told how much of the question is worked out, by workers that say so.
 */
export function useWorker<Question, Answer>(
  make: () => Worker,
  heard: (question: Question, reply: Reply<Answer>) => void,
  onProgress?: (share: number) => void,
): (question: Question) => void {
  const line = useRef<Latest<Question> | undefined>(undefined);
  const worker = useRef<Worker | undefined>(undefined);
  const latest = useRef({ make, heard, onProgress });
  latest.current = { make, heard, onProgress };
  useEffect(
    () => () => {
      worker.current?.terminate();
      worker.current = undefined;
      line.current = undefined;
    },
    [],
  );
  return useCallback((question) => {
    if (!line.current) {
      worker.current = latest.current.make();
      line.current = latestWins<Question, Answer>(
        worker.current,
        (asked, reply) => latest.current.heard(asked, reply),
        (share) => latest.current.onProgress?.(share),
      );
    }
    line.current.ask(question);
  }, []);
}

interface Heard<Question, Answer> {
  /** The last there was: beside an error, or while `isCurrent` is false, of an earlier question. */
  readonly answer?: Answer;
  readonly error: string;
  /** The question last answered, also by an error. */
  readonly of?: Question;
}

/**
 * A worker's answer to a question, the one before it for as long as it takes.
 * @param question the same object while the question is the same; undefined while nothing is asked.
 */
export function useAnswer<Question, Answer>(
  make: () => Worker,
  question: Question | undefined,
): Heard<Question, Answer> & { readonly isCurrent: boolean } {
  const [heard, setHeard] = useState<Heard<Question, Answer>>({ error: '' });
  const ask = useWorker<Question, Answer>(make, (of, reply) =>
    setHeard((before) =>
      'answer' in reply ? { answer: reply.answer, error: '', of } : { answer: before.answer, error: reply.error, of },
    ),
  );
  useEffect(() => {
    if (question !== undefined) ask(question);
  }, [ask, question]);
  return { ...heard, isCurrent: heard.of === question };
}
