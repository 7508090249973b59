import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { SetDescription, WantSuggestion, WantValue } from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import type { WantSuggestionsQuestion, WantValuesQuestion } from '../workers/engine.worker.ts';
import type { Latest } from '../workers/latest.ts';
import type { SetWorkers } from './set-workers.ts';

/** What one set gives of its wants, and what would serve them. Each comes after the figures, and may be of the set before. */
export interface SetWanted {
  /** In the order of the wants; undefined until they are known. */
  readonly wantValues: ReadonlySignal<Of<readonly WantValue[]> | undefined>;
  /** Best first; undefined until they are known. */
  readonly wantSuggestions: ReadonlySignal<Of<readonly WantSuggestion[]> | undefined>;
}

interface Of<Answer> {
  readonly set: SetDescription;
  readonly answer: Answer;
}

/** Both try changed sets, so they wait for a pause. */
const PAUSE_MS = 150;

/** @param hasFocus only for the set in focus is any of it worked out. */
export function createWanted(
  receptionSet: ReadonlySignal<SetDescription | undefined>,
  time: ReadonlySignal<When>,
  workers: SetWorkers,
  hasFocus: ReadonlySignal<boolean>,
): SetWanted & { readonly dispose: () => void } {
  const values = signal<Of<readonly WantValue[]> | undefined>(undefined);
  const suggestions = signal<Of<readonly WantSuggestion[]> | undefined>(undefined);
  let askValues: Latest<WantValuesQuestion> | undefined;
  let askSuggestions: Latest<WantSuggestionsQuestion> | undefined;
  let pause: ReturnType<typeof setTimeout> | undefined;
  const ask = (set: SetDescription, when: When): void => {
    askValues ??= workers.askWantValues(({ set }, reply) => {
      if ('answer' in reply) values.value = { set, answer: reply.answer };
    });
    askValues.ask({ about: 'wantValues', set, time: when });
    askSuggestions ??= workers.askWantSuggestions(({ set }, reply) => {
      if ('answer' in reply) suggestions.value = { set, answer: reply.answer };
    });
    askSuggestions.ask({ about: 'wantSuggestions', set, time: when });
  };
  const stop = effect(() => {
    const set = receptionSet.value;
    const when = time.value;
    clearTimeout(pause);
    if (!set || !hasFocus.value || !hasWants(set)) return;
    pause = setTimeout(() => ask(set, when), PAUSE_MS);
  });
  return {
    wantValues: values,
    wantSuggestions: suggestions,
    dispose() {
      clearTimeout(pause);
      stop();
      askValues?.close();
      askSuggestions?.close();
    },
  };
}

/** Whether anything is wanted of a set; else suggestions are for the chosen station. */
export const hasWants = (set: SetDescription | undefined): boolean => (set?.wants ?? []).length > 0;
