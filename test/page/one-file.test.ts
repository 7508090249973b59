import { copyFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { buildPageFile, PAGE_FILE } from '../../scripts/support/build.mjs';
import { withPage } from '../support/browser.ts';

beforeAll(() => buildPageFile({ quiet: true }));

/** A box with few sets. */
const BOX = {
  format: 'faintwave-box/1',
  name: 'One reel and a tube',
  formers: [{ former: { kind: 'tube', diameter: '70 mm', length: '90 mm' } }],
  wires: [{ wire: { size: '0.5 mm', covering: 'enamel' }, length: '6 m' }],
  capacitors: [{ capacitor: { kind: 'variable', maximum: '365 pF', minimum: '12 pF' } }],
  detectors: [{ detector: { kind: 'germanium' } }],
  loads: [{ load: { kind: 'phones', resistance: '4 kΩ' } }],
  aerials: [{ aerial: { kind: 'inverted-L', height: '6 m', length: '15 m' } }],
  earths: [{ earth: { kind: 'rod', length: '1 m' } }],
  limits: { tapEvery: 12, arrangements: ['direct'] },
};

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
      // Workers whose addresses are the longest, and one that starts others.
      await page
        .locator('.explain-scenes')
        .getByRole('button', { name: /too slow to transmit/ })
        .click();
      await page.evaluate(() => {
        for (const part of document.querySelectorAll<HTMLDetailsElement>('.explain-side > details')) part.open = true;
      });
      const choice = (label: RegExp) => page.locator('.explain-take label', { hasText: label }).locator('select');
      await choice(/^Format/).selectOption('gif');
      await choice(/^Picture size/).selectOption({ index: 0 });
      const picture = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Make the picture', exact: true }).click();
      expect((await picture).suggestedFilename()).toMatch(/\.gif$/);
      await view('Find').click();
      await page.getByLabel('Open a box of parts from a file').setInputFiles({
        name: 'box.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(BOX)),
      });
      await expect
        .poll(() => page.getByLabel('Box of parts', { exact: true }).locator('option:checked').textContent())
        .toBe(BOX.name);
      await page.getByRole('button', { name: 'Find sets' }).click();
      await page.locator('.find-table tbody tr').first().waitFor();
      await view('Sheets').click();
      await page.locator('.sheets-paper svg').waitFor();
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: /^Save .*PDF/ }).click();
      expect((await download).suggestedFilename()).toMatch(/\.pdf$/);

      await page.getByRole('button', { name: 'Help' }).click();
      await view('Handbook').click();
      const shown = page.locator('.handbook-text img').first();
      await shown.scrollIntoViewIfNeeded();
      await expect.poll(() => shown.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);

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
