import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test.each([
  { width: 1440, height: 900, colorScheme: 'light' },
  { width: 390, height: 844, colorScheme: 'dark' },
] as const)(
  'terms are explained where they stand, lead on to the glossary and back by keyboard, $width px, $colorScheme',
  async (options) => {
    await withPage(async (page) => {
      await page.locator('.station').first().waitFor();
      await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
      const label = page.getByRole('button', { name: /^Loaded Q, on .*: explain$/ });
      await label.focus();
      await page.keyboard.press('Enter');
      const note = page.locator('.term-note:popover-open');
      await expect.poll(() => note.textContent()).toMatch(/^loaded Q .*aerial and detector connected/);
      const box = (await note.boundingBox())!;
      expect(box.x >= 0 && box.x + box.width <= options.width, 'the note is within the window').toBe(true);
      expect(box.y >= 0 && box.y + box.height <= options.height, 'the note is within the window').toBe(true);
      await page.keyboard.press('Escape');
      await expect.poll(() => note.count()).toBe(0);
      await expect.poll(() => label.evaluate((button) => button === document.activeElement)).toBe(true);
      await page.keyboard.press('Enter');
      await note.getByRole('button', { name: 'In the glossary' }).press('Enter');
      const glossary = page.getByRole('dialog', { name: 'Glossary' });
      await glossary.waitFor();
      const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
      await expect.poll(focused).toMatch(/^loaded Q.*aerial and detector connected/);
      await glossary.locator('.is-chosen').getByRole('button', { name: 'bandwidth' }).click();
      await expect.poll(focused).toMatch(/^bandwidth.*3 dB/);
      const { violations } = await new AxeBuilder({ page }).include('.glossary').analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
      await page.keyboard.press('Escape');
      await glossary.waitFor({ state: 'detached' });
      await expect.poll(() => label.evaluate((button) => button === document.activeElement)).toBe(true);
      await page.getByRole('button', { name: 'Help' }).click();
      await page.getByRole('button', { name: 'Glossary' }).click();
      await glossary.getByRole('button', { name: 'Close' }).click();
      await glossary.waitFor({ state: 'detached' });
      expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
    }, options);
  },
);
