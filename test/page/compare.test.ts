import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { inEachTheme, withPage } from '../support/browser.ts';

async function renamed(page: Page, text: string): Promise<void> {
  await page.getByLabel('Name of the set').fill(text);
  await page.keyboard.press('Enter');
}

test('two sets of the shelf stand side by side: words, path, plots, parts; one key steps from one sound to the next', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await renamed(page, 'Kitchen set');
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    await page.getByLabel('Copy Kitchen set').click();
    await page.getByRole('button', { name: 'Kitchen set (copy)', exact: true }).click();
    await renamed(page, 'Higher tap');
    const tap = page.getByRole('textbox', { name: 'Detector tap', exact: true });
    await tap.fill('50');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    await page.getByRole('button', { name: 'Compare Kitchen set with the set that is open' }).click();
    await page.getByRole('button', { name: 'Compare 2 sets' }).click();
    // The set that is open is A, and B the one beside it.
    await expect.poll(() => page.locator('.compare-sentence').textContent()).toMatch(/^B is .*detector tap\.$/);
    const heads = page.locator('.compare-table').first().locator('thead th');
    expect(await heads.allTextContents()).toEqual(['stage', 'A Higher tap', 'B Kitchen set']);
    const path = page.locator('.compare-table').first().locator('tbody tr');
    expect(await path.first().locator('td').first().textContent()).toMatch(/^[\d.]+ mV\/m.+\d–\d/);
    await page.locator('.compare-plots').scrollIntoViewIfNeeded();
    for (const name of ['Higher tap', 'Kitchen set'])
      await expect.poll(() => page.locator('.compare-plots svg text', { hasText: name }).count()).toBe(2);
    await page.locator('.compare-parts').getByText('Galena').first().waitFor();
    // Each plot is read off under the pointer and by key, in a line below it.
    const curves = page.getByRole('slider', { name: 'Resonance curves: read off' });
    await curves.focus();
    await page.keyboard.press('Home');
    const reading = () => curves.getAttribute('aria-valuetext');
    await expect.poll(reading).toMatch(/^[\d.]+ kHz: A −[\d.]+ dB; B −[\d.]+ dB/);
    const first = await reading();
    await page.keyboard.press('PageUp');
    await expect.poll(reading).not.toBe(first);
    const dials = page.getByRole('slider', { name: 'Dials: read off' });
    await dials.hover({ position: { x: 200, y: 20 }, force: true });
    await expect.poll(() => dials.getAttribute('aria-valuetext')).toMatch(/kHz: A \d+°; B \d+°/);
    const line = page.locator('figure', { hasText: 'Dials' }).locator('.plot-reading');
    expect(await line.textContent()).toBe(await dials.getAttribute('aria-valuetext'));
    // Another station of the place is the station of the whole page.
    const before = await page.locator('.compare-sentence').textContent();
    await page.getByRole('combobox', { name: 'Station' }).selectOption({ index: 6 });
    await expect.poll(() => page.locator('.compare-sentence').textContent()).not.toBe(before);
    const [sheet] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a sheet (PDF)' }).click(),
    ]);
    expect(readFileSync(await sheet.path(), 'latin1')).toMatch(/^%PDF-/);
    await page.getByRole('button', { name: 'Hear the first set' }).press('Space');
    await page.locator('.compare-hear').getByText('Now: A, Higher tap.').waitFor();
    await page.getByRole('button', { name: 'Next: B' }).press('Space');
    await page.locator('.compare-hear').getByText('Now: B, Kitchen set.').waitFor();
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByRole('button', { name: 'Hear the first set' }).waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await inEachTheme(page, async () => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    });
    await page.getByRole('button', { name: 'Leave out Kitchen set' }).click();
    await page.getByText('Choose a set of the shelf to stand beside this one.').waitFor();
  });
});
