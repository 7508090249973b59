import { effect } from '@preact/signals';
import { writeText } from '../../engine/index.ts';
import { storageWords as texts } from '../../outputs/words/index.ts';
import {
  beginWith,
  fileName,
  historyWithDraft,
  replace,
  restoreHistory,
  savedWritten,
  written,
  writtenWithDraft,
} from './document.ts';
import { openDocumentStore } from './document-store.ts';
import { download } from './download.ts';
import { continueHistory, type Kept, keptHistory, keptText, readKept } from './kept.ts';
import { dismiss, tell } from './notices.ts';
import { remember, understood } from './understanding.ts';
import { chooseStation, stationIndex } from './view.ts';

/** Of the one document there is. */
const ID = 'first';
/** A longer text is not written at every key, but after a pause and on leaving. */
const SHORT = 100_000;
const PAUSE_MS = 200;

const tab = Math.random().toString(36).slice(2);
const store = openDocumentStore(ID);

/** Everything whose change is worth keeping. */
const content = (): readonly unknown[] => [
  writtenWithDraft.value,
  fileName.value,
  savedWritten.value,
  stationIndex.value,
  understood.value,
];

let revision = 0;
let seen: readonly unknown[] = [];
let text = '';
let textRevision = -1;
let revisionNow = 0;
let revisionOnDisk = 0;
let historyOnDisk: unknown;
let isRestoring = false;
let isLoaded = false;
let isWriting = false;
let pause: ReturnType<typeof setTimeout> | undefined;

/** Take up where this browser left off, and keep every change from now on. Called once, before the page is drawn. */
export function autosave(): void {
  const first = readFirst();
  if (first) restore(first);
  revisionNow = revision;
  seen = content();
  effect(() => {
    const now = content();
    if (isRestoring) seen = now;
    if (now.every((value, i) => value === seen[i])) return;
    seen = now;
    revision++;
    keep();
  });
  void load();
  addEventListener('pagehide', keepOnLeaving);
  document.addEventListener('freeze', keepOnLeaving);
  document.addEventListener('visibilitychange', () => document.hidden && keepOnLeaving());
  addEventListener('pageshow', ({ persisted }) => persisted && catchUp());
  store.watch(ID, changedInAnotherTab);
}

/** A page that the browser brings back whole was not told what other tabs did in the meantime. */
function catchUp(): void {
  try {
    const found = store.readNow(ID);
    if (found !== null && found !== text) changedInAnotherTab(found);
  } catch {
    report('now', false);
  }
}

function currentText(): string {
  if (textRevision === revision) return text;
  const now = writtenWithDraft.peek();
  const lastValid = understood.peek()?.written;
  const kept: Kept = {
    revision,
    written: now,
    fileName: fileName.peek(),
    isSaved: savedWritten.peek() === now,
    ...(lastValid !== undefined && lastValid !== now ? { lastValid } : {}),
    station: stationIndex.peek(),
    tab,
  };
  text = keptText(kept);
  textRevision = revision;
  return text;
}

function keep(): void {
  clearTimeout(pause);
  if (text.length < SHORT) keepAll();
  else pause = setTimeout(keepAll, PAUSE_MS);
}

function keepAll(): void {
  keepNow();
  void keepOnDisk();
}

/** Leaving cannot wait for what is still being written. */
function keepOnLeaving(): void {
  keepNow();
  if (isLoaded && (revisionOnDisk < revision || isHistoryBehind())) void writeToDisk().catch(() => undefined);
}

function keepNow(): void {
  clearTimeout(pause);
  if (revisionNow === revision) return;
  try {
    store.writeNow(ID, currentText());
    revisionNow = revision;
    report('now', true);
  } catch {
    report('now', false);
  }
}

/** Until the disk has the latest; while it writes, changes gather. */
async function keepOnDisk(): Promise<void> {
  if (isWriting || !isLoaded) return;
  isWriting = true;
  try {
    while (revisionOnDisk < revision) await writeToDisk();
    report('disk', true);
  } catch {
    report('disk', false);
  } finally {
    isWriting = false;
  }
}

