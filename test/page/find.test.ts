import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readValue } from '../../src/engine/set/read.ts';
import { trialsOf } from '../../src/engine/vary/trial.ts';
import { wantValues } from '../../src/engine/vary/want-values.ts';
import { wantFigure } from '../../src/outputs/words/index.ts';
import { inEachTheme, withPage } from '../support/browser.ts';

/** A box with few sets. */
const BOX = {
  format: 'faintwave-box/1',
  name: 'Two reels and a tube',
  formers: [{ former: { kind: 'tube', diameter: '70 mm', length: '90 mm' } }],
  wires: [{ wire: { size: '0.5 mm', covering: 'enamel' }, length: '12 m' }],
  capacitors: [{ capacitor: { kind: 'variable', maximum: '365 pF', minimum: '12 pF' } }],
  detectors: [{ detector: { kind: 'germanium' } }, { detector: { kind: 'galena' } }],
  loads: [{ load: { kind: 'phones', resistance: '4 kΩ' } }],
  aerials: [{ aerial: { kind: 'inverted-L', height: '6 m', length: '15 m' } }],
  earths: [{ earth: { kind: 'rod', length: '1 m' } }],
  wants: [{ kind: 'loudest', station: 'Saltmarsh Radio' }],
  limits: { tapEvery: 12, arrangements: ['direct', 'tapped'] },
};

const go = (page: Page) => page.getByRole('button', { name: 'Find sets' });

async function openBox(page: Page, box: object): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Find', exact: true }).press('Enter');
  await go(page).waitFor();
  await page.getByLabel('Open a box of parts from a file').setInputFiles({
    name: 'box.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(box)),
  });
}

test('a box is opened, mended, searched by keyboard; a found set is opened with a way back; the box stays', async () => {
  await withPage(async (page) => {
    await openBox(page, BOX);
    const choice = page.getByLabel('Box of parts', { exact: true });
    await expect.poll(() => choice.locator('option:checked').textContent()).toBe(BOX.name);
    await page.locator('summary', { hasText: '70 mm tube' }).press('Enter');
    await page.getByLabel('Outer diameter', { exact: true }).fill('wide');
    await page.getByLabel('Outer diameter', { exact: true }).press('Enter');
    await expect.poll(() => go(page).isDisabled()).toBe(true);
    await page.locator('summary', { hasText: '70 mm tube' }).press('Control+z');
    await expect.poll(() => go(page).isEnabled()).toBe(true);
    await go(page).press('Enter');
    await page.locator('.find-why').waitFor();
    const rows = page.locator('.find-table tbody tr');
    const shown = await rows.count();
    expect(shown).toBeGreaterThan(0);
    expect(shown).toBeLessThanOrEqual(12);
    const points = page.getByRole('radiogroup', { name: 'Found sets in the plot' }).getByRole('radio');
    await points.first().press('ArrowRight');
    await expect.poll(() => page.locator('.find-table .is-chosen').count()).toBe(1);
    await page.locator('#why-not').selectOption({ label: 'galena' });
    await expect.poll(() => page.locator('.find-why [role=status]').textContent()).toMatch(/galena/);
    await inEachTheme(page, async () => {
      const { violations } = await new AxeBuilder({ page }).include('.find').analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    });

    // What the table says is what the engine makes of the file.
    const cells = page.locator('.find-table .is-chosen td');
    const figure = await cells.nth(1).textContent();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save to a file' }).press('Enter');
    const chunks: Buffer[] = [];
    for await (const chunk of await (await download).createReadStream()) chunks.push(chunk as Buffer);
    const read = readValue(JSON.parse(Buffer.concat(chunks).toString('utf8')));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(figure).toBe(wantFigure(wantValues(trialsOf(read.set).now)[0]));

    await page.getByRole('button', { name: 'Open this set' }).press('Enter');
    await expect.poll(() => page.getByLabel('Name of the set').inputValue()).toBe(read.set.name);
    await page.getByRole('button', { name: 'Back to what I had' }).press('Enter');
    await expect.poll(() => page.getByLabel('Name of the set').inputValue()).toBe('Breadboard medium-wave set');
    await page.reload();
    await page.locator('.station').first().waitFor();
    await page.getByRole('button', { name: 'Find', exact: true }).press('Enter');
    await expect.poll(() => choice.locator('option:checked').textContent()).toBe(BOX.name);
  });
});

test('a box from which nothing can be made says what is missing', async () => {
  await withPage(async (page) => {
    await openBox(page, { format: 'faintwave-box/1', name: 'Empty' });
    await expect
      .poll(() => page.getByLabel('Box of parts', { exact: true }).locator('option:checked').textContent())
      .toBe('Empty');
    await go(page).press('Enter');
    await expect.poll(() => page.locator('.find-results [role=alert]').textContent()).toMatch(/no wire: add a reel/);
  });
});
