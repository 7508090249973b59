import type { Reading } from '../description/stand-ins.ts';
import { latestWins } from '../workers/latest.ts';
import type { ReadingQuestion } from '../workers/reading.ts';

/** Reads descriptions beside the page, so that no long one ever holds the page up. */
export const newReadingWorker = (): Worker =>
  new Worker(new URL('../workers/reading.worker.ts', import.meta.url), { type: 'module', name: 'reading' });

/** One description read so. @returns undefined where the worker failed */
export const readBeside = (question: ReadingQuestion): Promise<Reading | undefined> =>
  new Promise((resolve) => {
    const worker = newReadingWorker();
    latestWins<ReadingQuestion, Reading>(worker, (_question, reply) => {
      worker.terminate();
      resolve('answer' in reply ? reply.answer : undefined);
    }).ask(question);
  });
