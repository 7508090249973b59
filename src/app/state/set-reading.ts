import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Problem, SetDescription } from '../../engine/index.ts';
import { readNote } from '../../outputs/words/index.ts';
import { isLong } from '../description/long.ts';
import { type Reading, readingAsSent, readWithStandIns, type StandIn } from '../description/stand-ins.ts';
import type { Latest } from '../workers/latest.ts';
import type { Document } from './document.ts';
import type { SetWorkers } from './set-workers.ts';

export interface ValidSet {
  readonly set: SetDescription;
  /** What it was read from: the last good values where fields are refused. */
  readonly written: unknown;
}

/** The description of one set as read. */
export interface SetReading {
  /** The description that will be on the page next is read already: it is not read again. */
  readonly remember: (description: unknown, read?: Reading) => void;
  /** Everything wrong with the description as it stands. */
  readonly problems: ReadonlySignal<readonly Problem[]>;
  readonly problemsAt: (path: string) => readonly Problem[];
  /** Not wrong, but worth a look. */
  readonly notes: ReadonlySignal<readonly string[]>;
  /** The last valid set: what every figure on the page is of. Where a field is refused its last good value stands in. */
  readonly lastValidSet: ReadonlySignal<ValidSet | undefined>;
  /** What stands in for fields that are refused, in the last valid set. */
  readonly standIns: ReadonlySignal<readonly StandIn[]>;
  /** True while so much is wrong that the figures are of an earlier, faultless state. */
  readonly isBehind: ReadonlySignal<boolean>;
}

// Always the same nothing, so that nothing is drawn again while nothing is wrong.
const NONE: readonly never[] = [];

/** Of short descriptions; a long one counts as another whenever it is another object. */
const isSame = (a: unknown, b: unknown): boolean =>
  a === b || (!isLong(a) && !isLong(b) && JSON.stringify(a) === JSON.stringify(b));

/** @param read the description as read, where it is */
export function createSetReading(
  { written }: Pick<Document, 'written'>,
  { askReading }: Pick<SetWorkers, 'askReading'>,
  read?: Reading,
): SetReading & { readonly dispose: () => void } {
  /** The latest reading; of a long description it may be behind by what was just changed. */
  const reading = signal(read ?? readWithStandIns(written.peek()));
  const lastValidSet = signal<ValidSet | undefined>(undefined);
  /** What was good before stands in for what is refused now. */
  const readNow = (description: unknown): Reading => readWithStandIns(description, lastValidSet.peek()?.written);
  /** Read before it is on the page. */
  let readAhead: Reading | undefined;
  let reader: Latest<{ readonly value: unknown; readonly lastGood?: unknown }> | undefined;
  /** The description on the page while a worker still reads it. */
  let awaited: unknown;

  /** A worker reads it; until it answers, the reading before stands. */
  function readLater(description: unknown): void {
    awaited = description;
    reader ??= askReading(({ value }, reply) => {
      if (awaited === undefined) return;
      if (value === awaited) awaited = undefined;
      reading.value = 'answer' in reply ? readingAsSent(reply.answer, value) : readNow(value);
    });
    reader.ask({ value: description, lastGood: lastValidSet.peek()?.written });
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
  const standIns = computed<readonly StandIn[]>(() => reading.value.usable?.standIns ?? NONE);
  const stopFollowing = effect(() => {
    const { usable } = reading.value;
    if (!usable) return;
    // The same stand-in for whatever else is typed in its field: the figures need not be made anew.
    if (isSame(usable.written, lastValidSet.peek()?.written)) return;
    lastValidSet.value = { set: usable.set, written: usable.written };
  });

  return {
    remember(description, read = readNow(description)) {
      readAhead = read;
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
    lastValidSet,
    standIns,
    isBehind: computed(() => problems.value.length > 0 && !reading.value.usable),
    dispose() {
      stopReading();
      stopFollowing();
      reader?.close();
    },
  };
}
