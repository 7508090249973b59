import { type FindQuestion, type FindTask, findWorker, type TaskAnswer, type TimeOfDay } from '../../engine/index.ts';
import { coastFor } from './coast.ts';
import type { Reply } from './latest.ts';

/** What a worker of a search begins with. */
export interface TaskBeginning {
  readonly question: FindQuestion;
  readonly time: TimeOfDay;
}

let work: Promise<(task: FindTask) => TaskAnswer> | undefined;

const begin = async ({ question, time }: TaskBeginning) =>
  findWorker(question, { time, coast: await coastFor(question.read.place) });

// A thin shell: the engine does each task, this hands its answer back.
addEventListener('message', async ({ data }: MessageEvent<TaskBeginning | FindTask>) => {
  if ('question' in data) {
    work = begin(data);
    return;
  }
  let reply: Reply<TaskAnswer>;
  try {
    reply = { answer: (await work!)(data) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
