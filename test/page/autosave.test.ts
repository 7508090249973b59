import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openProfile, settled, withPage } from '../support/browser.ts';

const answered = (page: Page) => page.locator('.station').first().waitFor();
const turns = (page: Page) => page.getByRole('textbox', { name: 'Turns', exact: true });
const tap = (page: Page) => page.getByRole('textbox', { name: 'Detector tap', exact: true });

/** Types over what a field holds, key by key, and does not leave it. */
async function type(page: Page, text: string, field = turns(page)): Promise<void> {
  await field.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  expect(await field.inputValue()).toBe(text);
}

/** Waits by the page's own clock, from a frame that shows what was typed. */
const shownFor = (page: Page, ms: number) =>
  page.evaluate(async (pause) => {
    await new Promise(requestAnimationFrame);
    const from = performance.now();
    while (performance.now() - from < pause) await new Promise((resolve) => setTimeout(resolve, 5));
  }, ms);

const LEAVE = {
  reload: async (page: Page) => {
    await Promise.all([page.waitForEvent('load'), page.evaluate(() => location.reload())]);
    return page;
  },
  close: async (page: Page, url: string) => {
    const next = await page.context().newPage();
    await page.close();
    await next.goto(url);
    return next;
  },
  navigate: async (page: Page, url: string) => {
    await page.goto('about:blank');
    await page.goto(url);
    return page;
  },
};

describe('what is being typed survives leaving the page', () => {
  for (const [way, leave] of Object.entries(LEAVE))
    test(`by ${way}, however soon`, async () => {
      await withPage(async (first, url) => {
        let page = first;
        await answered(page);
        for (const [i, pause] of [0, 50, 100, 300, 600].entries()) {
          await type(page, String(61 + i));
          await shownFor(page, pause);
          page = await leave(page, url);
          await expect.poll(() => turns(page).inputValue(), { message: `${pause} ms` }).toBe(String(61 + i));
        }
      });
    });

  test('though it is not valid yet, and the figures stay those of the last valid set', async () => {
    await withPage(async (page) => {
      await answered(page);
      const field = page.getByRole('textbox', { name: 'Meshed', exact: true });
      await type(page, '48 p', field);
      await page.reload();
      await expect.poll(() => field.inputValue()).toBe('48 p');
      await page.locator('.behind').waitFor();
      await answered(page);
      await page.getByRole('button', { name: /^Undo/ }).click();
      await expect.poll(() => field.inputValue()).not.toBe('48 p');
      await page.locator('.behind').waitFor({ state: 'detached' });
    });
  });
});

/** What the browser says is on the disk, and whether the page has asked it to put more there. */
interface OnDisk {
  readonly isWriting: boolean;
  readonly revision: number;
  readonly turns: number;
}
declare const onDisk: { writing: number; revision: number; turns: number };

/** Takes down from now on what the page writes to the disk. */
const watchDisk = (page: Page) =>
  page.evaluate(() => {
    const seen = { writing: 0, revision: 0, turns: 0 };
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === 'texts') {
        seen.writing++;
        this.transaction.addEventListener('abort', () => seen.writing--);
        this.transaction.addEventListener('complete', () => {
          seen.writing--;
          const { revision, written } = JSON.parse(given[0]);
          Object.assign(seen, { revision, turns: Number(written.coils[0].turns) });
        });
      }
      return put.apply(this, given);
    };
    Object.assign(window, { onDisk: seen });
  });
const diskNow = (page: Page): Promise<OnDisk & { readonly at: number }> =>
  page.evaluate(() => ({
    isWriting: onDisk.writing > 0,
    revision: onDisk.revision,
    turns: onDisk.turns,
    at: performance.now(),
  }));

