import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import slider from '../../examples/slider-set.json' with { type: 'json' };
import manifest from '../../src/app/public/manifest.webmanifest?raw';
import { linkOf } from '../../src/engine/set/link.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { writeWav } from '../../src/outputs/audio/wav.ts';
import { withPage } from '../support/browser.ts';

interface Given {
  readonly name: string;
  readonly bytes: readonly number[];
}
const textFile = (name: string, text: string): Given => ({ name, bytes: [...Buffer.from(text)] });

/** What a launch queue of a browser hands over, before the page begins. */
const launchWith = (page: Page, files: readonly Given[]) =>
  page.addInitScript((given) => {
    const handles = given.map(({ name, bytes }) => ({
      name,
      getFile: async () => new File([new Uint8Array(bytes)], name),
    }));
    const launchQueue = { setConsumer: (take: (launch: object) => void) => take({ files: handles }) };
    Object.defineProperty(globalThis, 'launchQueue', { value: launchQueue });
  }, files);

const SLIDER = JSON.stringify({ ...slider, name: 'From a file' });
const RINGING = writeWav(
  [Float32Array.from({ length: 4000 }, (_, k) => (k < 100 ? 0 : Math.exp(-k / 800) * Math.sin((2 * Math.PI * k) / 9)))],
  { rate: 192_000 },
);
const fileStatus = (page: Page) => page.locator('.readings-file [role=status]').textContent();
const nameOfSet = (page: Page) => page.locator('.name-input').inputValue();
const heading = (page: Page) => page.locator('#bench-card-title').textContent();

test('a set that the device opens with the page is one more set', async () => {
  await withPage(
    async (page, url) => {
      await launchWith(page, [textFile('mine.json', SLIDER)]);
      await page.goto(url);
      await expect
        .poll(() => page.locator('.notice').allTextContents())
        .toEqual([expect.stringContaining('mine.json')]);
      await expect.poll(() => nameOfSet(page)).toBe('From a file');
    },
    { open: false },
  );
});

test.each([
  ['coil.s1p', [...Buffer.from('# HZ S RI R 50\n1000000 0.9 0.1\n2000000 0.8 0.2\n')], 'analyser'],
  ['ringing.wav', [...RINGING], 'Decay'],
] as const)('%s that the device opens with the page goes to its card in Measure', async (name, bytes, card) => {
  await withPage(
    async (page, url) => {
      await launchWith(page, [{ name, bytes }]);
      await page.goto(url);
      await expect.poll(() => fileStatus(page)).toBe(`Taken from ${name}.`);
      expect((await heading(page))?.toLowerCase()).toContain(card.toLowerCase());
      // Taken once: another card begins empty.
      await page.locator('.measure-offered button[aria-pressed=false]').first().press('Enter');
      await expect.poll(() => heading(page)).not.toMatch(new RegExp(card, 'i'));
      expect(await fileStatus(page)).toBe('');
    },
    { open: false },
  );
});

/** As a browser does when something is shared with the installed page. */
async function share(page: Page, url: string, parts: { text?: string; files?: readonly Given[] }): Promise<void> {
  const { action, params } = JSON.parse(manifest).share_target;
  const address = await page.evaluate(
    async ([to, names, { text, files = [] }]) => {
      const form = new FormData();
      if (text !== undefined) form.append(names.text, text);
      for (const { name, bytes } of files) form.append(names.files, new File([new Uint8Array(bytes)], name));
      return (await fetch(to, { method: 'POST', body: form })).url;
    },
    [new URL(action, url).href, { text: params.text, files: params.files[0].name }, parts] as const,
  );
  await page.goto(address);
}

const openIt = (page: Page) => page.locator('.notice').getByRole('button', { name: 'Open it' }).press('Enter');
const leftThere = (page: Page) =>
  page.evaluate(async () => (await (await caches.open('shared-with-faintwave')).keys()).length);
