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

/** @returns undefined where it is not kept, or storage is blocked. What cannot be read is put aside, not written over. */
export function keptBox(id: string): KeptBox | undefined {
  let text: string | null;
  try {
    text = localStorage.getItem(keyOf(id));
  } catch {
    return undefined;
  }
  const kept = readKept(text);
  if (text !== null && !kept) setAside(id, text);
  return kept;
}

function setAside(id: string, unreadable: string): void {
  try {
    localStorage.setItem(keyOf(id) + ASIDE, unreadable);
  } catch {
    // It can still be saved to a file.
  }
  const save = { label: storageWords.saveUnreadable, run: () => download('faintwave-box-kept-aside.txt', unreadable) };
  tell(storageWords.unreadableBox, { of: id, stays: true, action: save });
}

/** Ids of all boxes that are kept, in whatever order. @throws where storage is blocked */
export const keptBoxIds = (): readonly string[] =>
  Object.keys(localStorage)
    .filter((key) => key.startsWith(PREFIX) && !key.endsWith(ASIDE))
    .map((key) => key.slice(PREFIX.length));

export function removeKeptBox(id: string): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // Without storage it was not kept.
  }
}

/** Keeps a box that is not open. @returns whether the browser could */
export function putKeptBox(id: string, box: KeptBox): boolean {
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(box));
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
