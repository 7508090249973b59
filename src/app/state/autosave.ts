import { effect, untracked } from '@preact/signals';
import { writeText } from '../../engine/index.ts';
import { storageWords as texts } from '../../outputs/words/index.ts';
import type { DocumentStore, StoredDocument } from './document-store.ts';
import { download } from './download.ts';
import { continueHistory, type Kept, keptHistory, keptText, readKept, stateName } from './kept.ts';
import { dismiss, tell } from './notices.ts';
import type { OpenSet, OpenSets } from './open-sets.ts';
import { Retry } from './retry.ts';
import { entryOf } from './shelf/shelf-entry.ts';
import { isVersionDue, type SetVersion } from './shelf/versions.ts';
import type { Tabs } from './tabs.ts';
import type { OpenWriterLock, WriterLock } from './writer-lock.ts';

/** A longer text is not written at every key, but after a pause and on leaving. */
const SHORT = 100_000;
const PAUSE_MS = 200;

/** What keeping goes by. */
export interface KeepingTools {
  readonly store: DocumentStore;
  readonly tabs: Tabs;
  readonly openLock: OpenWriterLock;
  /** ms since 1970. */
  readonly now: () => number;
}

/** How the open sets are kept in this browser. */
export interface Keeping {
  /** Fulfilled once the sets that were open at first have all that was kept, the steps to undo too. */
  readonly ready: Promise<unknown>;
  /** The set that will be opened under this id goes on from here; of revision 0: it is new, and kept from the beginning. */
  readonly goOnFrom: (id: string, kept: Kept) => void;
  /** An open set as it would be kept now. */
  readonly keptOf: (id: string) => Kept | undefined;
  /** @returns whether the disk has all of it once what is being written is written */
  readonly isOnDisk: (id: string) => Promise<boolean>;
}

/** Take up each open set where this browser left it, and keep every change from now on. Called once, before the page is drawn. */
export function autosave(sets: OpenSets, tools: KeepingTools): Keeping {
  const keepers = new Map<string, SetKeeper>();
  const beginnings = new Map<string, Kept>();
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
      const keeper = new SetKeeper(set, tools, beginnings.get(id));
      beginnings.delete(id);
      keepers.set(id, keeper);
      // What it restores and keeps is no reason to look for sets anew.
      untracked(() => taken.push(keeper.start()));
    }
  });
  return {
    ready: Promise.all(taken),
    goOnFrom: (id, kept) => void beginnings.set(id, kept),
    keptOf: (id) => keepers.get(id)?.current(),
    isOnDisk: async (id) => (await keepers.get(id)?.isOnDisk()) ?? true,
  };
}

type Content = readonly [written: unknown, name: string, saved: unknown, station: unknown, lastValid: unknown];

/** That the page has read what is written is no change of a person's. */
const isChange = (before: Content, now: Content): boolean =>
  now.some((value, i) => value !== before[i] && !(i === 4 && value === undefined));

/** Keeps one open set in this browser. */
class SetKeeper {
  private readonly set: OpenSet;
  private readonly tools: KeepingTools;
  private readonly beginning: Kept | undefined;
  private readonly lock: WriterLock;
  private readonly ended = new AbortController();
  private stopFollowing = (): void => undefined;
  private revision = 0;
  /** The tab that made the present state. */
  private author = '';
  /** The state taken from elsewhere before this tab's own changes. */
  private base: string | undefined;
  private text = '';
  private textRevision = -1;
  private revisionNow = 0;
  private revisionOnDisk = 0;
  private historyOnDisk: unknown;
  private isRestoring = false;
  /** Another tab is keeping the present state. */
  private isKeptElsewhere = false;
  private isLoaded = false;
  /** The revision that the page began with. */
  private first = 0;
  /** Reading the disk first, then writing there. */
  private readonly again = new Retry(() => (this.isLoaded ? this.keepOnDisk() : void this.tryLoading()));
  private writing: Promise<void> | undefined;
  private pause: ReturnType<typeof setTimeout> | undefined;
  private version: SetVersion | undefined;
  private lastVersion: number | undefined;
  private lastChange: number;
  private readonly failing = { now: false, disk: false };

