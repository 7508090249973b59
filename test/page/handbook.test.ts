import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { inEachTheme, withPage } from '../support/browser.ts';

test('the handbook: searched by keyboard, links lead on, pictures are there, licences are listed', async () => {
  await withPage(
    async (page) => {
      await page.locator('.station').first().waitFor();
      await page.getByRole('button', { name: 'Help' }).press('Enter');
      await page.getByRole('button', { name: 'Handbook', exact: true }).press('Enter');
      await page.getByRole('heading', { name: 'A first set in an evening' }).waitFor();
      await page.getByLabel('Search the handbook').fill('turns medium-wave capacitor');
      await page.locator('.handbook-found').getByRole('button', { name: 'How many turns' }).first().press('Enter');
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('How many turns');
      await page.getByLabel('Search the handbook').fill('no such words anywhere');
      await page.getByText('Nothing found.').waitFor();
      await page.getByLabel('Search the handbook').fill('');
      for (const picture of await page.locator('.handbook-text img').all()) {
        await picture.scrollIntoViewIfNeeded();
        await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      await inEachTheme(page, async () => {
        const { violations } = await new AxeBuilder({ page }).include('.handbook').analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes[0].html])).toEqual([]);
      });
      await page.getByRole('button', { name: 'Next: A selective set' }).press('Enter');
      await page.getByRole('heading', { name: 'A selective set' }).waitFor();
      await page.getByRole('button', { name: 'Licences' }).press('Enter');
      await page.locator('summary', { hasText: 'preact' }).first().waitFor();
    },
    { width: 390, height: 844, touch: true },
  );
});
