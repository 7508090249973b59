import { computed, effect, signal } from '@preact/signals';
import { type Problem, type ReadResult, readValue, type SetDescription } from '../../engine/index.ts';
import { readNote } from '../../outputs/words/index.ts';
import { isLong } from '../description/long.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import { written } from './document.ts';
import { newReadingWorker } from './reading-worker.ts';

interface Reading {
  readonly written: unknown;
  readonly result: ReadResult;
}

const readNow = (description: unknown): Reading => ({ written: description, result: readValue(description) });

/** The latest reading; of a long description it may be behind by what was just changed. */
const reading = signal(readNow(written.peek()));
/** Read before it is on the page. */
let readAhead: Reading | undefined;

/** The description that will be on the page next is read already: it is not read again. */
export function remember(description: unknown, result: ReadResult = readValue(description)): void {
  readAhead = { written: description, result };
}

let reader: Latest<{ readonly value: unknown }> | undefined;
/** The description on the page while a worker still reads it. */
let awaited: unknown;

/** A worker reads it; until it answers, the reading before stands. */
function readLater(description: unknown): void {
  awaited = description;
  reader ??= latestWins<{ readonly value: unknown }, ReadResult>(newReadingWorker(), ({ value }, reply) => {
    if (awaited === undefined) return;
    if (value === awaited) awaited = undefined;
    reading.value = 'answer' in reply ? { written: value, result: reply.answer } : readNow(value);
  });
  reader.ask({ value: description });
}

effect(() => {
  const now = written.value;
  const before = readAhead;
  readAhead = undefined;
  awaited = undefined;
  if (before && before.written === now) reading.value = before;
  else if (now === reading.peek().written) return;
  else if (isLong(now)) readLater(now);
  else reading.value = readNow(now);
});

// Always the same nothing, so that nothing is drawn again while nothing is wrong.
const NONE: readonly never[] = [];

/** Everything wrong with the description as it stands. */
export const problems = computed<readonly Problem[]>(() => {
  const { result } = reading.value;
  return result.ok ? NONE : result.problems;
});
/** Not wrong, but worth a look. */
export const notes = computed<readonly string[]>(() => {
  const { result } = reading.value;
  return result.ok && result.notes.length > 0 ? result.notes.map(readNote) : NONE;
});

export function problemsAt(path: string): readonly Problem[] {
  const here = problems.value.filter((problem) => problem.path === path);
  return here.length > 0 ? here : NONE;
}

export interface Understood {
  readonly set: SetDescription;
  readonly written: unknown;
}

/** The set as last understood: what every figure on the page is of. */
export const understood = signal<Understood | undefined>(undefined);

effect(() => {
  const { result, written } = reading.value;
  if (result.ok) understood.value = { set: result.set, written };
});

/** True while the figures are of an earlier, faultless state. */
export const isBehind = computed(() => problems.value.length > 0);
