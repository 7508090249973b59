import { type Signal, signal } from '@preact/signals';

/** What was observed of one set in the search for a fault. */
export interface SetFaults {
  /** Answers as typed, by the keys of their checks. */
  readonly faultAnswers: Signal<Readonly<Record<string, string>>>;
}

export const createFaults = (): SetFaults => ({ faultAnswers: signal<Readonly<Record<string, string>>>({}) });
