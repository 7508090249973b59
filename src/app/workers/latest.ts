import { widgetWords } from '../../outputs/words/index.ts';

/** What a worker may be asked, one question at a time; a newer question takes the place of one still waiting. */
export interface Latest<Question> {
  readonly ask: (question: Question) => void;
}

export type Reply<Answer> = { readonly answer: Answer } | { readonly error: string };

/**
 * @param worker answers each message with one `Reply`.
 * @param heard is called with each question that was answered, in order.
 */
export function latestWins<Question, Answer>(
  worker: Pick<Worker, 'postMessage'> & {
    onmessage: ((event: MessageEvent) => void) | null;
    onerror: ((event: ErrorEvent) => void) | null;
  },
  heard: (question: Question, reply: Reply<Answer>) => void,
): Latest<Question> {
  let asked: Question | undefined;
  let waiting: Question | undefined;
  const send = (question: Question) => {
    asked = question;
    worker.postMessage(question);
  };
  const finish = (reply: Reply<Answer>) => {
    const question = asked as Question;
    asked = undefined;
    const next = waiting;
    waiting = undefined;
    if (next !== undefined) send(next);
    if (question !== undefined) heard(question, reply);
  };
  worker.onmessage = (event) => finish(event.data as Reply<Answer>);
  worker.onerror = (event) => finish({ error: event.message || widgetWords.workerStopped });
  return {
    ask: (question) => {
      if (asked === undefined) send(question);
      else waiting = question;
    },
  };
}
