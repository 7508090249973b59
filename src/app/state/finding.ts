import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { FindProgress, FindQuestion, Lack, TimeOfDay } from '../../engine/index.ts';
import { widgetWords } from '../../outputs/words/index.ts';
import type { FindOrder, FindReport, ShownSet } from '../workers/find.worker.ts';

type Rest = Extract<FindReport, { readonly about: 'done' }>['rest'];

/** A search and what it has found. */
export interface Finding {
  readonly question: FindQuestion;
  /** All that the answer depends on, to tell whether it is still of what is on the page. */
  readonly key: string;
  readonly state: 'searching' | 'stopped' | 'done';
  readonly progress: FindProgress;
  readonly sets: readonly ShownSet[];
  /** With the end of the search. */
  readonly rest?: Rest;
  readonly lacks: readonly Lack[];
  readonly error: string;
}

const now = signal<Finding | undefined>(undefined);
const chosenName = signal<string | undefined>(undefined);
let worker: Worker | undefined;

/** The latest search; it goes on while another view is open. */
export const finding: ReadonlySignal<Finding | undefined> = now;

/** The set whose figures are open: the first until another is chosen. */
export const chosenFound = computed<ShownSet | undefined>(() => {
  const sets = now.value?.sets ?? [];
  return sets.find(({ name }) => name === chosenName.value) ?? sets[0];
});

export const chooseFound = (name: string): void => {
  chosenName.value = name;
};

const change = (more: Partial<Finding>): void => {
  if (now.peek()) now.value = { ...now.peek()!, ...more };
};

/** One thread is left for the page where there are several. */
const MOST_THREADS = 8;
const threads = (): number => Math.min(MOST_THREADS, Math.max(1, (navigator.hardwareConcurrency ?? 2) - 1));

/** What an answer depends on. */
export const findingKey = (question: FindQuestion, time: TimeOfDay): string =>
  JSON.stringify([question.written, question.at, time]);

/** Begins a search in place of the one before. @param start makes its worker */
export function startFinding(question: FindQuestion, time: TimeOfDay, start: () => Worker): void {
  worker?.terminate();
  const own = start();
  worker = own;
  batch(() => {
    chosenName.value = undefined;
    now.value = {
      question,
      key: findingKey(question, time),
      state: 'searching',
      progress: { phase: 'estimate', share: 0 },
      sets: [],
      lacks: [],
      error: '',
    };
  });
  own.onmessage = ({ data }: MessageEvent<FindReport>) => hear(data);
  own.onerror = ({ message }) => hear({ about: 'failed', error: message || widgetWords.workerStopped });
  order({ about: 'search', question, time, threads: threads() });
}

const order = (what: FindOrder): void => worker?.postMessage(what);

export function stopFinding(): void {
  order({ about: 'stop' });
  change({ state: 'stopped' });
}

export function goOnFinding(): void {
  order({ about: 'resume' });
  change({ state: 'searching' });
}

function hear(report: FindReport): void {
  if (report.about === 'progress') change({ progress: report.progress });
  else if (report.about === 'found') change({ sets: report.sets });
  else {
    end();
    change({ state: 'done', ...endingOf(report) });
  }
}

function endingOf(report: Exclude<FindReport, { readonly about: 'progress' | 'found' }>): Partial<Finding> {
  switch (report.about) {
    case 'lacks':
      return { lacks: report.lacks };
    case 'failed':
      return { error: report.error };
    case 'done':
      return { sets: report.sets, rest: report.rest };
  }
}

function end(): void {
  worker?.terminate();
  worker = undefined;
}
