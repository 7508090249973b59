import { effect } from '@preact/signals';
import { isRecord } from '../../engine/fields/introspect.ts';
import { beginWith, fileName, replace, written } from './document.ts';
import { download } from './download.ts';
import { tell } from './notices.ts';
import { understood } from './understanding.ts';

const KEY = 'faintwave.set';
const ASIDE = 'faintwave.set-kept-aside';
const PAUSE_MS = 250;

interface Kept {
  readonly written: unknown;
  readonly fileName: string;
  /** The last faultless state, when `written` has problems. */
  readonly understood?: unknown;
  /** The tab that wrote it. */
  readonly tab: string;
}

const tab = Math.random().toString(36).slice(2);
let keeping = true;
let last = '';

/** What was kept, or why it cannot be used. */
function readKept(text: string): Kept | undefined {
  try {
    const value = JSON.parse(text) as unknown;
    return isRecord(value) && isRecord(value.written) ? (value as unknown as Kept) : undefined;
  } catch {
    return undefined;
  }
}

/** Take up where this browser left off, and keep every change from now on. Called once, before the page is drawn. */
export function keepWork(): void {
  let text: string | null = null;
  try {
    text = localStorage.getItem(KEY);
  } catch {
    keeping = false;
    tell('This browser does not let the page keep anything: save your set to a file before you close it.', {
      stays: true,
    });
  }
  if (text !== null) restore(text);

  const first = written.peek();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const keepNow = () => {
    clearTimeout(timer);
    timer = undefined;
    if (written.peek() !== first || last !== '') keep();
  };
  effect(() => {
    void written.value;
    void fileName.value;
    clearTimeout(timer);
    timer = setTimeout(keepNow, PAUSE_MS);
  });
  addEventListener('pagehide', () => timer !== undefined && keepNow());
  addEventListener('visibilitychange', () => document.hidden && timer !== undefined && keepNow());
  addEventListener('storage', heardFromAnotherTab);
}

function restore(text: string): void {
  const kept = readKept(text);
  if (!kept) {
    keepAside(text);
    return;
  }
  last = text;
  if (isRecord(kept.understood)) beginWith(kept.understood, kept.fileName);
  beginWith(kept.written, String(kept.fileName));
}

/** What cannot be read is not written over: it moves aside and can be saved to a file. */
function keepAside(text: string): void {
  try {
    localStorage.setItem(ASIDE, text);
    localStorage.removeItem(KEY);
  } catch {
    keeping = false;
  }
  tell('What this browser kept from last time cannot be read. It has been put aside, not thrown away.', {
    stays: true,
    action: { label: 'Save it to a file', run: () => download('faintwave-kept-aside.txt', text) },
  });
}

function keep(): void {
  if (!keeping) return;
  const good = understood.peek()?.written;
  const kept: Kept = {
    written: written.peek(),
    fileName: fileName.peek(),
    tab,
    ...(good !== undefined && good !== written.peek() ? { understood: good } : {}),
  };
  const text = JSON.stringify(kept);
  if (text === last) return;
  try {
    localStorage.setItem(KEY, text);
    last = text;
  } catch {
    tell('This browser has no room to keep the set: save it to a file.', { key: 'no room', stays: true });
  }
}

function heardFromAnotherTab(event: StorageEvent): void {
  if (event.key !== KEY || event.newValue === null) return;
  const kept = readKept(event.newValue);
  if (!kept || kept.tab === tab || event.newValue === last) return;
  tell(
    'The set was changed in another tab. This tab keeps its own; whichever changes last is what the browser remembers.',
    {
      key: 'another tab',
      stays: true,
      action: {
        label: 'Show the other’s here',
        run: () => {
          last = event.newValue!;
          replace(kept.written, kept.fileName, 'the other tab’s set');
        },
      },
    },
  );
}
