import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { type Problem, type ReadResult, readValue, type SetDescription } from '../../engine/index.ts';
import { readNote } from '../../outputs/words/index.ts';
import { isLong } from '../description/long.ts';
import type { Latest } from '../workers/latest.ts';
import type { Document } from './document.ts';
import type { SetWorkers } from './set-workers.ts';

export interface Understood {
  readonly set: SetDescription;
  readonly written: unknown;
}

/** The description of one set as read. */
export interface Understanding {
  /** The description that will be on the page next is read already: it is not read again. */
  readonly remember: (description: unknown, result?: ReadResult) => void;
  /** Everything wrong with the description as it stands. */
  readonly problems: ReadonlySignal<readonly Problem[]>;
  readonly problemsAt: (path: string) => readonly Problem[];
  /** Not wrong, but worth a look. */
  readonly notes: ReadonlySignal<readonly string[]>;
  /** The set as last understood: what every figure on the page is of. */
  readonly understood: ReadonlySignal<Understood | undefined>;
  /** True while the figures are of an earlier, faultless state. */
  readonly isBehind: ReadonlySignal<boolean>;
}

interface Reading {
  readonly written: unknown;
  readonly result: ReadResult;
}

const readNow = (description: unknown): Reading => ({ written: description, result: readValue(description) });

// Always the same nothing, so that nothing is drawn again while nothing is wrong.
const NONE: readonly never[] = [];

export function createUnderstanding(
  { written }: Pick<Document, 'written'>,
  { askReading }: Pick<SetWorkers, 'askReading'>,
): Understanding & { readonly dispose: () => void } {
  /** The latest reading; of a long description it may be behind by what was just changed. */
  const reading = signal(readNow(written.peek()));
  /** Read before it is on the page. */
  let readAhead: Reading | undefined;
  let reader: Latest<{ readonly value: unknown }> | undefined;
  /** The description on the page while a worker still reads it. */
  let awaited: unknown;

  /** A worker reads it; until it answers, the reading before stands. */
  function readLater(description: unknown): void {
    awaited = description;
    reader ??= askReading(({ value }, reply) => {
      if (awaited === undefined) return;
      if (value === awaited) awaited = undefined;
      reading.value = 'answer' in reply ? { written: value, result: reply.answer } : readNow(value);
    });
    reader.ask({ value: description });
  }

  const stopReading = effect(() => {
    const now = written.value;
    const before = readAhead;
    readAhead = undefined;
    awaited = undefined;
    if (before && before.written === now) reading.value = before;
    else if (now === reading.peek().written) return;
    else if (isLong(now)) readLater(now);
    else reading.value = readNow(now);
  });

  const problems = computed<readonly Problem[]>(() => {
    const { result } = reading.value;
    return result.ok ? NONE : result.problems;
  });
  const understood = signal<Understood | undefined>(undefined);
  const stopUnderstanding = effect(() => {
    const { result, written } = reading.value;
    if (result.ok) understood.value = { set: result.set, written };
  });

  return {
    remember(description, result = readValue(description)) {
      readAhead = { written: description, result };
    },
    problems,
    problemsAt(path) {
      const here = problems.value.filter((problem) => problem.path === path);
      return here.length > 0 ? here : NONE;
    },
    notes: computed<readonly string[]>(() => {
      const { result } = reading.value;
      return result.ok && result.notes.length > 0 ? result.notes.map(readNote) : NONE;
    }),
    understood,
    isBehind: computed(() => problems.value.length > 0),
    dispose() {
      stopReading();
      stopUnderstanding();
      reader?.close();
    },
  };
}
