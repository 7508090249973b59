import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Document } from './document.ts';
import type { SetReading } from './set-reading.ts';

/** What fields edit: the description of a set, or a box of parts. */
export type Edited = Pick<
  Document,
  'written' | 'draft' | 'valueChange' | 'edit' | 'change' | 'apply' | 'tellOfChange' | 'endRun'
> &
  Pick<SetReading, 'problemsAt' | 'standIns'>;

/** The one that the fields inside edit. */
export const EditedContext = createContext(undefined as unknown as Edited);

export const useEdited = (): Edited => useContext(EditedContext);
