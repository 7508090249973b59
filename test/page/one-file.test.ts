import { copyFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { buildPageFile, PAGE_FILE } from '../../scripts/support/build.mjs';
import { withPage } from '../support/browser.ts';

beforeAll(() => buildPageFile({ quiet: true }));

test('the page in one file works from a disk, without a network: answers, maps, pictures, sheets, sound', async () => {
  // Alone in a folder, so that nothing beside it can help.
  const file = join(mkdtempSync(join(tmpdir(), 'faintwave-')), 'page.html');
  copyFileSync(PAGE_FILE, file);
  await withPage(
    async (page) => {
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.context().setOffline(true);
      await page.goto(pathToFileURL(file).href);
      await page.locator('.station').first().waitFor();
      expect(await page.evaluate(() => document.fonts.check('16px "Faintwave Sans"'))).toBe(true);
      const name = page.getByLabel('Name of the set');
      await name.fill('Carried in a pocket');
      await name.press('Enter');

      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      await page.getByRole('button', { name: 'Start listening' }).click();
      await page.locator('.listen-panel[data-state=on]').waitFor();
      const played = async () => Number(await page.locator('.listen-panel').getAttribute('data-seconds'));
      await expect.poll(played).toBeGreaterThan(0.5);

      const view = (title: string) => page.getByRole('button', { name: title, exact: true });
      await view('Explain').click();
      await page.locator('.explain-stage canvas').waitFor();
      await expect.poll(() => page.locator('.explain-caption').textContent()).not.toBe('');
      await view('Sheets').click();
      await page.locator('.sheets-paper svg').waitFor();
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: /^Save .*PDF/ }).click();
      expect((await download).suggestedFilename()).toMatch(/\.pdf$/);

      await page.getByRole('button', { name: 'Help' }).click();
      await view('Handbook').click();
      const picture = page.locator('.handbook-text img').first();
      await picture.scrollIntoViewIfNeeded();
      await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);

      // What was changed is still there the next time.
      await page.reload();
      await expect.poll(() => name.inputValue()).toBe('Carried in a pocket');
      expect(asked.filter((address) => !/^(?:data|blob):/.test(address) && !address.startsWith('file:'))).toEqual([]);
      expect(new Set(asked.filter((address) => address.startsWith('file:')))).toEqual(
        new Set([pathToFileURL(file).href]),
      );
    },
    { open: false },
  );
});