  constructor(set: OpenSet, tools: KeepingTools, beginning: Kept | undefined) {
    this.set = set;
    this.tools = tools;
    this.beginning = beginning;
    this.lastChange = tools.now();
    this.lock = tools.openLock(set.id, () => tell(texts.otherTab, { key: 'another-tab', of: set.id }));
  }

  /** Everything whose change is worth keeping. */
  private content(): Content {
    const { writtenWithDraft, fileName, savedWritten, stationIndex, lastValidSet } = this.set;
    const now = writtenWithDraft.value;
    const lastValid = lastValidSet.value?.written;
    return [now, fileName.value, savedWritten.value, stationIndex.value, lastValid === now ? undefined : lastValid];
  }

  /** Take up where this browser left off, and keep every change from now on. @returns resolves once all of it is there. */
  start(): Promise<void> {
    const first = this.beginning ?? this.readFirst();
    if (first) this.restore(first);
    if (this.text !== '') this.textRevision = this.revision;
    this.revisionNow = this.revision;
    let seen = this.content();
    this.stopFollowing = effect(() => {
      const before = seen;
      seen = this.content();
      if (!this.isRestoring && isChange(before, seen)) untracked(() => this.changed(before[0], seen[0]));
    });
    if (this.beginning) this.keepBeginning(this.beginning);
    const loaded = this.load();
    const { signal } = this.ended;
    const leave = () => this.keepOnLeaving();
    addEventListener('pagehide', leave, { signal });
    document.addEventListener('freeze', leave, { signal });
    document.addEventListener('visibilitychange', () => document.hidden && leave(), { signal });
    addEventListener('pageshow', ({ persisted }) => persisted && this.catchUp(), { signal });
    this.tools.tabs.hear(this.set.id, (theirs) => this.changedInAnotherTab(theirs), signal);
    return loaded;
  }

  /** What was changed last is kept; nothing after it. */
  stop(): void {
    this.keepOnLeaving();
    this.stopFollowing();
    const loaded = this.isLoaded || !this.again.isWaiting ? Promise.resolve() : this.tryLoading();
    this.ended.abort();
    this.again.stop();
    void loaded
      .then(() => this.isOnDisk())
      .then((isThere) => {
        this.lock.release();
        // The first place is small: it holds what is open.
        if (isThere && !this.isKeptElsewhere) this.tools.store.forgetNow(this.set.id, this.text);
      });
  }

  async isOnDisk(): Promise<boolean> {
    await this.writing?.catch(() => undefined);
    return this.isLoaded && this.revisionOnDisk >= this.revision;
  }

  private changed(before: unknown, now: unknown): void {
    const time = this.tools.now();
    if (before !== now) {
      if (isVersionDue(this.lastVersion, this.lastChange, time)) {
        this.version = { at: this.lastChange, written: before };
        this.lastVersion = time;
      }
      this.lastChange = time;
    }
    this.keepChange();
  }

  private keepChange(): void {
    this.revision++;
    this.author = this.tools.tabs.own;
    this.isKeptElsewhere = false;
    this.keep();
  }

  /** A new set is kept at once; one from the disk is put in the first place too, where a reload looks first. */
  private keepBeginning(kept: Kept): void {
    if (kept.revision === 0) {
      this.keepChange();
      return;
    }
    const text = keptText(kept);
    try {
      this.tools.store.writeNow(this.set.id, text);
      this.text = text;
      this.textRevision = this.revision;
    } catch {
      this.report('now', false);
    }
  }

  /** A page that the browser brings back whole was not told what other tabs did in the meantime. */
  private catchUp(): void {
    try {
      const found = this.tools.store.readNow(this.set.id);
      if (found !== null && found !== this.text) this.changedInAnotherTab(found);
    } catch {
      this.report('now', false);
    }
  }

  current(): Kept {
    const now = this.set.writtenWithDraft.peek();
    const lastValid = this.set.lastValidSet.peek()?.written;
    return {
      revision: this.revision,
      written: now,
      fileName: this.set.fileName.peek(),
      isSaved: this.set.savedWritten.peek() === now,
      ...(lastValid !== undefined && lastValid !== now ? { lastValid } : {}),
      station: this.set.stationIndex.peek(),
      tab: this.tools.tabs.own,
      ...(this.base === undefined ? {} : { base: this.base }),
    };
  }

