// First, for it starts workers of its own; in the page of one file it has the policy of the page.
import '../state/trusted.ts';
import {
  type FindAnswer,
  type FindProgress,
  type FoundSet,
  findSets,
  type Lack,
  lacksOf,
  type Use,
  usesOf,
  type WrittenDescription,
} from '../../engine/index.ts';
import { errorText, foundNames } from '../../outputs/words/index.ts';
import type { TaskBeginning } from './find-task.worker.ts';
import { type TaskPool, taskPool } from './task-pool.ts';

/** A search to begin, or to stop, or to go on with. */
export type FindOrder =
  | (TaskBeginning & { readonly about: 'search'; readonly threads: number })
  | { readonly about: 'stop' | 'resume' };

/** A found set as it is sent. */
export interface ShownSet extends Omit<FoundSet, 'describe'> {
  readonly name: string;
  readonly description: WrittenDescription;
  readonly uses: readonly Use[];
}

/** What a search tells while it goes on, and at its end. */
export type FindReport =
  | { readonly about: 'lacks'; readonly lacks: readonly Lack[] }
  | { readonly about: 'progress'; readonly progress: FindProgress }
  | { readonly about: 'found'; readonly sets: readonly ShownSet[] }
  | {
      readonly about: 'done';
      readonly sets: readonly ShownSet[];
      readonly rest: Omit<FindAnswer, 'sets'>;
    }
  | { readonly about: 'failed'; readonly error: string };

const tell = (report: FindReport): void => postMessage(report);

/** While the search is stopped: ends when it goes on. */
let gate: Promise<void> | undefined;
let open = (): void => {};

async function search({ question, time, threads }: Extract<FindOrder, { readonly about: 'search' }>): Promise<void> {
  const { box, read } = question;
  const lacks = lacksOf(box, read);
  if (lacks.length > 0) {
    tell({ about: 'lacks', lacks });
    return;
  }
  const pool: TaskPool = taskPool(threads, { question, time });
  const shown = (sets: readonly FoundSet[]): ShownSet[] => {
    const names = foundNames(box, sets);
    return sets.map(({ describe, ...set }, i) => ({
      ...set,
      name: names[i],
      description: describe(names[i]),
      uses: usesOf(box, set.choice),
    }));
  };
  const { sets, ...rest } = await findSets(question, {
    threads: pool.size,
    async work(task) {
      // A task may wait for more than one stop.
      while (gate) await gate;
      return pool.work(task);
    },
    progress: (progress) => tell({ about: 'progress', progress }),
    found: (some) => tell({ about: 'found', sets: shown(some) }),
  });
  tell({ about: 'done', sets: shown(sets), rest });
}

// A thin shell about the engine's search, with workers of its own for the tasks.
addEventListener('message', ({ data }: MessageEvent<FindOrder>) => {
  switch (data.about) {
    case 'stop':
      gate ??= new Promise((resolve) => {
        open = () => {
          gate = undefined;
          resolve();
        };
      });
      return;
    case 'resume':
      open();
      return;
    case 'search':
      search(data).catch((error: unknown) => tell({ about: 'failed', error: errorText(error) }));
  }
});
