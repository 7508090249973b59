import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readLog } from '../../engine/index.ts';
import type { Reading } from '../description/stand-ins.ts';
import { autosave, type Keeping } from './autosave.ts';
import type { DocumentStore, StoredDocument } from './document-store.ts';
import { DEMO } from './examples.ts';
import { type Kept, readKept } from './kept.ts';
import { notices } from './notices.ts';
import { createOpenSets, type OpenSets } from './open-sets.ts';
import { createSetWorkers } from './set-workers.ts';
import { withEntry } from './shelf/log-text.ts';
import { createShelf, type Shelf } from './shelf/shelf.ts';
import type { ShelfEntry } from './shelf/shelf-entry.ts';
import type { SetVersion } from './shelf/versions.ts';
import type { OpenWriterLock } from './writer-lock.ts';

/** The slowest that the disk of this test is, ms. */
const SLOWEST = 400;
/** A change is confirmed by then. */
const CONFIRMED = 1000;

interface Stored extends StoredDocument {
  readonly versions: readonly SetVersion[];
}

/** A browser with its storage. What is written before the call returns reaches the disk only seconds later. */
class Browser {
  readonly disk = new Map<string, Stored>();
  readonly logs = new Map<string, string>();
  private readonly nearOnDisk = new Map<string, string>();
  near = new Map<string, string>();
  tabs: Tab[] = [];
  isDiskFailing = false;
  isNearFailing = false;
  latency = 50;
  private readonly writers = new Map<string, { readonly tab: Tab; readonly lost: () => void }>();

