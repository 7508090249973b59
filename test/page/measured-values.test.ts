import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import demo from '../../examples/medium-wave-galena.json' with { type: 'json' };
import { withPage } from '../support/browser.ts';

const measured = {
  inductance: { value: '200 µH', error: '1 %', method: 'resonance', date: '2026-11-20' },
  q: { value: 140, error: '5 %', method: 'borrowed Q meter' },
};
const bench = { ...demo, coils: [{ ...demo.coils[0], measured }] };

async function open(page: Page, name: string, description: object): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page
    .locator('#open-file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(description)) });
  await expect.poll(() => page.locator('.file-name').textContent()).toContain(name);
}

test('the panel of a part shows what was measured beside what is calculated, and takes it out', async () => {
  await withPage(
    async (page) => {
      await open(page, 'bench.json', bench);
      const here = page.locator('.workbench .measured-here');
      await expect
        .poll(() => here.textContent())
        .toMatch(
          /Inductance of the coil.*measured 200 µH.*calculated 219 µH.*8\.\d % below.*as a former of .* \(not 63 mm\), or \d\d turns \(not 56\).*Resonance with known capacitors, 2026-11-20.*Q of the coil.*borrowed Q meter/,
        );
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      const { violations } = await new AxeBuilder({ page }).include('.measured-here').analyze();
      expect(violations.map(({ id }) => id)).toEqual([]);
      const figures = page.locator('.workbench .figures', { hasText: 'Length of wire' });
      expect(await figures.textContent()).toContain('200 µH');
      await here.getByRole('button', { name: 'Remove Inductance of the coil' }).press('Enter');
      await expect.poll(() => figures.textContent()).toContain('219 µH');
      await expect.poll(() => here.textContent()).not.toContain('Inductance');
      await here.getByRole('button', { name: 'Remove Q of the coil' }).press('Enter');
      await expect.poll(() => here.count()).toBe(0);
      await page.keyboard.press('Control+z');
      await expect.poll(() => here.textContent()).toMatch(/Q of the coil/);
    },
    { width: 390, height: 844, touch: true },
  );
});

test('typed readings outlast the view and the page, stay with their own set, and go when cleared', async () => {
  await withPage(async (page) => {
    await open(page, 'bench.json', bench);
    const measure = async () => {
      await page.getByRole('button', { name: 'Measure', exact: true }).press('Enter');
      await page.locator('.measure-offered button').first().waitFor();
      await page.locator('.measure-offered button', { hasText: 'Dial readings' }).first().press('Enter');
      await page.getByRole('heading', { name: 'Dial readings', exact: true }).waitFor();
    };
    const frequency = page.getByLabel('frequency, reading 1');
    await measure();
    await frequency.fill('603');
    await page.getByRole('button', { name: 'Set', exact: true }).press('Enter');
    await frequency.waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('.station').first().waitFor();
    await measure();
    expect(await frequency.inputValue()).toBe('603');
    await page.locator('.measure-typed').waitFor();

    await page.getByRole('button', { name: 'Set', exact: true }).press('Enter');
    await open(page, 'other.json', { ...demo, name: 'Other set' });
    await measure();
    expect(await frequency.inputValue()).toBe('');
    await frequency.fill('909');
    await page.getByRole('button', { name: 'Clear all typed readings' }).press('Enter');
    await expect.poll(() => frequency.inputValue()).toBe('');
    await page.getByRole('button', { name: 'Put back' }).press('Enter');
    await expect.poll(() => frequency.inputValue()).toBe('909');
  });
});
