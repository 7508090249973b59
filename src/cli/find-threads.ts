import { Worker } from 'node:worker_threads';
import type { FindQuestion, FindTask, TaskAnswer, TimeOfDay } from '../engine/index.ts';

/** What every thread of a search begins with. */
export interface ThreadData {
  readonly question: FindQuestion;
  readonly time: TimeOfDay;
}

/** Threads that do the tasks of a search. */
export interface FindThreads {
  readonly work: (task: FindTask) => Promise<TaskAnswer>;
  readonly end: () => Promise<void>;
}

/**
 * MB of a thread: many times what a search keeps. With more allowed, as by default, what is done with is cleared so late that
 * a search of a large box takes half as much memory again, and is no faster.
 */
const MEMORY = { maxOldGenerationSizeMb: 1024, maxYoungGenerationSizeMb: 8 };

/** So many threads for a search; undefined for one, and where the command line is not compiled: then it works by itself. */
export function findThreads(data: ThreadData, threads: number): FindThreads | undefined {
  if (threads < 2 || !import.meta.url.endsWith('.js')) return undefined;
  const workers = Array.from(
    { length: threads },
    () => new Worker(new URL('./find-worker.js', import.meta.url), { workerData: data, resourceLimits: MEMORY }),
  );
  const free = [...workers];
  return {
    work(task) {
      // No more tasks are at work than there are threads.
      const worker = free.pop()!;
      return new Promise((resolve, reject) => {
        const settled = () => {
          worker.off('message', answered);
          worker.off('error', failed);
          free.push(worker);
        };
        const answered = (answer: TaskAnswer) => {
          settled();
          resolve(answer);
        };
        const failed = (error: unknown) => {
          settled();
          reject(error);
        };
        worker.on('message', answered);
        worker.on('error', failed);
        worker.postMessage(task);
      });
    },
    end: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
