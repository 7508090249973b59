import { effect, untracked } from '@preact/signals';
import { writeText } from '../../engine/index.ts';
import { storageWords as texts } from '../../outputs/words/index.ts';
import { type DocumentStore, openDocumentStore } from './document-store.ts';
import { download } from './download.ts';
import { continueHistory, type Kept, keptHistory, keptText, readKept } from './kept.ts';
import { dismiss, tell } from './notices.ts';
import type { OpenSet, OpenSets } from './open-sets.ts';

/** A longer text is not written at every key, but after a pause and on leaving. */
const SHORT = 100_000;
const PAUSE_MS = 200;

const tab = Math.random().toString(36).slice(2);

/**
 * Take up each open set where this browser left it, and keep every change from now on. Called once, before the page is
 * drawn. @param firstId the set that takes over what the first versions of the page kept. @returns resolves once the sets
 * that are open now have all that was kept, the steps to undo too
 */
export function autosave(sets: OpenSets, firstId: string): Promise<unknown> {
  const store = openDocumentStore(firstId);
  const keepers = new Map<string, SetKeeper>();
  const taken: Promise<void>[] = [];
  effect(() => {
    const open = new Map(sets.all.value.map((set) => [set.id, set]));
    for (const [id, keeper] of keepers) {
      if (open.has(id)) continue;
      keeper.stop();
      keepers.delete(id);
    }
    for (const [id, set] of open) {
      if (keepers.has(id)) continue;
      const keeper = new SetKeeper(set, store);
      keepers.set(id, keeper);
      // What it restores and keeps is no reason to look for sets anew.
      untracked(() => taken.push(keeper.start()));
    }
  });
  return Promise.all(taken);
}

/** Keeps one open set in this browser. */
class SetKeeper {
  private readonly set: OpenSet;
  private readonly store: DocumentStore;
  private readonly ended = new AbortController();
  private stopFollowing = (): void => undefined;
  private revision = 0;
  private seen: readonly unknown[] = [];
  private text = '';
  private textRevision = -1;
  private revisionNow = 0;
  private revisionOnDisk = 0;
  private historyOnDisk: unknown;
  private isRestoring = false;
  private isLoaded = false;
  private isWriting = false;
  private pause: ReturnType<typeof setTimeout> | undefined;
  private readonly failing = { now: false, disk: false };

  constructor(set: OpenSet, store: DocumentStore) {
    this.set = set;
    this.store = store;
  }

  /** Everything whose change is worth keeping. That the page has read what is written is no change of a person's. */
  private content(): readonly unknown[] {
    const { writtenWithDraft, fileName, savedWritten, stationIndex, understood } = this.set;
    const now = writtenWithDraft.value;
    const lastValid = understood.value?.written;
    return [now, fileName.value, savedWritten.value, stationIndex.value, lastValid === now ? undefined : lastValid];
  }

  /** Take up where this browser left off, and keep every change from now on. @returns resolves once all of it is there. */
  start(): Promise<void> {
    const first = this.readFirst();
    if (first) this.restore(first);
    this.revisionNow = this.revision;
    this.seen = this.content();
    this.stopFollowing = effect(() => {
      const now = this.content();
      if (this.isRestoring) this.seen = now;
      if (now.every((value, i) => value === this.seen[i])) return;
      this.seen = now;
      this.revision++;
      this.keep();
    });
    const loaded = this.load();
    const { signal } = this.ended;
    const leave = () => this.keepOnLeaving();
    addEventListener('pagehide', leave, { signal });
    document.addEventListener('freeze', leave, { signal });
    document.addEventListener('visibilitychange', () => document.hidden && leave(), { signal });
    addEventListener('pageshow', ({ persisted }) => persisted && this.catchUp(), { signal });
    this.store.watch(this.set.id, (theirs) => this.changedInAnotherTab(theirs), signal);
    return loaded;
  }

  /** What was changed last is kept; nothing after it. */
  stop(): void {
    this.keepOnLeaving();
    this.stopFollowing();
    this.ended.abort();
  }

  /** A page that the browser brings back whole was not told what other tabs did in the meantime. */
  private catchUp(): void {
    try {
      const found = this.store.readNow(this.set.id);
      if (found !== null && found !== this.text) this.changedInAnotherTab(found);
    } catch {
      this.report('now', false);
    }
  }

  private currentText(): string {
    if (this.textRevision === this.revision) return this.text;
    const now = this.set.writtenWithDraft.peek();
    const lastValid = this.set.understood.peek()?.written;
    const kept: Kept = {
      revision: this.revision,
      written: now,
      fileName: this.set.fileName.peek(),
      isSaved: this.set.savedWritten.peek() === now,
      ...(lastValid !== undefined && lastValid !== now ? { lastValid } : {}),
      station: this.set.stationIndex.peek(),
      tab,
    };
    this.text = keptText(kept);
    this.textRevision = this.revision;
    return this.text;
  }

  private keep(): void {
    clearTimeout(this.pause);
    if (this.text.length < SHORT) this.keepAll();
    else this.pause = setTimeout(() => this.keepAll(), PAUSE_MS);
  }

  private keepAll(): void {
    this.keepNow();
    void this.keepOnDisk();
  }

