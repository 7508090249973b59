import { widgetWords } from '../../outputs/words/index.ts';
import type { Reply } from './latest.ts';

/** One question to a worker of its own, which ends with the answer. @throws Error with what went wrong there */
export function askOnce<Question, Answer>(worker: Worker, question: Question): Promise<Answer> {
  return new Promise<Answer>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Reply<Answer>>) => {
      if ('error' in data) reject(new Error(data.error));
      else resolve(data.answer);
    };
    worker.onerror = ({ message }) => reject(new Error(message || widgetWords.workerStopped));
    worker.postMessage(question);
  }).finally(() => worker.terminate());
}
