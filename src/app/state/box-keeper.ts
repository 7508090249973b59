import { effect } from '@preact/signals';
import { isRecord, writeText } from '../../engine/index.ts';
import { storageWords, findView as texts } from '../../outputs/words/index.ts';
import type { Document } from './document.ts';
import { download } from './download.ts';
import { dismiss, tell } from './notices.ts';

/** A box as this browser keeps it. */
export interface KeptBox {
  readonly written: unknown;
  readonly fileName: string;
  /** When it was changed last, ms since 1970; 0: before that was kept. */
  readonly changed: number;
}

const PREFIX = 'faintwave.box.';
const ASIDE = '.aside';
const keyOf = (id: string): string => PREFIX + id;

function readKept(text: string | null): KeptBox | undefined {
  try {
    const kept: unknown = JSON.parse(text ?? '');
    return isRecord(kept) && isRecord(kept.written)
      ? {
          written: kept.written,
          fileName: String(kept.fileName),
          changed: typeof kept.changed === 'number' ? kept.changed : 0,
        }
      : undefined;
  } catch {
    return undefined;
  }
}

function storedText(id: string): string | null {
  try {
    return localStorage.getItem(keyOf(id));
  } catch {
    return null;
  }
}

/** @returns undefined where it is not kept, cannot be read, or storage is blocked */
export const keptBox = (id: string): KeptBox | undefined => readKept(storedText(id));

/** @returns the text that is kept of a box and cannot be read; undefined: there is none */
export function unreadableBox(id: string): string | undefined {
  const text = storedText(id);
  return text === null || readKept(text) ? undefined : text;
}

/** As `keptBox`, of one that is written from now on: what cannot be read is put aside and told, not written over. */
export function keptBoxToOpen(id: string): KeptBox | undefined {
  const unreadable = unreadableBox(id);
  if (unreadable !== undefined) setAside(id, unreadable);
  return keptBox(id);
}

export const saveUnreadableBox = (text: string): void => download('faintwave-box-kept-aside.txt', text);

function setAside(id: string, unreadable: string): void {
  try {
    localStorage.setItem(keyOf(id) + ASIDE, unreadable);
  } catch {
    // It can still be saved to a file.
  }
  const save = { label: storageWords.saveUnreadable, run: () => saveUnreadableBox(unreadable) };
  tell(storageWords.unreadableBox, { of: id, stays: true, action: save });
}

/** Ids of all boxes that are kept, in whatever order. @throws where storage is blocked */
export const keptBoxIds = (): readonly string[] =>
  Object.keys(localStorage)
    .filter((key) => key.startsWith(PREFIX) && !key.endsWith(ASIDE))
    .map((key) => key.slice(PREFIX.length));

/** Whether the storage holds one box under the key; null: the whole storage was cleared. */
export const isOfBoxes = (key: string | null): boolean => key === null || key.startsWith(PREFIX);

/** @returns what puts it back as it was, and says whether the browser could */
export function removeKeptBox(id: string): () => boolean {
  const text = storedText(id);
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // Without storage it was not kept.
  }
  return () => text !== null && putText(id, text);
}

/** Keeps a box that is not open. @returns whether the browser could */
export const putKeptBox = (id: string, box: KeptBox): boolean => putText(id, JSON.stringify(box));

function putText(id: string, text: string): boolean {
  try {
    localStorage.setItem(keyOf(id), text);
    return true;
  } catch {
    return false;
  }
}

const contentOf = ({ written, fileName }: Pick<KeptBox, 'written' | 'fileName'>): string =>
  JSON.stringify({ written, fileName });

/** Keeps every change of a box, and takes over what another tab makes of it, as a step that can be undone. @returns ends it */
export function keepBox(box: Document & { readonly id: string }): () => void {
  const { id, writtenWithDraft, fileName } = box;
  const before = keptBox(id);
  let known = before ? contentOf(before) : '';
  const stop = effect(() => {
    const now = { written: writtenWithDraft.value, fileName: fileName.value };
    const text = contentOf(now);
    if (text === known) return;
    known = text;
    try {
      localStorage.setItem(keyOf(id), JSON.stringify({ ...now, changed: Date.now() }));
      dismiss('box-storage', id);
    } catch {
      tell(storageWords.keepsNothing, {
        key: 'box-storage',
        of: id,
        stays: true,
        action: { label: storageWords.saveNow, run: () => download(fileName.peek(), writeText(box.written.peek())) },
      });
    }
  });
  const ended = new AbortController();
  const heard = ({ key, newValue }: StorageEvent) => {
    const kept = key === keyOf(id) ? readKept(newValue) : undefined;
    if (!kept || contentOf(kept) === known) return;
    known = contentOf(kept);
    box.replace(kept.written, kept.fileName, texts.otherTab);
  };
  addEventListener('storage', heard, { signal: ended.signal });
  return () => {
    stop();
    ended.abort();
  };
}