  /** Leaving cannot wait for what is still being written. */
  private keepOnLeaving(): void {
    this.keepNow();
    if (this.isLoaded && (this.revisionOnDisk < this.revision || this.isHistoryBehind()))
      void this.writeToDisk().catch(() => undefined);
  }

  private keepNow(): void {
    clearTimeout(this.pause);
    if (this.revisionNow === this.revision) return;
    try {
      this.store.writeNow(this.set.id, this.currentText());
      this.revisionNow = this.revision;
      this.report('now', true);
    } catch {
      this.report('now', false);
    }
  }

  /** Until the disk has the latest; while it writes, changes gather. */
  private async keepOnDisk(): Promise<void> {
    if (this.isWriting || !this.isLoaded) return;
    this.isWriting = true;
    try {
      while (this.revisionOnDisk < this.revision) await this.writeToDisk();
      this.report('disk', true);
    } catch {
      this.report('disk', false);
    } finally {
      this.isWriting = false;
    }
  }

  private isHistoryBehind(): boolean {
    return this.revision > 0 && this.historyOnDisk !== this.set.historyWithDraft.peek();
  }

  private async writeToDisk(): Promise<void> {
    const writing = this.revision;
    const history = this.set.historyWithDraft.peek();
    await this.store.write(this.set.id, {
      text: this.currentText(),
      ...(this.isHistoryBehind() ? { history: keptHistory(history, this.set.savedWritten.peek()) } : {}),
    });
    this.revisionOnDisk = writing;
    this.historyOnDisk = history;
  }

  private readFirst(): Kept | undefined {
    let found: string | null;
    try {
      found = this.store.readNow(this.set.id);
    } catch {
      this.report('now', false);
      return undefined;
    }
    const kept = found === null ? undefined : readKept(found);
    if (found !== null && !kept) this.setAside(found);
    return kept;
  }

  /** What only the disk has: the latest changes before the browser was killed, and the steps to undo. */
  private async load(): Promise<void> {
    const first = this.revision;
    try {
      const { text: found, history } = await this.store.read(this.set.id);
      const kept = found === undefined ? undefined : readKept(found);
      this.revisionOnDisk = kept?.revision ?? 0;
      if (kept && kept.revision > first) {
        if (this.revision === first) this.restore(kept);
        else {
          this.revision = Math.max(this.revision, kept.revision) + 1;
          this.offerLater(kept);
        }
      }
      const continued = this.revision > 0 ? continueHistory(history, this.set.historyWithDraft.peek()) : undefined;
      if (continued) this.whileRestoring(() => this.set.restoreHistory(continued.history, continued.saved));
      this.historyOnDisk = this.set.historyWithDraft.peek();
    } catch {
      this.report('disk', false);
    }
    this.isLoaded = true;
    void this.keepOnDisk();
  }

  private whileRestoring(act: () => void): void {
    this.isRestoring = true;
    act();
    this.isRestoring = false;
  }

  private restore(kept: Kept): void {
    this.revision = kept.revision;
    this.whileRestoring(() => {
      // Read first, so that it is what the figures are of.
      if (kept.lastValid !== undefined) {
        this.set.remember(kept.lastValid);
        this.set.beginWith(kept.lastValid, kept.fileName, false);
      }
      this.set.remember(kept.written);
      this.set.beginWith(kept.written, kept.fileName, kept.isSaved);
      this.set.chooseStation(kept.station);
    });
  }

  private offerLater(kept: Kept): void {
    tell(texts.laterChanges, {
      key: 'later-changes',
      of: this.set.id,
      stays: true,
      action: { label: texts.showLater, run: () => this.set.replace(kept.written, kept.fileName, texts.laterLabel) },
    });
  }

  /** What cannot be read is not written over: it moves aside and can be saved to a file. */
  private setAside(unreadable: string): void {
    try {
      this.store.setAside(this.set.id, unreadable);
    } catch {
      this.report('now', false);
    }
    tell(texts.unreadable, {
      of: this.set.id,
      stays: true,
      action: { label: texts.saveUnreadable, run: () => download('faintwave-kept-aside.txt', unreadable) },
    });
  }

  /** Says once what is not kept, until it is kept again. */
  private report(place: 'now' | 'disk', works: boolean): void {
    if (this.failing[place] === !works) return;
    this.failing[place] = !works;
    if (!this.failing.now && !this.failing.disk) {
      dismiss('storage', this.set.id);
      return;
    }
    const what = this.failing.now && this.failing.disk ? texts.keepsNothing : texts.keepsPart;
    tell(what, {
      key: 'storage',
      of: this.set.id,
      stays: true,
      action: {
        label: texts.saveNow,
        run: () => download(this.set.fileName.peek(), writeText(this.set.written.peek())),
      },
    });
  }

  private changedInAnotherTab(theirs: string): void {
    const kept = readKept(theirs);
    if (!kept || kept.tab === tab) return;
    // What this tab changes next is later than what the other one did.
    if (this.revisionNow === this.revision) this.revisionNow = Math.max(this.revision, kept.revision);
    if (this.revisionOnDisk === this.revision) this.revisionOnDisk = Math.max(this.revision, kept.revision);
    this.revision = Math.max(this.revision, kept.revision);
    tell(texts.otherTab, {
      key: 'another-tab',
      of: this.set.id,
      stays: true,
      action: {
        label: texts.showOther,
        run: () => this.set.replace(kept.written, kept.fileName, texts.otherLabel),
      },
    });
  }
}