  store(tab: Tab): DocumentStore {
    const slow = async <T>(act: () => T): Promise<T> => {
      const isLate = this.isDiskFailing;
      await new Promise((resolve) => setTimeout(resolve, this.latency));
      if (isLate) throw new DOMException('full', 'QuotaExceededError');
      // A killed browser writes nothing; what a closed tab has asked for is done.
      if (tab.isKilled) return new Promise<never>(() => {});
      return act();
    };
    return {
      readNow: (id) => this.near.get(id) ?? null,
      writeNow: (id, text) => {
        if (this.isNearFailing) throw new DOMException('full', 'QuotaExceededError');
        this.near.set(id, text);
        setTimeout(() => !tab.isKilled && this.nearOnDisk.set(id, text), 3000);
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
      remove: (id) => slow(() => void this.disk.delete(id)),
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
    for (const tab of this.tabs) tab.end();
    this.tabs = [];
    this.near = new Map(this.nearOnDisk);
  }
}

let tabCount = 0;

class Tab {
  isThere = true;
  isKilled = false;
  readonly name = `tab${tabCount++}`;
  readonly sets: OpenSets;
  readonly shelf: Shelf;
  readonly keeping: Keeping;
  readonly heard: ((id: string, text: string) => void)[] = [];
  private readonly leaving: (() => void)[] = [];

  constructor(browser: Browser, id: string) {
    vi.stubGlobal('addEventListener', (event: string, act: () => void) => {
      if (event === 'pagehide') this.leaving.push(act);
    });
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

  hear(id: string, text: string): void {
    if (this.isThere) for (const hear of this.heard) hear(id, text);
  }

  close(browser: Browser): void {
    for (const act of this.leaving) act();
    this.isThere = false;
    browser.tabs = browser.tabs.filter((tab) => tab !== this);
  }

  end(): void {
    this.isThere = false;
    this.isKilled = true;
  }
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('document', { addEventListener: () => undefined, hidden: false });
  vi.stubGlobal('sessionStorage', { setItem: () => undefined });
});
afterEach(() => {
  notices.value = [];
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const nameIn = (written: unknown): string => (written as { name: string }).name;

/** Every state of a set that the shelf gives back: as it is, and its versions. */
function statesOf(browser: Browser, id: string): readonly string[] {
  const stored = browser.disk.get(id);
  const texts = [browser.near.get(id), stored?.text];
  const kept = texts
    .map((text) => (text === undefined ? undefined : readKept(text)))
    .filter((one) => one !== undefined);
  const latest = kept.reduce<Kept | undefined>((a, b) => (a && a.revision >= b.revision ? a : b), undefined);
  return [
    ...(latest ? [nameIn(latest.written)] : []),
    ...(stored?.versions ?? []).map(({ written }) => nameIn(written)),
  ];
}

/** Names carry the number of the edit: a later one holds the earlier. */
const numberOf = (name: string): number => Number(/^edit (\d+)$/.exec(name)?.[1] ?? -1);

const action = fc.oneof(
  { weight: 8, arbitrary: fc.record({ act: fc.constant('edit' as const), tab: fc.nat(1) }) },
  { weight: 4, arbitrary: fc.record({ act: fc.constant('wait' as const), ms: fc.nat(1800) }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('open' as const), tab: fc.nat(1), which: fc.nat(3) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('add' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('close' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('second tab' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('disk' as const), fails: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('near' as const), fails: fc.boolean() }) },
  {
    weight: 2,
    arbitrary: fc.record({ act: fc.constant('latency' as const), ms: fc.integer({ min: 1, max: SLOWEST }) }),
  },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('kill' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('upgrade' as const) }) },
);

/** Actions of each of three long runs, which a person asks for: about a third of them are edits. */
const LONG_RUN = Number(process.env.FAINTWAVE_KEEPING_ACTIONS ?? 0);
const LENGTH = LONG_RUN > 0 ? { minLength: LONG_RUN, maxLength: LONG_RUN } : { minLength: 10, maxLength: 60 };
const RUNS = LONG_RUN > 0 ? 3 : 60;

it('no change older than a second is lost by kills, closing, upgrades, two tabs, other sets or storage that fails and says so', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(action, { ...LENGTH, size: 'max' }), async (actions) => {
      notices.value = [];
      const browser = new Browser();
      let edits: { readonly id: string; readonly number: number; readonly at: number }[] = [];
      let count = 0;
      let failedUntil = Number.NEGATIVE_INFINITY;
      let focus = 'first';
      const settle = (ms: number) => vi.advanceTimersByTimeAsync(ms);
      const openTab = async (): Promise<Tab> => {
        const tab = new Tab(browser, focus);
        await settle(SLOWEST + 50);
        return tab;
      };
      const tabAt = (index: number): Tab => browser.tabs[Math.min(index, browser.tabs.length - 1)];
      const isDue = ({ at }: { readonly at: number }): boolean => Date.now() - at > CONFIRMED && at > failedUntil;
      const check = (): void => {
        for (const id of new Set(edits.map((edit) => edit.id))) {
          const due = edits.filter((edit) => edit.id === id && isDue(edit));
          const latest = due.at(-1);
          if (!latest) continue;
          const states = statesOf(browser, id).map(numberOf);
          expect(Math.max(-1, ...states), `edit ${latest.number} of ${id}`).toBeGreaterThanOrEqual(latest.number);
        }
      };
      await openTab();
      for (const one of [...actions, { act: 'kill' } as const]) {
        if (browser.isDiskFailing) failedUntil = Date.now();
        switch (one.act) {
          case 'edit': {
            const set = tabAt(one.tab).sets.focused.peek();
            set.edit(['name'], `edit ${++count}`);
            edits.push({ id: set.id, number: count, at: Date.now() });
            await settle(10);
            break;
          }
          case 'wait':
            await settle(one.ms);
            break;
          case 'add': {
            const tab = tabAt(one.tab);
            const from = tab.sets.focused.peek();
            const name = `edit ${++count}`;
            const written = { ...(from.written.peek() as object), name };
            focus = tab.shelf.add({ written, result: { ok: false, problems: [] } }, 'added.json').id;
            edits.push({ id: focus, number: count, at: Date.now() });
            await settle(10);
            break;
          }
          case 'open': {
            const { shelf, sets } = tabAt(one.tab);
            void shelf.refresh();
            await settle(SLOWEST + 10);
            const found = shelf.entries.peek() ?? [];
            const next = found[one.which % Math.max(1, found.length)];
            if (next) void shelf.open(next.id);
            await settle(SLOWEST + 10);
            focus = sets.focused.peek().id;
            break;
          }
          case 'second tab':
            if (browser.tabs.length < 2) await openTab();
            break;
          case 'close':
            if (browser.tabs.length > 1) tabAt(one.tab).close(browser);
            break;
          case 'disk':
            browser.isDiskFailing = one.fails;
            break;
          case 'near':
            browser.isNearFailing = one.fails;
            break;
          case 'latency':
            browser.latency = one.ms;
            break;
          // A new version of the page loads every tab anew.
          case 'upgrade': {
            const count = browser.tabs.length;
            for (const tab of [...browser.tabs]) tab.close(browser);
            for (let k = 0; k < count; k++) await openTab();
            break;
          }
          case 'kill':
            if (browser.isDiskFailing) {
              const tried = edits.some(({ at }) => at > failedUntil - 1 && Date.now() - at > CONFIRMED);
              if (tried) expect(notices.value.some(({ key }) => key === 'storage')).toBe(true);
            }
            browser.kill();
            check();
            // Later ones may be gone.
            edits = edits.filter(isDue);
            browser.isDiskFailing = false;
            browser.isNearFailing = false;
            await openTab();
            break;
        }
      }
    }),
    { numRuns: RUNS },
  );
}, 1_200_000);

describe('a disk that cannot be read when the page opens', () => {
  async function openedBlind() {
    const browser = new Browser();
    const before = new Tab(browser, 'first');
    await vi.advanceTimersByTimeAsync(1000);
    before.sets.focused.peek().edit(['name'], 'edit 1');
    await vi.advanceTimersByTimeAsync(1000);
    browser.kill();
    browser.isDiskFailing = true;
    const tab = new Tab(browser, 'first');
    await vi.advanceTimersByTimeAsync(5000);
    expect(notices.value.some(({ key }) => key === 'storage')).toBe(true);
    return { browser, set: tab.sets.focused.peek() };
  }

  it('gives what it has as soon as it can', async () => {
    const { browser, set } = await openedBlind();
    browser.isDiskFailing = false;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(nameIn(set.written.peek())).toBe('edit 1');
    expect(notices.value.some(({ key }) => key === 'storage')).toBe(false);
  });

  it('is not written over by what was changed without it', async () => {
    const { browser, set } = await openedBlind();
    set.edit(['name'], 'edit 2');
    browser.isDiskFailing = false;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(nameIn(set.written.peek())).toBe('edit 2');
    expect(statesOf(browser, 'first')[0]).toBe('edit 2');
    expect(statesOf(browser, 'first')).toContain('edit 1');
  });
});

/** A tab that is open for a while, with one more example in focus that lies on the disk. */
async function tabWithExample(browser: Browser) {
  const tab = new Tab(browser, 'first');
  tab.sets.focused.peek().edit(['name'], 'edit 0');
  await vi.advanceTimersByTimeAsync(2000);
  const written = JSON.parse(DEMO.text) as unknown;
  const reading: Reading = { written, result: { ok: false, problems: [] } };
  const set = tab.shelf.add(reading, DEMO.file);
  await vi.advanceTimersByTimeAsync(2000);
  await Promise.all([tab.shelf.refresh(), vi.advanceTimersByTimeAsync(2000)]);
  return { tab, set };
}

it.each(['untouched', 'edited', 'with a step taken back at last'])(
  'a set in focus (%s) that is deleted stays deleted, and can be had back whole',
  async (how) => {
    const browser = new Browser();
    const { tab, set } = await tabWithExample(browser);
    const { shelf, sets } = tab;
    if (how !== 'untouched') set.edit(['name'], 'edit 1');
    await vi.advanceTimersByTimeAsync(2000);
    // Only the steps to undo are behind then.
    set.endRun();
    if (how === 'with a step taken back at last') {
      set.edit(['name'], 'edit 2');
      set.undo();
    }
    const { id } = set;
    const name = nameIn(set.written.peek());
    await Promise.all([shelf.remove(id), vi.advanceTimersByTimeAsync(5000)]);
    for (const one of [...browser.tabs]) one.close(browser);
    await vi.advanceTimersByTimeAsync(2000);
    expect(sets.focused.peek().id).toBe('first');
    expect(browser.disk.get(id)?.entry?.deleted).toBeDefined();
    const action = notices.peek().find(({ key }) => key === `deleted-${id}`)!.action!;
    action.run();
    await vi.advanceTimersByTimeAsync(2000);
    const { entry, text } = browser.disk.get(id)!;
    expect(entry!.deleted).toBeUndefined();
    expect(nameIn(readKept(text!)!.written)).toBe(name);
  },
);

it('an example that was edited and undone keeps its steps when another set is opened; an untouched one leaves nothing', async () => {
  for (const isEdited of [true, false]) {
    const browser = new Browser();
    const { tab, set } = await tabWithExample(browser);
    if (isEdited) {
      set.edit(['name'], 'edit 1');
      set.undo();
    }
    await vi.advanceTimersByTimeAsync(2000);
    await Promise.all([tab.shelf.open('first'), vi.advanceTimersByTimeAsync(5000)]);
    expect(tab.sets.all.peek().map(({ id }) => id)).toEqual(['first']);
    expect(browser.disk.has(set.id)).toBe(isEdited);
  }
});

it('going back to a version does not say that the file holds it, and keeps what is being typed', async () => {
  const browser = new Browser();
  const { tab, set } = await tabWithExample(browser);
  set.draft.value = set.valueChange(['name'], 'edit 7');
  const version = { at: 1, written: { ...(set.written.peek() as object), name: 'edit 3' } };
  tab.shelf.goBack(version, 'version');
  await vi.advanceTimersByTimeAsync(2000);
  expect(set.isSaved.peek()).toBe(false);
  expect(browser.disk.get(set.id)!.versions.map(({ written }) => nameIn(written))).toContain('edit 7');
});

it('a log that cannot be kept counts until it can be, and is joined then with what is there', async () => {
  const browser = new Browser();
  const { shelf } = new Tab(browser, 'first');
  const settled = async <T>(work: Promise<T>): Promise<T> => {
    await vi.advanceTimersByTimeAsync(1000);
    return work;
  };
  const cells = (station: string) => ({ time: '2026-10-03T20:05+01:00', station, heard: 'faint' });
  const stations = (text: string | undefined) => readLog(text ?? '').entries.map((entry) => entry.cells.station);
  await settled(shelf.changeLog('first', (text) => withEntry(text, cells('Radio Alder'))));
  const held = withEntry(await settled(shelf.log('first')), cells('Saltmarsh Radio'));
  shelf.holdLog('first', held);
  await settled(shelf.refresh());
  expect(await settled(shelf.log('first'))).toBe(held);
  await settled(shelf.changeLog('first', (text) => withEntry(text, cells('Radio Heron'))));
  for (const text of [browser.logs.get('first'), await settled(shelf.log('first'))])
    expect(stations(text)).toEqual(['Radio Alder', 'Saltmarsh Radio', 'Radio Heron']);
});
