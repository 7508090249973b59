import { valueAtPath } from '../../../engine/index.ts';
import type { Kept } from '../kept.ts';
import { withAllWords } from './with-all-words.ts';

/** How the shelf lists a set. */
export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  /** The first of them; what is searched. */
  readonly notes: string;
  readonly fileName: string;
  /** When it was changed last, ms since 1970. */
  readonly changed: number;
  /** When it was deleted, ms since 1970; it can be had back for a while. */
  readonly deleted?: number;
}

/** More of the notes is not searched, so that hundreds of sets are listed at once. */
const LONGEST_NOTES = 2000;

export function entryOf(
  id: string,
  { written, fileName }: Pick<Kept, 'written' | 'fileName'>,
  now: number,
): ShelfEntry {
  const text = (key: string): string => {
    const value = valueAtPath(written, [key]);
    return typeof value === 'string' ? value : '';
  };
  return { id, name: text('name'), notes: text('notes').slice(0, LONGEST_NOTES), fileName, changed: now };
}

/** Deleted sets are kept so long. */
const DELETED_FOR_MS = 30 * 86_400_000;

/** What is on the shelf, changed last first. */
export const onTheShelf = (entries: readonly ShelfEntry[]): readonly ShelfEntry[] =>
  entries.filter(({ deleted }) => deleted === undefined).sort((a, b) => b.changed - a.changed);

/** Deleted and still kept, latest first. */
export const deletedOf = (entries: readonly ShelfEntry[]): readonly ShelfEntry[] =>
  entries.filter(({ deleted }) => deleted !== undefined).sort((a, b) => (b.deleted ?? 0) - (a.deleted ?? 0));

/** Deleted so long ago that they go for good. */
export const goneForGood = (entries: readonly ShelfEntry[], now: number): readonly ShelfEntry[] =>
  entries.filter(({ deleted }) => deleted !== undefined && now - deleted > DELETED_FOR_MS);

/** Those in whose name, notes or file name every word of the text is. */
export const searchShelf = <Entry extends Pick<ShelfEntry, 'name' | 'notes' | 'fileName'>>(
  entries: readonly Entry[],
  text: string,
): readonly Entry[] => withAllWords(entries, text, ({ name, notes, fileName }) => `${name}\n${notes}\n${fileName}`);
