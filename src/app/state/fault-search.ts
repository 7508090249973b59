import type { Signal } from '@preact/signals';
import { forgetKept, type Keeps, keptTexts, keptWithSet } from './kept-with-set.ts';

/** Answers as typed, by the keys of their checks. */
type Answers = Readonly<Record<string, string>>;

/** What was observed of one set in the search for a fault; kept with the set. */
export interface SetFaults {
  readonly faultAnswers: Signal<Answers>;
}

const ANSWERS: Keeps<Answers> = {
  name: 'faults',
  read: keptTexts,
  worth: (answers) => (Object.keys(answers).length > 0 ? answers : undefined),
};

/** Of a set that is gone for good. */
export const forgetFaults = (id: string): void => forgetKept(ANSWERS, id);

/** @param id of the set */
export function createFaults(id: string): SetFaults & { readonly dispose: () => void } {
  const { value: faultAnswers, dispose } = keptWithSet(ANSWERS, id);
  return { faultAnswers, dispose };
}
