import { widgetWords } from '../../outputs/words/index.ts';

/** What a worker may be asked, one question at a time; a newer question takes the place of one still waiting. */
export interface Latest<Question> {
  readonly ask: (question: Question) => void;
  /** Nothing is heard any more, nor asked. */
  readonly close: () => void;
}

export type Reply<Answer> = { readonly answer: Answer } | { readonly error: string };

/** Told before the reply, as often as a worker likes: 0…1. */
export interface Progress {
  readonly progress: number;
}

/** Is called with each question that was answered, in order. */
export type OnReply<Question, Answer> = (question: Question, reply: Reply<Answer>) => void;

/** As much of a worker as is needed here. */
export type Asked = Pick<Worker, 'postMessage'> & {
  onmessage: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

interface Asker<Question, Answer> {
  readonly heard: OnReply<Question, Answer>;
  readonly onProgress?: (share: number) => void;
  waiting?: { readonly question: Question };
}

/**
 * One worker for several that ask. Each has a place in the queue with one question, its latest, and hears the answers to
 * its own questions alone.
 * @param worker answers each message with one `Reply`; before it there may be any number of `Progress`.
 * @returns what gives each asker its `Latest`.
 */
export function shareWorker<Question, Answer>(
  worker: Asked,
): (heard: OnReply<Question, Answer>, onProgress?: (share: number) => void) => Latest<Question> {
  const queue = new Set<Asker<Question, Answer>>();
  const open = new Set<Asker<Question, Answer>>();
  let asked: { readonly by: Asker<Question, Answer>; readonly question: Question } | undefined;
  const send = () => {
    const [by] = queue;
    if (asked !== undefined || !by?.waiting) return;
    queue.delete(by);
    asked = { by, question: by.waiting.question };
    by.waiting = undefined;
    worker.postMessage(asked.question);
  };
  const finish = (reply: Reply<Answer>) => {
    const done = asked;
    asked = undefined;
    send();
    if (done && open.has(done.by)) done.by.heard(done.question, reply);
  };
  worker.onmessage = ({ data }: MessageEvent<Reply<Answer> | Progress>) => {
    if (!('progress' in data)) finish(data);
    else if (asked && open.has(asked.by)) asked.by.onProgress?.(data.progress);
  };
  worker.onerror = (event) => finish({ error: event.message || widgetWords.workerStopped });
  return (heard, onProgress) => {
    const own: Asker<Question, Answer> = { heard, onProgress };
    open.add(own);
    return {
      ask(question) {
        if (!open.has(own)) return;
        own.waiting = { question };
        queue.add(own);
        send();
      },
      close() {
        open.delete(own);
        queue.delete(own);
      },
    };
  };
}

/** A worker with one that asks. @param worker as of `shareWorker`. */
export const latestWins = <Question, Answer>(
  worker: Asked,
  heard: OnReply<Question, Answer>,
  onProgress?: (share: number) => void,
): Latest<Question> => shareWorker<Question, Answer>(worker)(heard, onProgress);