const isHistoryBehind = (): boolean => revision > 0 && historyOnDisk !== historyWithDraft.peek();

async function writeToDisk(): Promise<void> {
  const writing = revision;
  const history = historyWithDraft.peek();
  await store.write(ID, {
    text: currentText(),
    ...(isHistoryBehind() ? { history: keptHistory(history, savedWritten.peek()) } : {}),
  });
  revisionOnDisk = writing;
  historyOnDisk = history;
}

function readFirst(): Kept | undefined {
  let found: string | null;
  try {
    found = store.readNow(ID);
  } catch {
    report('now', false);
    return undefined;
  }
  const kept = found === null ? undefined : readKept(found);
  if (found !== null && !kept) setAside(found);
  return kept;
}

/** What only the disk has: the latest changes before the browser was killed, and the steps to undo. */
async function load(): Promise<void> {
  const first = revision;
  try {
    const { text: found, history } = await store.read(ID);
    const kept = found === undefined ? undefined : readKept(found);
    revisionOnDisk = kept?.revision ?? 0;
    if (kept && kept.revision > first) {
      if (revision === first) restore(kept);
      else {
        revision = Math.max(revision, kept.revision) + 1;
        offerLater(kept);
      }
    }
    const continued = revision > 0 ? continueHistory(history, historyWithDraft.peek()) : undefined;
    if (continued) whileRestoring(() => restoreHistory(continued.history, continued.saved));
    historyOnDisk = historyWithDraft.peek();
  } catch {
    report('disk', false);
  }
  isLoaded = true;
  void keepOnDisk();
}

function whileRestoring(act: () => void): void {
  isRestoring = true;
  act();
  isRestoring = false;
}

function restore(kept: Kept): void {
  revision = kept.revision;
  whileRestoring(() => {
    // Read first, so that it is what the figures are of.
    if (kept.lastValid !== undefined) {
      remember(kept.lastValid);
      beginWith(kept.lastValid, kept.fileName, false);
    }
    remember(kept.written);
    beginWith(kept.written, kept.fileName, kept.isSaved);
    chooseStation(kept.station);
  });
}

function offerLater(kept: Kept): void {
  tell(texts.laterChanges, {
    key: 'later-changes',
    stays: true,
    action: { label: texts.showLater, run: () => replace(kept.written, kept.fileName, texts.laterLabel) },
  });
}

/** What cannot be read is not written over: it moves aside and can be saved to a file. */
function setAside(unreadable: string): void {
  try {
    store.setAside(ID, unreadable);
  } catch {
    report('now', false);
  }
  tell(texts.unreadable, {
    stays: true,
    action: { label: texts.saveUnreadable, run: () => download('faintwave-kept-aside.txt', unreadable) },
  });
}

const failing = { now: false, disk: false };

/** Says once what is not kept, until it is kept again. */
function report(place: keyof typeof failing, works: boolean): void {
  if (failing[place] === !works) return;
  failing[place] = !works;
  if (!failing.now && !failing.disk) {
    dismiss('storage');
    return;
  }
  const what = failing.now && failing.disk ? texts.keepsNothing : texts.keepsPart;
  tell(what, {
    key: 'storage',
    stays: true,
    action: { label: texts.saveNow, run: () => download(fileName.peek(), writeText(written.peek())) },
  });
}

function changedInAnotherTab(theirs: string): void {
  const kept = readKept(theirs);
  if (!kept || kept.tab === tab) return;
  // What this tab changes next is later than what the other one did.
  if (revisionNow === revision) revisionNow = Math.max(revision, kept.revision);
  if (revisionOnDisk === revision) revisionOnDisk = Math.max(revision, kept.revision);
  revision = Math.max(revision, kept.revision);
  tell(texts.otherTab, {
    key: 'another-tab',
    stays: true,
    action: {
      label: texts.showOther,
      run: () => replace(kept.written, kept.fileName, texts.otherLabel),
    },
  });
}
