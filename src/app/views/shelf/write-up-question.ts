import type { SetDescription } from '../../../engine/index.ts';
import type { When } from '../../description/when.ts';

/** A picture as chosen, with what is seen in it. */
export interface ChosenPhoto {
  readonly file: File;
  readonly caption: string;
}

/** How much of the position of the place goes into a write-up. */
export type SharedPosition = 'none' | 'coarse' | 'exact';

/** What the worker that writes a set up is asked. */
export interface WriteUpQuestion {
  readonly set: SetDescription;
  readonly written: unknown;
  readonly time: When;
  readonly position: SharedPosition;
  readonly photos: readonly ChosenPhoto[];
  /** What was heard, as the text of a table; left out: nothing of it. */
  readonly log?: string;
  /** HTML is one file; Markdown an archive of the text and its pictures. */
  readonly format: 'html' | 'markdown';
  /** The beginning of the files' names. */
  readonly stem: string;
}

/** A file, or the names of the pictures that could not be read. */
export type WriteUpAnswer = { readonly file: Blob; readonly name: string } | { readonly unread: readonly string[] };
