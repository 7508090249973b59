import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aroundPage, Browser, nameIn, statesOf, statesOnDisk, Tab } from '../../../test/support/simulated-browser.ts';
import { playSession, storageAction } from '../../../test/support/storage-session.ts';
import { readLog } from '../../engine/index.ts';
import type { Reading } from '../description/stand-ins.ts';
import { DEMO } from './examples.ts';
import { readKept } from './kept.ts';
import { notices } from './notices.ts';
import { withEntry } from './shelf/log-text.ts';

beforeEach(() => {
  vi.useFakeTimers();
  for (const [name, value] of Object.entries(aroundPage())) vi.stubGlobal(name, value);
});
afterEach(() => {
  notices.value = [];
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Actions of each of three long runs, which a person asks for: about a third of them are edits. */
const LONG_RUN = Number(process.env.FAINTWAVE_KEEPING_ACTIONS ?? 0);
const LENGTH = LONG_RUN > 0 ? { minLength: LONG_RUN, maxLength: LONG_RUN } : { minLength: 10, maxLength: 60 };
const RUNS = LONG_RUN > 0 ? 3 : 60;

it('no change older than a second is lost by kills, closing, upgrades, two tabs, other sets or storage that fails and says so', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(storageAction, { ...LENGTH, size: 'max' }), (actions) =>
      playSession(actions, (ms) => vi.advanceTimersByTimeAsync(ms)),
    ),
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

it('a page that was hidden, with only the steps to undo still to be kept, goes on writing to the disk', async () => {
  const browser = new Browser();
  const tab = new Tab(browser, 'first');
  const set = tab.sets.focused.peek();
  const edit = async (name: string) => {
    set.edit(['name'], name);
    await vi.advanceTimersByTimeAsync(2000);
  };
  await vi.advanceTimersByTimeAsync(2000);
  set.apply(set.valueChange(['name'], 'edit 1', { run: 'typing' }));
  await vi.advanceTimersByTimeAsync(2000);
  set.endRun();
  tab.putAway();
  await vi.advanceTimersByTimeAsync(2000);
  await edit('edit 2');
  expect(statesOnDisk(browser, 'first')[0]).toBe('edit 2');
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
    for (const one of browser.tabs) one.putAway();
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