test('an example that nobody changed is unchanged after a reload, with its station', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.locator('.menu-list button').last().click();
    await settled(page);
    const file = page.locator('.file-name');
    const chosen = page.locator('.station[aria-current]');
    await page.locator('.station').nth(2).click();
    const name = await page.locator('.station').nth(2).locator('.station-name').textContent();
    await expect.poll(() => chosen.locator('.station-name').textContent()).toBe(name);
    const opened = await file.textContent();
    await page.reload();
    await answered(page);
    await expect.poll(() => chosen.locator('.station-name').textContent()).toBe(name);
    expect(await file.textContent()).toBe(opened);
    expect(opened).not.toContain('changed');
    expect(await page.getByRole('button', { name: /^Undo/ }).first().isDisabled(), 'nothing to undo').toBe(true);
  });
});

describe('what was typed survives the end of the browser', () => {
  // How long a disk takes is the machine's affair: what counts is that the page never waits before it writes.
  test.each([0, 90, 170, 430])('killed %i ms after a second of typing', async (later) => {
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-profile-'));
    try {
      const { page, kill } = await openProfile(folder);
      await answered(page);
      await watchDisk(page);
      await type(page, '61');
      await expect.poll(async () => (await diskNow(page)).turns).toBe(61);
      const start = await page.evaluate(() => performance.now());
      for (let value = 62, now = start; now < start + 1000 + later; value++) {
        await type(page, String(value));
        const disk = await diskNow(page);
        expect(
          disk.isWriting || disk.turns === value,
          `${value} is on its way to the disk, where ${disk.turns} is`,
        ).toBe(true);
        now = disk.at;
      }
      const { revision: due } = await diskNow(page);
      await kill();
      const again = await openProfile(folder);
      try {
        await answered(again.page);
        // What was still on its way may have arrived: half a number of more keys, and so a smaller one.
        const kept = await textKept(again.page);
        expect(kept.revision).toBeGreaterThanOrEqual(due);
        await expect.poll(() => turns(again.page).inputValue()).toBe(String(kept.written.coils[0].turns));
      } finally {
        await again.kill();
      }
    } finally {
      await removeFolder(folder);
    }
  });
});

/** Parts of a killed browser may outlive it a little and still write there. */
async function removeFolder(folder: string): Promise<void> {
  for (let tries = 0; tries < 20; tries++)
    try {
      return rmSync(folder, { recursive: true, force: true });
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
}

describe('what comes back after a reload', () => {
  test('an example that was only opened is not called changed, a changed one is, until it is undone', async () => {
    await withPage(async (page) => {
      await answered(page);
      const name = page.locator('.file-name');
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: 'Long-wave set with a foil capacitor' }).click();
      await expect.poll(() => name.textContent()).toBe('long-wave-foil.json');
      await page.reload();
      await answered(page);
      expect(await name.textContent()).toBe('long-wave-foil.json');
      await page.getByLabel('Name of the set').fill('Mine');
      await page.keyboard.press('Enter');
      // The steps to undo are kept a moment after the set.
      await expect.poll(() => stepsKept(page)).toEqual([1, 0]);
      await page.reload();
      await answered(page);
      await expect.poll(() => name.textContent()).toBe('long-wave-foil.json · changed');
      await page.getByRole('button', { name: /^Undo/ }).click();
      await expect.poll(() => name.textContent()).toBe('long-wave-foil.json');
    });
  });

  test('every step to undo and redo', async () => {
    await withPage(async (page) => {
      await answered(page);
      const undo = page.getByRole('button', { name: /^Undo/ });
      const redo = page.getByRole('button', { name: /^Redo/ });
      for (const value of ['60', '62', '64']) {
        await type(page, value);
        await page.keyboard.press('Enter');
      }
      await undo.click();
      await expect.poll(() => stepsKept(page)).toEqual([2, 1]);
      await page.reload();
      await expect.poll(() => redo.isEnabled()).toBe(true);
      await redo.click();
      await expect.poll(() => turns(page).inputValue()).toBe('64');
      for (const value of ['62', '60', '56']) {
        await undo.click();
        await expect.poll(() => turns(page).inputValue()).toBe(value);
      }
      expect(await undo.isDisabled()).toBe(true);
    });
  });

  test('the chosen station', async () => {
    await withPage(async (page) => {
      await answered(page);
      const chosen = () => page.locator('.station[aria-current="true"] .station-name').textContent();
      const best = await chosen();
      const other = page.locator('.station:not([aria-current])').nth(1);
      const name = await other.locator('.station-name').textContent();
      expect(name).not.toBe(best);
      await other.click();
      await expect.poll(chosen).toBe(name);
      await page.reload();
      await answered(page);
      await expect.poll(chosen).toBe(name);
      expect(await page.locator('.file-name').textContent(), 'nothing of the set was changed').not.toContain('changed');
    });
  });

  test('a set kept by the first versions of the page', async () => {
    await withPage(async (page) => {
      await answered(page);
      await type(page, '77');
      await page.keyboard.press('Enter');
      await expect.poll(() => keptNow(page)).toContain('77');
      // All of it is on the disk: the page has nothing more to write there as it is left.
      await expect.poll(() => stepsKept(page)).toEqual([1, 0]);
      await page.evaluate(() => {
        const { written } = JSON.parse(localStorage.getItem('faintwave.document.first')!);
        written.coils[0].turns = 78;
        addEventListener('pagehide', () => {
          localStorage.clear();
          localStorage.setItem('faintwave.set', JSON.stringify({ written, fileName: 'old.json', tab: 'x' }));
        });
        return new Promise<void>((resolve) => {
          indexedDB.deleteDatabase('faintwave').onsuccess = () => resolve();
        });
      });
      await page.reload();
      await expect.poll(() => turns(page).inputValue()).toBe('78');
      expect(await page.locator('.file-name').textContent()).toBe('old.json · changed');
    });
  });
});

