import { batch, type ReadonlySignal, signal } from '@preact/signals';
import { isRecord, withValueAt } from '../../../engine/index.ts';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { followStations } from '../../description/follow-stations.ts';
import { type Reading, readingAsSent, readWithStandIns } from '../../description/stand-ins.ts';
import { writtenName } from '../../description/written-name.ts';
import { SHORT_TEXT } from '../../workers/reading.ts';
import type { Keeping } from '../autosave.ts';
import { forgetBand } from '../banded.ts';
import type { DocumentStore, StoredDocument } from '../document-store.ts';
import { fileStem } from '../download.ts';
import { EXAMPLES, type Example } from '../examples.ts';
import { forgetFaults } from '../fault-search.ts';
import type { OpeningPlace } from '../files.ts';
import { type Kept, keptText, readKept } from '../kept.ts';
import { forgetDrafts } from '../measuring.ts';
import { tell } from '../notices.ts';
import type { OpenSet, OpenSets } from '../open-sets.ts';
import { readBeside } from '../reading-worker.ts';
import type { Tabs } from '../tabs.ts';
import { keepFocus } from './focus-kept.ts';
import { joinedLogs } from './log-text.ts';
import { deletedOf, entryOf, goneForGood, onTheShelf, type ShelfEntry } from './shelf-entry.ts';
import type { SetVersion } from './versions.ts';

/** All sets that this browser keeps. What is opened is one more of them; the one before stays. */
export interface Shelf extends OpeningPlace {
  /** Changed last first; undefined until they are read. */
  readonly entries: ReadonlySignal<readonly ShelfEntry[] | undefined>;
  /** The browser keeps nothing here: its storage is blocked. */
  readonly isBlocked: ReadonlySignal<boolean>;
  /** Reads the list anew. */
  readonly refresh: () => Promise<void>;
  /** The focus goes to this set. @returns whether it could be opened */
  readonly open: (id: string) => Promise<boolean>;
  /** One more set with the same description, on the shelf only. */
  readonly copy: (id: string) => Promise<void>;
  readonly rename: (id: string, name: string) => Promise<void>;
  /** Changes the description of a set, open or not; how it was before becomes a version. @returns whether it is done */
  readonly changeSet: (id: string, make: (written: unknown) => unknown, label: string) => Promise<boolean>;
  /** It can be had back from the message, and for thirty days. */
  readonly remove: (id: string) => Promise<void>;
  /** Deleted and still to be had back, latest first. */
  readonly deleted: ReadonlySignal<readonly ShelfEntry[]>;
  readonly restore: (entry: ShelfEntry) => Promise<void>;
  readonly isOpen: (id: string) => boolean;
  /** ms since 1970; 0: not on the shelf. */
  readonly changedAt: (id: string) => number;
  /** A set as it is kept. */
  readonly kept: (id: string) => Promise<Kept | undefined>;
  /** Oldest first. */
  readonly versions: (id: string) => Promise<readonly SetVersion[]>;
  /** What was heard with a set, as the text of a table. */
  readonly log: (id: string) => Promise<string | undefined>;
  readonly changeLog: DocumentStore['changeLog'];
  /** A log that the browser could not keep: it counts for as long as the page lasts, or until it can be kept. */
  readonly holdLog: (id: string, text: string) => void;
  /** The set in focus as it was then, as one step that can be undone; how it was before that becomes a version. */
  readonly goBack: (version: SetVersion, label: string) => void;
  /** Puts sets and versions from elsewhere on the shelf. */
  readonly put: (id: string, document: StoredDocument) => Promise<void>;
  readonly newSetId: () => string;
  /** ms since 1970. */
  readonly now: () => number;
}

interface Tools {
  readonly sets: OpenSets;
  readonly keeping: Keeping;
  readonly store: DocumentStore;
  readonly tabs: Tabs;
  readonly now: () => number;
}

/** Names no other set. */
const newId = (now: number): string => `${now.toString(36)}-${Math.random().toString(36).slice(2, 10)}`;

