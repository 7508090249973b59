import type { Reply } from '../../../workers/latest.ts';
import type { CardAnswers, CardQuestion } from './sound-card.worker.ts';

/** One question to a worker of its own. @throws Error with what went wrong there */
export function askOnce<K extends CardQuestion['about']>(
  question: Extract<CardQuestion, { readonly about: K }>,
): Promise<CardAnswers[K]> {
  const worker = new Worker(new URL('./sound-card.worker.ts', import.meta.url), { type: 'module', name: 'sound-card' });
  return new Promise<CardAnswers[K]>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Reply<CardAnswers[K]>>) => {
      if ('error' in data) reject(new Error(data.error));
      else resolve(data.answer);
    };
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage(question);
  }).finally(() => worker.terminate());
}