/** The page once its service worker answers. */
async function installed(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await page.locator('.station').first().waitFor();
}

test('what is shared with the installed page opens once: a file, a link, the text of a set', async () => {
  await withPage(
    async (page, url) => {
      await installed(page);
      await share(page, url, { files: [textFile('mine.json', SLIDER)] });
      await page.locator('.notice', { hasText: 'Shared with this page: mine.json.' }).waitFor();
      expect(await nameOfSet(page)).not.toBe('From a file');
      await openIt(page);
      await expect.poll(() => nameOfSet(page)).toBe('From a file');
      expect(page.url()).toBe(url);
      const linked = { ...slider, name: 'From a link' };
      const read = readValue(linked);
      if (!read.ok) throw new Error('the example does not read');
      await share(page, url, { text: `Look at this set\n${url}#${linkOf(read.set, linked)}` });
      await openIt(page);
      await expect.poll(() => nameOfSet(page)).toBe('From a link');
      await share(page, url, { text: JSON.stringify({ ...slider, name: 'From a text' }) });
      await openIt(page);
      await expect.poll(() => nameOfSet(page)).toBe('From a text');
      await page.reload();
      await page.locator('.station').first().waitFor();
      expect(await leftThere(page)).toBe(0);
    },
    { serviceWorker: true },
  );
});

test('what was shared and then dismissed is not offered again', async () => {
  await withPage(
    async (page, url) => {
      await installed(page);
      await share(page, url, { files: [textFile('mine.json', SLIDER)] });
      const offered = page.locator('.notice', { hasText: 'Shared with this page: mine.json.' });
      await offered.getByRole('button', { name: 'Dismiss' }).press('Enter');
      await offered.waitFor({ state: 'detached' });
      await expect.poll(() => leftThere(page)).toBe(0);
      // The next one is offered alone.
      await share(page, url, { files: [textFile('other.json', SLIDER)] });
      await page.locator('.notice', { hasText: 'Shared with this page: other.json.' }).waitFor();
      expect(await page.locator('.notice', { hasText: 'mine.json' }).count()).toBe(0);
    },
    { serviceWorker: true },
  );
});

test('too much at once is not kept, which is told; what was left and not opened goes after an hour', async () => {
  await withPage(
    async (page, url) => {
      await installed(page);
      await page.evaluate(async () => {
        const shared = await caches.open('shared-with-faintwave');
        await shared.put(`shared/${Date.now() - 4e6}-text`, new Response('old'));
      });
      await share(page, url, { files: Array.from({ length: 21 }, (_, k) => textFile(`${k}.json`, '{}')) });
      await page.locator('.notice', { hasText: 'too much at once' }).waitFor();
      expect([await leftThere(page), page.url()]).toEqual([0, url]);
    },
    { serviceWorker: true },
  );
});

test('of several files of instruments the first is measured, the others are named', async () => {
  await withPage(
    async (page, url) => {
      const s1p = '# HZ S RI R 50\n1000000 0.9 0.1\n2000000 0.8 0.2\n';
      await launchWith(page, [textFile('one.s1p', s1p), textFile('two.s1p', s1p)]);
      await page.goto(url);
      await expect.poll(() => fileStatus(page)).toBe('Taken from one.s1p.');
      await page.locator('.notice', { hasText: 'Not opened: two.s1p.' }).waitFor();
    },
    { open: false },
  );
});

test('the manifest names the files that the page takes', () => {
  const { file_handlers: handlers, share_target: target } = JSON.parse(manifest);
  const endings = ['.json', '.s1p', '.s2p', '.wav'];
  expect(Object.values(handlers[0].accept).flat()).toEqual(endings);
  expect(target.params.files[0].accept).toEqual(expect.arrayContaining(endings));
  expect(readFileSync(new URL('../../scripts/page/service-worker.js', import.meta.url), 'utf8')).toContain(
    `getAll('${target.params.files[0].name}')`,
  );
});
