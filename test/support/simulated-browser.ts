import { autosave, type Keeping } from '../../src/app/state/autosave.ts';
import type { DocumentStore, StoredDocument } from '../../src/app/state/document-store.ts';
import { DEMO } from '../../src/app/state/examples.ts';
import { type Kept, readKept } from '../../src/app/state/kept.ts';
import { createOpenSets, type OpenSets } from '../../src/app/state/open-sets.ts';
import { createSetWorkers } from '../../src/app/state/set-workers.ts';
import { createShelf, type Shelf } from '../../src/app/state/shelf/shelf.ts';
import type { ShelfEntry } from '../../src/app/state/shelf/shelf-entry.ts';
import type { SetVersion } from '../../src/app/state/shelf/versions.ts';
import type { OpenWriterLock } from '../../src/app/state/writer-lock.ts';

/** The slowest that the disk is, ms. */
export const SLOWEST = 400;
/** A change is confirmed by then, ms. */
export const CONFIRMED = 1000;

interface Stored extends StoredDocument {
  readonly versions: readonly SetVersion[];
}

/** A browser with its storage. What is written before the call returns reaches the disk only seconds later. */
export class Browser {
  readonly disk = new Map<string, Stored>();
  readonly logs = new Map<string, string>();
  private readonly nearOnDisk = new Map<string, string>();
  near = new Map<string, string>();
  tabs: Tab[] = [];
  isDiskFailing = false;
  isNearFailing = false;
  latency = 50;
  private busyUntil = 0;
  /** How often it was started again: what one run has not done yet, the next does not. */
  private run = 0;
  private named = 0;
  private readonly writers = new Map<string, { readonly tab: Tab; readonly lost: () => void }>();

  /** Of two tabs with changes of the same number the one whose name comes later wins: now the older, now the newer. */
  nextName(): string {
    const count = this.named++;
    return `${(7 * count + 3) % 10}-${count}`;
  }

  store(tab: Tab): DocumentStore {
    const slow = async <T>(act: () => T): Promise<T> => {
      // A page that is gone asks for nothing more.
      if (!tab.isThere) return new Promise<never>(() => {});
      const isLate = this.isDiskFailing;
      const { run } = this;
      // What is asked for later is not done earlier: transactions of a database keep their order.
      this.busyUntil = Math.max(this.busyUntil, Date.now() + this.latency);
      await new Promise((resolve) => setTimeout(resolve, this.busyUntil - Date.now()));
      if (isLate) throw new DOMException('full', 'QuotaExceededError');
      // A killed browser writes nothing; what a closed tab has asked for is done.
      if (run !== this.run) return new Promise<never>(() => {});
      return act();
    };
    return {
      readNow: (id) => this.near.get(id) ?? null,
      writeNow: (id, text) => {
        if (this.isNearFailing) throw new DOMException('full', 'QuotaExceededError');
        this.near.set(id, text);
        const { run } = this;
        setTimeout(() => run === this.run && this.nearOnDisk.set(id, text), 3000);
      },
      idsNow: () => [...this.near.keys()],
      forgetNow: (id, text) => void (this.near.get(id) === text && this.near.delete(id)),
      setAside: () => undefined,
      readText: (id) => slow(() => this.disk.get(id)?.text),
      read: (id) => slow(() => this.disk.get(id) ?? {}),
      write: (id, { version, ...rest }) =>
        slow(() => {
          const before = this.disk.get(id) ?? { versions: [] };
          this.disk.set(id, { ...before, ...rest, versions: [...before.versions, ...(version ? [version] : [])] });
        }),
      entries: () => slow(() => [...this.disk.values()].flatMap(({ entry }): ShelfEntry[] => (entry ? [entry] : []))),
      versions: (id) => slow(() => this.disk.get(id)?.versions ?? []),
      log: (id) => slow(() => this.logs.get(id)),
      changeLog: (id, change) =>
        slow(() => {
          const text = change(this.logs.get(id));
          this.logs.set(id, text);
          return text;
        }),
      remove: (id, upTo = Number.POSITIVE_INFINITY) =>
        slow(() => {
          const revisionOf = (text: string | undefined) => readKept(text ?? '')?.revision ?? 0;
          if (revisionOf(this.disk.get(id)?.text) > upTo || revisionOf(this.near.get(id)) > upTo) return;
          this.disk.delete(id);
          this.near.delete(id);
        }),
    };
  }

