import { effect, type Signal, signal } from '@preact/signals';
import { INSTRUMENTS, type Instrument, type MeasuredPart } from '../../engine/index.ts';

const KEY = 'faintwave.instruments';

function keptInstruments(): readonly Instrument[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? INSTRUMENTS.filter((one) => kept.includes(one)) : [];
  } catch {
    return [];
  }
}

/** What lies on the bench, whichever set is open. */
export const instruments = signal<readonly Instrument[]>(keptInstruments());

effect(() => {
  try {
    localStorage.setItem(KEY, JSON.stringify(instruments.value));
  } catch {
    // Without storage the choice lasts as long as the page.
  }
});

/** Readings as typed: fields by key ("group.key" of a group), rows of the list, texts of files with their names. */
export interface ReadingsDraft {
  /** Name of the file that they were taken from. */
  readonly source?: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly files: Readonly<Record<string, { readonly name: string; readonly text: string }>>;
}

/** The part that something is to be known of: its kind, and of coils its place in the list. */
export interface WantedPart {
  readonly part: MeasuredPart;
  readonly coil?: number;
}

/** What of a set is being measured. */
export interface SetMeasuring {
  /** Undefined: whatever helps most. */
  readonly wantedPart: Signal<WantedPart | undefined>;
  /** Key of the offered measurement whose card is open. */
  readonly openCard: Signal<string | undefined>;
  /** What was typed into each card, by its key. */
  readonly drafts: Signal<Readonly<Record<string, ReadingsDraft>>>;
}

export const createMeasuring = (): SetMeasuring => ({
  wantedPart: signal(undefined),
  openCard: signal(undefined),
  drafts: signal({}),
});
