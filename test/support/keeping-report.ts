import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { buildPage, PAGE_FOLDER } from '../../scripts/support/build.mjs';
import { serve } from '../../scripts/support/serve.mjs';
import { uniform } from '../../src/engine/numerics/random.ts';
import { findBrowser, launchProfile } from './find-browser.ts';
import { killerOf } from './kill-whole.ts';

/** A change is confirmed by then, ms. */
const CONFIRMED = 1000;
const PATIENCE = 180_000;

interface Edit {
  readonly id: string;
  readonly number: number;
  /** When it was made, ms since 1970; infinite: the page said that it could not be kept. */
  readonly at: number;
}

/** The page as it is built, in a folder where it can become another version of itself. */
function changingPage() {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-page-'));
  cpSync(PAGE_FOLDER, folder, { recursive: true });
  let version = 0;
  const change = (name: string, edit: (text: string) => string) =>
    writeFileSync(join(folder, name), edit(readFileSync(join(folder, name), 'utf8')));
  const upgrade = () => {
    version++;
    change('index.html', (text) => text.replace(/<title>(?:\d+ )?/, `<title>${version} `));
    change('service-worker.js', (text) => text.replace(/faintwave-[0-9a-z]{4,}/, `faintwave-${1000 + version}`));
  };
  return { folder, upgrade };
}

/** The numbers of the edits that each set has in what is kept: as it is, and in its versions. */
const keptNumbers = (page: Page): Promise<Record<string, number[]>> =>
  page.evaluate(async () => {
    const found: Record<string, number[]> = {};
    const add = (id: string, written: { name?: string } | undefined) => {
      const number = Number(/^edit (\d+)/.exec(written?.name ?? '')?.[1] ?? -1);
      found[id] = [...(found[id] ?? []), number];
    };
    const PREFIX = 'faintwave.document.';
    for (const [key, text] of Object.entries(localStorage))
      if (key.startsWith(PREFIX)) add(key.slice(PREFIX.length), JSON.parse(text).written);
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('faintwave');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const all = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const transaction = database.transaction(['texts', 'versions']);
    const [ids, texts, versionIds, versions] = await Promise.all([
      all(transaction.objectStore('texts').getAllKeys()),
      all(transaction.objectStore('texts').getAll()),
      all(transaction.objectStore('versions').getAllKeys()),
      all(transaction.objectStore('versions').getAll()),
    ]);
    for (const [i, id] of ids.entries()) add(String(id), JSON.parse(texts[i]).written);
    for (const [i, key] of versionIds.entries()) add(String((key as [string, number])[0]), versions[i].written);
    database.close();
    return found;
  });

/** From now on nothing can be kept in this tab, or everything can again. */
const setFull = (page: Page, isFull: boolean): Promise<void> =>
  page.evaluate((full) => {
    const store = window as unknown as {
      plain?: [typeof IDBObjectStore.prototype.put, typeof Storage.prototype.setItem];
    };
    store.plain ??= [IDBObjectStore.prototype.put, Storage.prototype.setItem];
    const refuse = (): never => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    IDBObjectStore.prototype.put = full ? refuse : store.plain[0];
    Storage.prototype.setItem = full ? refuse : store.plain[1];
  }, isFull);

const isOpen = (page: Page) => page.locator('.station').first().waitFor();
const focusOf = (page: Page) => page.evaluate(() => sessionStorage.getItem('faintwave.focus') ?? 'first');

/**
 * Edits sets at random in two tabs of a real browser, copies and opens others, lets the page become a new version, fills
 * the storage, and kills the browser again and again; after each kill looks whether every change is kept that was a second
 * old.
 * @param args how many edits (1,000), and a seed
 * @throws Error with every edit that was lost
 */