  lock(tab: Tab): OpenWriterLock {
    return (id, inUse) => {
      const hold = () => this.writers.set(id, { tab, lost: inUse });
      const isFree = () => !this.writers.get(id)?.tab.isThere;
      if (isFree()) hold();
      return {
        take: async () => {
          await new Promise((resolve) => setTimeout(resolve, 2));
          if (!isFree()) this.writers.get(id)?.lost();
          hold();
        },
        isHeld: () => this.writers.get(id)?.tab === tab,
        release: () => void (this.writers.get(id)?.tab === tab && this.writers.delete(id)),
      };
    };
  }

  kill(): void {
    this.run++;
    for (const tab of this.tabs) tab.end();
    this.tabs = [];
    this.near = new Map(this.nearOnDisk);
  }
}

export class Tab {
  isThere = true;
  readonly name: string;
  readonly sets: OpenSets;
  readonly shelf: Shelf;
  readonly keeping: Keeping;
  readonly heard: ((id: string, text: string) => void)[] = [];
  private readonly leaving: (() => void)[] = [];

  constructor(browser: Browser, id: string) {
    this.name = browser.nextName();
    this.comeForward();
    const workers = createSetWorkers(() => ({ onmessage: null, onerror: null, postMessage: () => undefined }));
    this.sets = createOpenSets(workers, { id, description: JSON.parse(DEMO.text), fileName: DEMO.file });
    const tools = {
      store: browser.store(this),
      openLock: browser.lock(this),
      now: Date.now,
      tabs: {
        own: this.name,
        tell: (told: string, text: string) => {
          for (const other of browser.tabs) if (other !== this) setTimeout(() => other.hear(told, text), 3);
        },
        hear: (wanted: string, changed: (text: string) => void, signal: AbortSignal) => {
          this.heard.push((told, text) => told === wanted && !signal.aborted && changed(text));
        },
        tellOfShelf: () => undefined,
        hearOfShelf: () => undefined,
      },
    };
    this.keeping = autosave(this.sets, tools);
    this.shelf = createShelf({ sets: this.sets, keeping: this.keeping, ...tools }, DEMO);
    browser.tabs.push(this);
  }

  /** What begins to listen to the page from now on listens to this one. */
  comeForward(): this {
    Object.assign(globalThis, {
      addEventListener: (event: string, act: () => void) => {
        if (event === 'pagehide') this.leaving.push(act);
      },
    });
    return this;
  }

  hear(id: string, text: string): void {
    if (this.isThere) for (const hear of this.heard) hear(id, text);
  }

  /** Out of sight, but whole, to be brought back. */
  putAway(): void {
    for (const act of this.leaving) act();
  }

  close(browser: Browser): void {
    this.putAway();
    this.isThere = false;
    browser.tabs = browser.tabs.filter((tab) => tab !== this);
  }

  end(): void {
    this.isThere = false;
  }
}

/** What a page finds besides its storage. */
export const aroundPage = (): object => ({
  document: { addEventListener: () => undefined, hidden: false },
  sessionStorage: { setItem: () => undefined },
});

export const nameIn = (written: unknown): string => (written as { name: string }).name;

/** Every state of a set that the shelf gives back: as it is, and its versions. */
export const statesOf = (browser: Browser, id: string): readonly string[] =>
  statesIn(browser.disk.get(id), browser.near.get(id));

/** The same of what the disk alone has. */
export const statesOnDisk = (browser: Browser, id: string): readonly string[] =>
  statesIn(browser.disk.get(id), undefined);

function statesIn(stored: Stored | undefined, near: string | undefined): readonly string[] {
  const texts = [near, stored?.text];
  const kept = texts
    .map((text) => (text === undefined ? undefined : readKept(text)))
    .filter((one) => one !== undefined);
  const latest = kept.reduce<Kept | undefined>((a, b) => (a && a.revision >= b.revision ? a : b), undefined);
  return [
    ...(latest ? [nameIn(latest.written)] : []),
    ...(stored?.versions ?? []).map(({ written }) => nameIn(written)),
  ];
}