const keptNow = (page: Page) => page.evaluate(() => localStorage.getItem('faintwave.document.first'));

/** What the disk has of a set: the one in focus, or the first. */
// biome-ignore lint/suspicious/noExplicitAny: each test knows what it has put there
const onDiskOf = (page: Page, store: 'texts' | 'histories'): Promise<any> =>
  page.evaluate(
    (name) =>
      new Promise((resolve) => {
        const request = indexedDB.open('faintwave');
        request.onsuccess = () => {
          const database = request.result;
          const got = database
            .transaction(name)
            .objectStore(name)
            .get(localStorage.getItem('faintwave.focus') ?? 'first');
          got.onsuccess = () => {
            database.close();
            resolve(got.result);
          };
        };
      }),
    store,
  );

/** How many steps to undo and to redo of the set in focus are on the disk. */
async function stepsKept(page: Page): Promise<(number | undefined)[]> {
  const history = await onDiskOf(page, 'histories');
  return [history?.past.length, history?.future.length];
}

/** The first set as it is on the disk. */
const textKept = async (page: Page) => JSON.parse(await onDiskOf(page, 'texts'));

describe('where the browser keeps nothing', () => {
  const CASES = {
    'storage is blocked': () => {
      for (const name of ['localStorage', 'indexedDB'])
        Object.defineProperty(window, name, {
          get() {
            throw new DOMException('blocked', 'SecurityError');
          },
        });
    },
    'storage is full': () => {
      const full = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
      Storage.prototype.setItem = full;
      IDBObjectStore.prototype.put = full;
    },
    'only the database fails': () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('broken', 'UnknownError');
      };
    },
  };
  for (const [name, breakStorage] of Object.entries(CASES))
    test(`because ${name}, the page says so and offers a file`, async () => {
      await withPage(
        async (page, url) => {
          await page.addInitScript(breakStorage);
          await page.goto(url);
          await answered(page);
          await type(page, '60');
          const notice = page.locator('.notice', { hasText: 'storage is blocked or full' });
          await notice.waitFor();
          const [download] = await Promise.all([
            page.waitForEvent('download'),
            notice.getByRole('button', { name: 'Save to a file' }).click(),
          ]);
          const file = await (await import('node:fs/promises')).readFile((await download.path())!, 'utf8');
          expect(JSON.parse(file).coils[0].turns).toBe(60);
          await type(page, '18', tap(page));
          await page.keyboard.press('Enter');
          await answered(page);
        },
        { open: false },
      );
    });
});