export async function verifyKeeping([edits = '1000', seed = '1']: readonly string[]): Promise<void> {
  await buildPage();
  const random = uniform(Number(seed));
  const below = (count: number): number => Math.floor(random() * count);
  const found = await findBrowser();
  const profile = mkdtempSync(join(tmpdir(), 'faintwave-profile-'));
  const { folder, upgrade } = changingPage();
  const server = await serve(folder);
  let count = 0;
  let kills = 0;
  let made: Edit[] = [];
  const lost: string[] = [];

  const openTabs = async (): Promise<{ context: BrowserContext; tabs: Page[]; kill: () => Promise<void> }> => {
    const context = await launchProfile(found, profile, {});
    context.setDefaultTimeout(PATIENCE);
    const first = context.pages()[0] ?? (await context.newPage());
    const kill = await killerOf(context);
    const tabs = [first, await context.newPage()];
    for (const tab of tabs) {
      await tab.goto(server.url);
      await isOpen(tab);
    }
    return { context, tabs, kill };
  };

  const edit = async (tab: Page, isKept = true): Promise<void> => {
    if ((await tab.locator('.shelf').count()) > 0) await tab.getByRole('button', { name: 'Set', exact: true }).click();
    const field = tab.getByLabel('Name of the set');
    await field.fill(`edit ${++count}`);
    await field.press('Enter');
    made.push({ id: await focusOf(tab), number: count, at: isKept ? Date.now() : Number.POSITIVE_INFINITY });
  };
  const onShelf = async (tab: Page, act: 'copy' | 'open'): Promise<void> => {
    // The same button leads back from it.
    if ((await tab.locator('.shelf').count()) === 0)
      await tab.getByRole('button', { name: 'Shelf', exact: true }).click();
    const cards = tab.locator('.shelf-card');
    await cards.first().waitFor();
    const card = cards.nth(below(Math.min(6, await cards.count())));
    if (act === 'copy') await card.getByRole('button', { name: /^Copy / }).click();
    else {
      await card.locator('.shelf-name').click();
      await isOpen(tab);
    }
  };
  const fill = async (tab: Page): Promise<void> => {
    await setFull(tab, true);
    await edit(tab, false);
    await tab.locator('.notice', { hasText: 'blocked or full' }).first().waitFor();
    await setFull(tab, false);
    await edit(tab);
  };
  const act = async (tab: Page): Promise<void> => {
    const kind = random();
    if (kind < 0.76) await edit(tab);
    else if (kind < 0.82) await onShelf(tab, 'copy');
    else if (kind < 0.92) await onShelf(tab, 'open');
    else if (kind < 0.95) await fill(tab);
    else {
      const isUpgraded = kind < 0.97;
      if (isUpgraded) upgrade();
      await tab.reload();
      await isOpen(tab);
      // The page offers the new version once it has fetched it, if it does before the browser is killed.
      const use = tab.getByRole('button', { name: 'Use it now' });
      if (isUpgraded) await use.click({ timeout: 10_000 }).catch(() => undefined);
      await isOpen(tab);
    }
    await tab.waitForTimeout(random() < 0.3 ? below(1500) : 0);
  };

  let last: Awaited<ReturnType<typeof openTabs>> | undefined;
  try {
    while (count < Number(edits)) {
      last = await openTabs();
      for (let left = 5 + below(40); left > 0 && count < Number(edits); left--) await act(last.tabs[below(2)]);
      const at = Date.now();
      await last.kill();
      kills++;
      last = await openTabs();
      const kept = await keptNumbers(last.tabs[0]);
      const due = made.filter((one) => at - one.at > CONFIRMED);
      const latest = new Map(due.map(({ id, number }) => [id, number]));
      for (const [id, number] of latest)
        if (!(kept[id] ?? []).some((one) => one >= number)) lost.push(`edit ${number} of ${id}`);
      // Later ones may be gone.
      made = [];
      console.log(`${count} edits, ${kills} kills, ${Object.keys(kept).length} sets, ${lost.length} lost`);
      await last.context.close();
      last = undefined;
    }
    last = await openTabs();
    const sets = Object.keys(await keptNumbers(last.tabs[0]));
    for (const id of sets) {
      await last.tabs[0].evaluate((focus) => sessionStorage.setItem('faintwave.focus', focus), id);
      await last.tabs[0].reload();
      await isOpen(last.tabs[0]);
    }
    console.log(`All of ${sets.length} sets open again.`);
  } finally {
    await last?.context.close().catch(() => undefined);
    await server.close();
    for (const one of [profile, folder]) rmSync(one, { recursive: true, force: true, maxRetries: 20 });
  }
  if (lost.length > 0) throw new Error(`Lost: ${lost.join(', ')}`);
}