  private currentText(): string {
    if (this.textRevision === this.revision) return this.text;
    this.text = keptText(this.current());
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
    this.keepOnDisk();
  }

  /** Leaving cannot wait for what is still being written. */
  private keepOnLeaving(): void {
    this.keepNow();
    // What the disk has may be later: what was changed here goes beside it.
    if (!this.isLoaded && this.revision > this.first) this.keepVersion(this.set.writtenWithDraft.peek());
    if (!this.isLoaded || (this.revisionOnDisk >= this.revision && !this.isHistoryBehind())) return;
    const before = this.writing;
    // A page that was only hidden goes on.
    this.whileWriting(
      Promise.all([before, this.writeToDisk()]).then(() => undefined),
      () => this.keepOnDisk(),
    );
  }

  private keepNow(): void {
    clearTimeout(this.pause);
    if (this.revisionNow === this.revision) return;
    const text = this.currentText();
    this.tools.tabs.tell(this.set.id, text);
    try {
      this.tools.store.writeNow(this.set.id, text);
      this.revisionNow = this.revision;
      this.report('now', true);
    } catch {
      this.report('now', false);
    }
  }

  private keepOnDisk(): void {
    if (!this.isLoaded && this.again.isWaiting) {
      this.again.begin();
      void this.tryLoading();
    }
    if (this.writing || !this.isLoaded) return;
    this.whileWriting(this.writeUntilDone());
  }

  private whileWriting(done: Promise<void>, then: () => void = () => undefined): void {
    this.writing = done;
    const over = () => {
      // Leaving may have begun another since.
      if (this.writing !== done) return;
      this.writing = undefined;
      then();
    };
    done.then(over, over);
  }

  /** Until the disk has the latest; while it writes, changes gather. */
  private async writeUntilDone(): Promise<void> {
    await this.onDisk(async () => {
      while (this.revisionOnDisk < this.revision) {
        if (!this.lock.isHeld()) await this.lock.take();
        await this.writeToDisk();
      }
      this.again.begin();
      this.report('disk', true);
    });
  }

  /** Something done with the disk, until it works: at once where something was changed while it failed, else later. */
  private async onDisk<T>(act: () => Promise<T>): Promise<T | undefined> {
    this.again.stop();
    let tried: number;
    do {
      tried = this.revision;
      try {
        return await act();
      } catch {
        this.report('disk', false);
      }
    } while (this.revision !== tried);
    if (!this.ended.signal.aborted) this.again.later();
    return undefined;
  }

  private isHistoryBehind(): boolean {
    return this.revision > 0 && this.historyOnDisk !== this.set.historyWithDraft.peek();
  }

  private async writeToDisk(): Promise<void> {
    const { id } = this.set;
    const writing = this.revision;
    const history = this.set.historyWithDraft.peek();
    const kept = { written: this.set.writtenWithDraft.peek(), fileName: this.set.fileName.peek() };
    const { version } = this;
    // An entry that is there already may have been deleted since.
    const isBehind = this.revisionOnDisk < writing;
    await this.tools.store.write(id, {
      ...(isBehind ? { text: this.currentText(), entry: entryOf(id, kept, this.lastChange) } : {}),
      ...(this.isHistoryBehind() ? { history: keptHistory(history, this.set.savedWritten.peek()) } : {}),
      ...(version ? { version } : {}),
    });
    this.revisionOnDisk = Math.max(this.revisionOnDisk, writing);
    this.historyOnDisk = history;
    if (this.version === version) this.version = undefined;
  }

  private readFirst(): Kept | undefined {
    let found: string | null;
    try {
      found = this.tools.store.readNow(this.set.id);
    } catch {
      this.report('now', false);
      return undefined;
    }
    const kept = found === null ? undefined : readKept(found);
    if (found !== null && !kept) this.setAside(found);
    if (found !== null && kept) this.text = found;
    return kept;
  }

  /** What only the disk has: the latest changes before the browser was killed, and the steps to undo. */
  private load(): Promise<void> {
    this.first = this.revision;
    return this.tryLoading();
  }

