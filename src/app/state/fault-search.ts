import { effect, type Signal, signal } from '@preact/signals';
import { isRecord } from '../../engine/index.ts';

/** Answers as typed, by the keys of their checks. */
type Answers = Readonly<Record<string, string>>;

/** What was observed of one set in the search for a fault; kept with the set. */
export interface SetFaults {
  readonly faultAnswers: Signal<Answers>;
}

const keyOf = (id: string): string => `faintwave.faults.${id}`;

function keptAnswers(id: string): Answers {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(id)) ?? '{}');
    const entries = isRecord(kept) ? Object.entries(kept) : [];
    return Object.fromEntries(entries.filter((one): one is [string, string] => typeof one[1] === 'string'));
  } catch {
    return {};
  }
}

/** Of a set that is gone for good. */
export function forgetFaults(id: string): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // Without storage they were not kept.
  }
}

/** @param id of the set */
export function createFaults(id: string): SetFaults & { readonly dispose: () => void } {
  const before = keptAnswers(id);
  const faultAnswers = signal(before);
  const dispose = effect(() => {
    const answers = faultAnswers.value;
    if (answers === before) return;
    if (Object.keys(answers).length === 0) {
      forgetFaults(id);
      return;
    }
    try {
      localStorage.setItem(keyOf(id), JSON.stringify(answers));
    } catch {
      // Without storage they last as long as the page.
    }
  });
  return { faultAnswers, dispose };
}