export function createShelf({ sets, keeping, store, tabs, now }: Tools, first: Example): Shelf {
  const entries = signal<readonly ShelfEntry[] | undefined>(undefined);
  const deleted = signal<readonly ShelfEntry[]>([]);
  const isBlocked = signal(false);
  const { idsNow, keptNow, kept } = whatIsKept(store, keeping);
  const openSet = (id: string): OpenSet | undefined => sets.all.peek().find((set) => set.id === id);

  /** The set before one that was opened, as it was left. */
  const cameFrom = new WeakMap<OpenSet, { readonly id: string; readonly kept: Kept }>();
  /** Opened, and gone back from without a change. */
  const unwanted = new WeakSet<OpenSet>();
  /** Until the set that lost the focus last is closed. */
  let leaving: Promise<void> = Promise.resolve();
  /** Logs that could not be written. */
  const heldLogs = new Map<string, string>();
  const logOf = async (id: string): Promise<string | undefined> => heldLogs.get(id) ?? store.log(id);

  async function removeForGood(id: string, upTo?: number): Promise<void> {
    await store.remove(id, upTo);
    forgetFaults(id);
    forgetDrafts(id);
    forgetBand(id);
  }

  async function refresh(): Promise<void> {
    const found = new Map<string, ShelfEntry>();
    let isThere = true;
    let gone: readonly ShelfEntry[] = [];
    try {
      const all = await store.entries();
      gone = deletedOf(all);
      for (const entry of onTheShelf(all)) found.set(entry.id, entry);
      for (const { id } of goneForGood(all, now())) await removeForGood(id);
    } catch {
      isThere = false;
    }
    // What only the first place has, and what is in no place but here.
    const here = [...sets.all.peek().map(({ id }) => id), ...(isThere ? [] : idsNow())];
    for (const id of here) {
      const kept = keeping.keptOf(id) ?? keptNow(id);
      const entry = found.get(id);
      if (kept && (kept.revision > 0 || id === sets.focused.peek().id))
        found.set(id, entryOf(id, kept, entry?.changed ?? now()));
    }
    batch(() => {
      entries.value = onTheShelf([...found.values()]);
      deleted.value = gone;
      isBlocked.value = !isThere;
    });
  }

  /** Opens a set in the place of the one in focus, which stays on the shelf. */
  function begin(id: string, from: Kept, reading?: Reading): OpenSet {
    const before = sets.focused.peek();
    if (!openSet(id)) keeping.goOnFrom(id, from);
    const opened = sets.open(id, from.written, from.fileName, reading);
    keepFocus(id);
    if (before !== opened) leaving = leave(before);
    return opened;
  }

  /** A set that lost the focus is closed once the disk has it; an example that nobody changed leaves nothing behind. */
  async function leave(set: OpenSet): Promise<void> {
    const { id } = set;
    const isWaste = unwanted.has(set) || isUntouchedExample(set);
    const revision = keeping.keptOf(id)?.revision ?? 0;
    const isOnDisk = await keeping.isOnDisk(id);
    const isDisposable = isWaste && !(await hasMore(set).catch(() => isOnDisk));
    if (!isDisposable && !isOnDisk) return;
    if (sets.focused.peek() === set) return;
    sets.close(id);
    // What another tab has made of it meanwhile stays.
    if (isDisposable) await removeForGood(id, revision).catch(() => undefined);
    await changed();
  }

  /** Whether more is kept of a set than its description. */
  async function hasMore({ id, faultAnswers }: OpenSet): Promise<boolean> {
    if (Object.keys(faultAnswers.peek()).length > 0) return true;
    return (await logOf(id)) !== undefined || (await store.versions(id)).length > 0;
  }

  async function changed(): Promise<void> {
    await refresh();
    tabs.tellOfShelf();
  }

  async function open(id: string): Promise<boolean> {
    if (id === sets.focused.peek().id) return true;
    const isOpen = openSet(id) !== undefined;
    const found = await kept(id);
    if (!found) {
      tell(texts.cannotOpen, { key: 'cannot-open' });
      return false;
    }
    const isLong = !isOpen && JSON.stringify(found.written).length > SHORT_TEXT;
    const reading = isLong ? await readBeside({ value: found.written }) : undefined;
    begin(id, found, reading && readingAsSent(reading, found.written));
    return true;
  }

  /** Writes what is not open; says so where that cannot be done. @returns whether it is done */
  async function write(id: string, document: StoredDocument): Promise<boolean> {
    try {
      await store.write(id, document);
      return true;
    } catch {
      tell(texts.notKept, { key: 'shelf-not-kept', stays: true });
      return false;
    } finally {
      await changed();
    }
  }

  /** A set that is not open here gets another description. @returns whether it is kept */
  async function changeClosed(id: string, from: Kept, written: unknown, version?: SetVersion): Promise<boolean> {
    const next: Kept = { ...from, revision: from.revision + 1, written, isSaved: false, tab: tabs.own };
    const text = keptText(next);
    try {
      if (keptNow(id)) store.writeNow(id, text);
    } catch {
      // The disk gets it too, as a later revision than the first place has.
    }
    tabs.tell(id, text);
    return write(id, { text, entry: entryOf(id, next, now()), version });
  }

  const entryNow = (id: string): ShelfEntry | undefined => entries.peek()?.find((entry) => entry.id === id);
  const restore = async ({ deleted: _at, ...entry }: ShelfEntry): Promise<void> =>
    void (await write(entry.id, { entry }));

  const shelf: Shelf = {
    entries,
    deleted,
    isBlocked,
    refresh,
    open,
    restore,
    isOpen: (id) => openSet(id) !== undefined,
    changedAt: (id) => entryNow(id)?.changed ?? 0,
    kept,
    versions: (id) => store.versions(id),
    log: logOf,
    holdLog: (id, text) => void heldLogs.set(id, text),
    async changeLog(id, change) {
      const held = heldLogs.get(id);
      const text = await store.changeLog(id, (there) => change(held === undefined ? there : joinedLogs(there, held)));
      if (heldLogs.get(id) === held) heldLogs.delete(id);
      tabs.tellOfShelf();
      return text;
    },
    add(reading, fileName) {
      const { written, result, usable } = reading;
      const before = sets.focused.peek();
      const from: Kept = {
        revision: 0,
        written,
        fileName,
        isSaved: true,
        ...(result.ok || !usable ? {} : { lastValid: usable.written }),
        tab: tabs.own,
      };
      const keptBefore = keeping.keptOf(before.id);
      const opened = begin(newId(now()), from, reading);
      if (keptBefore) cameFrom.set(opened, { id: before.id, kept: keptBefore });
      return opened;
    },
    back(opened) {
      const before = cameFrom.get(opened);
      if (!before) return;
      if (opened.undoLabel.peek() === undefined && !opened.draft.peek()) unwanted.add(opened);
      begin(before.id, before.kept);
    },
    async copy(id) {
      const from = await kept(id);
      if (!from) return;
      const name = texts.copyOf(writtenName(from.written));
      const written = isRecord(from.written) ? withValueAt(from.written, ['name'], name) : from.written;
      const copied: Kept = { ...from, revision: 1, written, fileName: `${fileStem(name, 'set')}.json`, isSaved: false };
      const copyId = newId(now());
      await write(copyId, { text: keptText(copied), entry: entryOf(copyId, copied, now()) });
    },
    async rename(id, name) {
      const isOpen = openSet(id);
      if (isOpen) {
        isOpen.edit(['name'], name);
        await refresh();
        return;
      }
      const from = await kept(id);
      if (from) await changeClosed(id, from, withValueAt(from.written, ['name'], name));
    },
    async changeSet(id, make, label) {
      const isOpen = openSet(id);
      if (isOpen) {
        isOpen.endRun();
        isOpen.change(make, { label });
        await refresh();
        return true;
      }
      const from = await kept(id);
      if (!from) return false;
      const { written } = followStations(from.written, { written: make(from.written), also: [] });
      return changeClosed(id, from, written, { at: now(), written: from.written });
    },
    async remove(id) {
      const entry = entryNow(id);
      if (!entry) return;
      const from = await kept(id);
      const text = from && keptText(from);
      const next = entries.peek()?.find((one) => one.id !== id);
      if (sets.focused.peek().id === id && !(next && (await open(next.id)))) {
        const written: unknown = JSON.parse(first.text);
        shelf.add(readWithStandIns(written), first.file);
      }
      // Nothing that is still being written of it may come after.
      await leaving;
      if (!(await write(id, { text, entry: { ...entry, deleted: now() } }))) return;
      tell(texts.deleted(entry.name), {
        key: `deleted-${id}`,
        action: { label: texts.undoDelete, run: () => void write(id, { text, entry }) },
      });
    },
    goBack({ written }, label) {
      const set = sets.focused.peek();
      void write(set.id, { version: { at: now(), written: set.writtenWithDraft.peek() } });
      set.replace(written, set.fileName.peek(), label, false);
    },
    async put(id, document) {
      await store.write(id, document);
      if (document.text !== undefined) tabs.tell(id, document.text);
    },
    newSetId: () => newId(now()),
    now,
  };
  return shelf;
}