  /** Until the disk has been read nothing is written: what is there may be later than what the page began with. */
  private async tryLoading(): Promise<void> {
    const found = await this.onDisk(() => this.tools.store.read(this.set.id));
    if (!found) return;
    this.again.begin();
    try {
      this.takeFromDisk(found);
    } catch {
      this.report('disk', false);
    }
    this.isLoaded = true;
    // What another tab has is that tab's to write, and may be later already than what was found.
    if (this.author !== this.tools.tabs.own && !this.lock.isHeld()) {
      this.isKeptElsewhere = true;
      this.revisionOnDisk = Math.max(this.revisionOnDisk, this.revision);
    }
    this.keepOnDisk();
  }

  private takeFromDisk({ text, history }: StoredDocument): void {
    const kept = text === undefined ? undefined : readKept(text);
    const onDisk = kept?.revision ?? 0;
    // What is followed in another tab is that tab's to write.
    this.revisionOnDisk = this.isKeptElsewhere ? Math.max(this.revisionOnDisk, onDisk) : onDisk;
    if (kept && onDisk > this.first && !this.isKeptElsewhere) {
      if (this.revision === this.first) this.restore(kept);
      else {
        this.revision = Math.max(this.revision, kept.revision) + 1;
        this.keepVersion(kept.written);
        this.offerLater(kept);
      }
    }
    const continued = this.revision > 0 ? continueHistory(history, this.set.historyWithDraft.peek()) : undefined;
    if (continued) this.whileRestoring(() => this.set.restoreHistory(continued.history, continued.saved));
    this.historyOnDisk = this.set.historyWithDraft.peek();
  }

  private whileRestoring(act: () => void): void {
    this.isRestoring = true;
    try {
      act();
    } finally {
      this.isRestoring = false;
    }
  }

  private restore(kept: Kept): void {
    this.take(kept);
    const begin = (written: unknown, isSaved: boolean) => {
      if (this.set.whole.peek() !== written) this.set.remember(written);
      this.set.beginWith(written, kept.fileName, isSaved);
    };
    this.whileRestoring(() => {
      // Read first, so that it is what the figures are of.
      if (kept.lastValid !== undefined) begin(kept.lastValid, false);
      begin(kept.written, kept.isSaved);
      this.set.chooseStation(kept.station);
    });
  }

  /** From now on this is the state that changes are made to. */
  private take(kept: Kept): void {
    this.revision = kept.revision;
    this.author = kept.tab;
    this.base = stateName(kept);
  }

  private offerLater(kept: Kept): void {
    tell(texts.laterChanges, {
      key: 'later-changes',
      of: this.set.id,
      stays: true,
      action: {
        label: texts.showLater,
        run: () => this.set.replace(kept.written, kept.fileName, texts.laterLabel, kept.isSaved),
      },
    });
  }

  /** What cannot be read is not written over: it moves aside and can be saved to a file. */
  private setAside(unreadable: string): void {
    try {
      this.tools.store.setAside(this.set.id, unreadable);
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
        run: () => download(this.set.fileName.peek(), writeText(this.set.whole.peek())),
      },
    });
  }

  /** The set here becomes what it is there; of two changes made at the same time the other becomes a version. */
  private changedInAnotherTab(theirs: string): void {
    const kept = readKept(theirs);
    const { own } = this.tools.tabs;
    if (!kept || kept.tab === own) return;
    const isOwn = this.author === own;
    const isLater = kept.revision > this.revision || (kept.revision === this.revision && kept.tab > this.author);
    if (!isLater) {
      // That tab may have been opened before what is here was on the disk: it hears of it, and does not write over it.
      if (isOwn) {
        this.keepVersion(kept.written);
        this.keepChange();
      }
      return;
    }
    const sawMine = kept.base === stateName({ revision: this.revision, tab: own });
    if (isOwn && !sawMine) this.keepVersion(this.set.writtenWithDraft.peek());
    clearTimeout(this.pause);
    this.take(kept);
    this.text = theirs;
    this.textRevision = this.revision;
    this.isKeptElsewhere = true;
    this.revisionNow = this.revision;
    this.revisionOnDisk = this.revision;
    this.whileRestoring(() => {
      this.set.remember(kept.written);
      this.set.follow(kept.written, kept.fileName, kept.isSaved);
    });
  }

  private keepVersion(written: unknown): void {
    this.tools.store
      .write(this.set.id, { version: { at: this.tools.now(), written } })
      .catch(() => this.report('disk', false));
  }
}
