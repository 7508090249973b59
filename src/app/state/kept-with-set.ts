import { effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { isRecord } from '../../engine/index.ts';

/** What is typed about a set and is no part of its description: kept in this browser until it is cleared. */
export interface KeptWithSet<T> {
  readonly value: Signal<T>;
  /** False while the browser refuses to keep it: it then lasts as long as the page. */
  readonly isKept: ReadonlySignal<boolean>;
  readonly dispose: () => void;
}

/** What of a set there is to keep, and how it is read again. */
export interface Keeps<T> {
  /** Of what it is: "faults". */
  readonly name: string;
  /** From anything at all that was stored under the name. */
  readonly read: (stored: unknown) => T;
  /** What is worth keeping; undefined: nothing. */
  readonly worth: (value: T) => unknown;
}

/** Of what was stored only the texts, as they can be typed: it may be of another version, or anything. */
export const keptTexts = (stored: unknown): Record<string, string> =>
  Object.fromEntries(
    Object.entries(isRecord(stored) ? stored : {}).filter((one): one is [string, string] => typeof one[1] === 'string'),
  );

const keyOf = ({ name }: { readonly name: string }, id: string): string => `faintwave.${name}.${id}`;

function stored(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return null;
  }
}

/** Of a set that is gone for good. */
export function forgetKept(keeps: { readonly name: string }, id: string): void {
  try {
    localStorage.removeItem(keyOf(keeps, id));
  } catch {
    // Without storage it was not kept.
  }
}

/** @param id of the set. */
export function keptWithSet<T>(keeps: Keeps<T>, id: string): KeptWithSet<T> {
  const key = keyOf(keeps, id);
  let before = keeps.read(stored(key));
  const value = signal(before);
  const isKept = signal(true);
  const dispose = effect(() => {
    const now = value.value;
    if (now === before) return;
    before = now;
    const worth = keeps.worth(now);
    try {
      if (worth === undefined) localStorage.removeItem(key);
      else localStorage.setItem(key, JSON.stringify(worth));
      isKept.value = true;
    } catch {
      isKept.value = worth === undefined;
    }
  });
  return { value, isKept, dispose };
}
