import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const answered = (page: Page) => page.locator('.station').first().waitFor();
const nameOfSet = (page: Page) => page.getByLabel('Name of the set').inputValue();

test('a set is begun from what lies on the bench: assumed values are marked until changed or confirmed, and undo marks them again', async () => {
  await withPage(async (page) => {
    await answered(page);
    const before = await nameOfSet(page);
    await page.locator('.begin-own button').click();
    await page.getByLabel('Variable capacitor').fill('365 mm');
    await page.getByRole('button', { name: 'Show the result' }).click();
    await expect.poll(() => page.locator('#begin-capacitor-problem').textContent()).toMatch(/nF/);
    expect(await nameOfSet(page)).toBe(before);
    await page.getByLabel('Variable capacitor').fill('365 pF');
    await page.getByLabel('Tube or former').fill('70 mm');
    await page.getByLabel('Wire, bare').fill('0.4 mm');
    await page.locator('#begin-detector').selectOption('galena');
    await page.locator('#begin-load').selectOption('phones');
    await page.getByLabel('Town').fill('Little Withy');
    await page.getByRole('button', { name: 'Show the result' }).click();
    const chip = page.locator('.assumed-chip');
    await expect.poll(() => chip.textContent()).toMatch(/^\d\d values assumed$/);
    const focused = () => page.evaluate(() => `${document.activeElement?.id} ${document.activeElement?.className}`);
    await expect.poll(focused).toMatch(/assumed-chip/);
    await expect.poll(() => page.locator('.station').count()).toBe(3);
    // Nothing of the example comes along; plots out of sight are drawn anew when they are scrolled to.
    for (const part of ['.answer', '.stations', '.side', '.foot'])
      await expect.poll(() => page.locator(part).textContent()).not.toMatch(/Saltmarsh|Corvale/);
    const count = async () => Number.parseInt((await chip.textContent())!, 10);
    const all = await count();
    await page.getByRole('tab', { name: /^Aerial/ }).click();
    const height = page.getByLabel('Height', { exact: true });
    const mark = page.getByRole('button', { name: 'Confirm: Height' });
    await mark.waitFor();
    await height.fill('6 m');
    await height.press('Enter');
    await mark.waitFor({ state: 'detached' });
    await expect.poll(count).toBe(all - 1);
    await page.getByRole('button', { name: 'Confirm: Top wire' }).click();
    await expect.poll(count).toBe(all - 2);
    await expect.poll(focused).toMatch(/^f-aerial/);
    await chip.click();
    await page.getByRole('button', { name: 'Confirm all' }).click();
    await chip.waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/^workbench/);
    for (let i = 0; i < 3; i++) await page.locator('.tools').getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(count).toBe(all);
  });
});

test('the way to a set of one’s own is seen at first, and its window fits and works on a phone', async () => {
  await withPage(
    async (page) => {
      await answered(page);
      const invitation = page.locator('.begin-own button');
      const box = (await invitation.boundingBox())!;
      expect(box.y + box.height).toBeLessThan(844);
      await invitation.click();
      await page.locator('.begin').waitFor();
      expect(await page.locator('.begin').evaluate((e) => e.scrollWidth - e.clientWidth)).toBe(0);
      await page.keyboard.press('Escape');
      await page.locator('.begin').waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: 'Begin from my bench…' }).first().click();
      await page.getByRole('button', { name: 'Show the result' }).click();
      await expect.poll(() => page.locator('.assumed-chip').count()).toBe(1);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    },
    { width: 390, height: 844, touch: true },
  );
});

test('what was filled in is there again after Escape and a reload, is gone once the set is begun, and turns hold up nothing', async () => {
  await withPage(async (page) => {
    await answered(page);
    const begin = () => page.locator('.begin-own button').click();
    const wire = page.getByLabel('Wire, bare');
    await begin();
    await wire.fill('0.37 mm');
    await page.locator('#begin-detector').selectOption('galena');
    await page.keyboard.press('Escape');
    await page.locator('.begin').waitFor({ state: 'detached' });
    await page.reload();
    await answered(page);
    await begin();
    expect(await wire.inputValue()).toBe('0.37 mm');
    expect(await page.locator('#begin-detector').inputValue()).toBe('galena');
    const workers: string[] = [];
    page.on('worker', (worker) => workers.push(worker.url()));
    await page.getByRole('button', { name: 'Show the result' }).click();
    await page.locator('.assumed-chip').waitFor();
    expect(
      workers.some((url) => url.includes('complete.worker')),
      'the turns are found beside the page',
    ).toBe(true);
    await page.getByRole('button', { name: 'Open', exact: true }).first().click();
    await page.getByRole('button', { name: 'Begin from my bench…' }).first().click();
    expect(await wire.inputValue()).toBe('');
    await wire.fill('0.5 mm');
    await page.getByRole('button', { name: 'Empty all fields' }).click();
    expect(await wire.inputValue()).toBe('');
  });
});
