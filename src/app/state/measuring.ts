import { effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { INSTRUMENTS, type Instrument, isRecord, type MeasuredPart } from '../../engine/index.ts';
import { forgetKept, type Keeps, keptTexts, keptWithSet } from './kept-with-set.ts';

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

/** Whether anything was typed or taken from a file. */
export const isEmptyDraft = ({ fields, rows, files }: ReadingsDraft): boolean =>
  isBlank(fields) && rows.every(isBlank) && Object.keys(files).length === 0;

/** Whether all cells of a row are blank. */
export const isBlank = (row: Readonly<Record<string, string>>): boolean =>
  Object.values(row).every((cell) => cell.trim() === '');

type Drafts = Readonly<Record<string, ReadingsDraft>>;

function draftOf(stored: unknown): ReadingsDraft {
  const { source, fields, rows, files } = isRecord(stored) ? stored : ({} as Record<string, unknown>);
  return {
    ...(typeof source === 'string' && { source }),
    fields: keptTexts(fields),
    rows: Array.isArray(rows) ? rows.map(keptTexts) : [],
    files: Object.fromEntries(
      Object.entries(isRecord(files) ? files : {}).flatMap(([key, file]) => {
        const { name, text } = keptTexts(file);
        return name !== undefined && text !== undefined ? [[key, { name, text }]] : [];
      }),
    ),
  };
}

const withoutEmpty = (drafts: Drafts): Drafts =>
  Object.fromEntries(Object.entries(drafts).filter(([, draft]) => !isEmptyDraft(draft)));

const DRAFTS: Keeps<Drafts> = {
  name: 'readings',
  read: (stored) =>
    withoutEmpty(
      Object.fromEntries(Object.entries(isRecord(stored) ? stored : {}).map(([key, one]) => [key, draftOf(one)])),
    ),
  worth: (drafts) => {
    const kept = withoutEmpty(drafts);
    return Object.keys(kept).length > 0 ? kept : undefined;
  },
};

/** Of a set that is gone for good. */
export const forgetDrafts = (id: string): void => forgetKept(DRAFTS, id);

/** What of a set is being measured. */
export interface SetMeasuring {
  /** Undefined: whatever helps most. */
  readonly wantedPart: Signal<WantedPart | undefined>;
  /** Key of the offered measurement whose card is open. */
  readonly openCard: Signal<string | undefined>;
  /** What was typed into each card and is not used yet, by its key and of a station by the station; kept with the set. */
  readonly drafts: Signal<Drafts>;
  /** False while they are too large for the browser to keep, or it keeps nothing. */
  readonly areDraftsKept: ReadonlySignal<boolean>;
}

/** @param id of the set */
export function createMeasuring(id: string): SetMeasuring & { readonly dispose: () => void } {
  const { value: drafts, isKept: areDraftsKept, dispose } = keptWithSet(DRAFTS, id);
  return { wantedPart: signal(undefined), openCard: signal(undefined), drafts, areDraftsKept, dispose };
}
