import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const answered = (page: Page) => page.locator('.station').first().waitFor();

test('a want is added, edited and removed by keyboard, shows what the set gives of it, and the best suggestion for it can be tried', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.locator('#add-want').focus();
    await page.keyboard.press('Enter');
    const chip = page.locator('.want').first();
    await expect.poll(() => chip.textContent()).toMatch(/as loud as possible ✓met \d+ dB SPL/);
    await expect.poll(() => page.locator('#want-kind').evaluate((e) => e === document.activeElement)).toBe(true);
    await page.locator('#want-kind').selectOption('band');
    await expect.poll(() => chip.textContent()).toMatch(/531–1602\skHz covered ✗not met \d+–\d+\skHz/);
    await page.keyboard.press('Escape');
    expect(await page.locator('.want-editor').count()).toBe(0);
    const best = page.locator('.want-best');
    await expect.poll(() => best.textContent()).toMatch(/^Best: .*range/);
    for (const part of [chip, best]) expect((await part.boundingBox())!.y).toBeLessThan(900);
    await best.getByRole('button', { name: /^Try the best/ }).click();
    await expect.poll(() => chip.textContent()).not.toMatch(/not met \d+–15\d\d\skHz/);
    await chip.getByRole('button', { name: /^Remove this want/ }).press('Enter');
    await expect.poll(() => page.locator('.want').count()).toBe(0);
  });
});

test.each([
  [1440, 900],
  [390, 844],
])('the figures of a want have room at %i × %i', async (width, height) => {
  await withPage(
    async (page) => {
      await answered(page);
      await page.locator('#add-want').click();
      await page.locator('#want-kind').selectOption('clear');
      const by = page.locator('.want-editor .figure-input');
      await by.waitFor();
      expect((await by.boundingBox())!.width).toBeGreaterThan(60);
      const name = (await page.locator('.want-editor .field-head label').boundingBox())!;
      expect(name.height).toBeLessThan(30);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    },
    { width, height },
  );
});

test('a part is kept from its panel, and stands beside the wants', async () => {
  await withPage(
    async (page) => {
      await answered(page);
      await page.getByRole('tab', { name: /^Phones/ }).click();
      await page.getByRole('checkbox', { name: /^Keep/ }).check();
      const kept = page.locator('#kept-title + .want-list .want');
      expect(await kept.textContent()).toMatch(/^Phones or amplifier/);
      await kept.getByRole('button').click();
      await expect.poll(() => page.getByRole('checkbox', { name: /^Keep/ }).isChecked()).toBe(false);
    },
    { width: 1024, height: 768 },
  );
});

test('wants and the best suggestion are seen without scrolling on a phone', async () => {
  await withPage(
    async (page) => {
      await answered(page);
      await page.locator('#add-want').click();
      await page.locator('#want-kind').selectOption('band');
      await page.getByRole('button', { name: 'Done' }).click();
      const best = page.locator('.want-best');
      await expect.poll(() => best.textContent()).toMatch(/^Best: /);
      const box = (await best.boundingBox())!;
      expect(box.y + box.height + (await page.evaluate(() => scrollY))).toBeLessThan(844);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    },
    { width: 390, height: 844, touch: true },
  );
});
