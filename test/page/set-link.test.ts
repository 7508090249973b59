import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { withPage } from '../support/browser.ts';

const linkOf = (text: string): string => `#set1=${deflateRawSync(text).toString('base64url')}`;
const exampleText = (name: string): string => readFileSync(inRoot(`examples/${name}.json`), 'utf8');
const NAME = 'Name of the set';

test('a link opens its set in a new tab, with a way back to the work that was there', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByLabel(NAME).fill('My own set');
    await page.keyboard.press('Enter');
    const tab = await page.context().newPage();
    // What the page tells stays until it is read, however slow the machine is.
    await tab.addInitScript(() => {
      const later = window.setTimeout;
      const patient = (run: () => void, ms = 0) => later(run, ms > 10_000 ? 10_000_000 : ms);
      Object.assign(window, { setTimeout: patient });
    });
    await tab.goto(page.url() + linkOf(exampleText('slider-set')));
    const name = tab.getByLabel(NAME);
    await expect.poll(() => name.inputValue()).toBe(JSON.parse(exampleText('slider-set')).name);
    expect(new URL(tab.url()).hash).toBe('');
    await tab.getByRole('button', { name: 'Back to what I had' }).click();
    await expect.poll(() => name.inputValue()).toBe('My own set');
  });
});

test('links that hold no set do nothing but say so, and a name is never more than text', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    const name = page.getByLabel(NAME);
    const before = await name.inputValue();
    const hash = (link: string) => page.evaluate((to) => void (location.hash = to), link);
    const bomb = linkOf(' '.repeat(20_000_000));
    for (const bad of ['#set1=%00', linkOf('{"format":'), linkOf('[]'), bomb, '#set2=abc']) {
      await hash(bad);
      const dialog = page.getByRole('dialog');
      await dialog.waitFor();
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'detached' });
      expect(await name.inputValue(), bad.slice(0, 20)).toBe(before);
      expect(new URL(page.url()).hash).toBe('');
    }
    const hostile = '<img src=x onerror="document.title=1">';
    await hash(linkOf(JSON.stringify({ ...JSON.parse(exampleText('slider-set')), name: hostile })));
    await expect.poll(() => name.inputValue()).toBe(hostile);
    await page.locator('.station').first().waitFor();
    expect(await page.title()).not.toBe('1');
    expect(await page.locator('img[src="x"]').count()).toBe(0);
  });
});
