import { computed, effect, signal } from '@preact/signals';
import type { SetDescription } from '../../engine/set/description.ts';
import { type Problem, readValue } from '../../engine/set/read.ts';
import { written } from './document.ts';

const reading = computed(() => readValue(written.value));

// Always the same nothing, so that nothing is drawn again while nothing is wrong.
const NONE: readonly never[] = [];

/** Everything wrong with the description as it stands. */
export const problems = computed<readonly Problem[]>(() => (reading.value.ok ? NONE : reading.value.problems));
/** Not wrong, but worth a look. */
export const notes = computed<readonly string[]>(() =>
  reading.value.ok && reading.value.notes.length > 0 ? reading.value.notes : NONE,
);

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
  const result = reading.value;
  if (result.ok) understood.value = { set: result.set, written: written.peek() };
});

/** True while the figures are of an earlier, faultless state. */
export const isBehind = computed(() => problems.value.length > 0);