/** Sets as they are kept, wherever that is. */
function whatIsKept(store: DocumentStore, keeping: Keeping) {
  const idsNow = (): readonly string[] => {
    try {
      return store.idsNow();
    } catch {
      return [];
    }
  };
  const keptNow = (id: string): Kept | undefined => {
    try {
      return readKept(store.readNow(id) ?? '');
    } catch {
      return undefined;
    }
  };

  /** The later of what the two places have, or what is open. */
  async function kept(id: string): Promise<Kept | undefined> {
    const open = keeping.keptOf(id);
    if (open) return open;
    const near = keptNow(id);
    const far = await store.readText(id).then(
      (text) => (text === undefined ? undefined : readKept(text)),
      () => undefined,
    );
    return near && (!far || near.revision >= far.revision) ? near : far;
  }
  return { idsNow, keptNow, kept };
}

const exampleTexts = new Map(EXAMPLES.map(({ file, text }) => [file, text]));

/** It can be opened again any time. */
function isUntouchedExample({ fileName, isSaved, whole, undoLabel, redoLabel, draft }: OpenSet): boolean {
  const text = exampleTexts.get(fileName.peek());
  if (text === undefined || !isSaved.peek() || draft.peek()) return false;
  if (undoLabel.peek() !== undefined || redoLabel.peek() !== undefined) return false;
  return JSON.stringify(JSON.parse(text)) === JSON.stringify(whole.peek());
}
