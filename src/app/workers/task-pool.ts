import type { FindTask, TaskAnswer } from '../../engine/index.ts';
import { widgetWords } from '../../outputs/words/index.ts';
import type { TaskBeginning } from './find-task.worker.ts';
import type { Reply } from './latest.ts';

/** Workers that do the tasks of a search. */
export interface TaskPool {
  readonly size: number;
  readonly work: (task: FindTask) => Promise<TaskAnswer>;
}

/** @param size workers; no more tasks are to be at work at once than that */
export function taskPool(size: number, beginning: TaskBeginning): TaskPool {
  const free = Array.from({ length: size }, () => {
    const worker = new Worker(new URL('./find-task.worker.ts', import.meta.url), { type: 'module', name: 'find-task' });
    worker.postMessage(beginning);
    return worker;
  });
  return {
    size,
    work(task) {
      const worker = free.pop()!;
      return new Promise((resolve, reject) => {
        worker.onmessage = ({ data }: MessageEvent<Reply<TaskAnswer>>) => {
          free.push(worker);
          if ('answer' in data) resolve(data.answer);
          else reject(new Error(data.error));
        };
        worker.onerror = ({ message }) => {
          free.push(worker);
          reject(new Error(message || widgetWords.workerStopped));
        };
        worker.postMessage(task);
      });
    },
  };
}
