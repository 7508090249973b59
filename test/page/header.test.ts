import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test.each([
  [1280, 800],
  [1440, 900],
  [1920, 1080],
  [1024, 768],
  [390, 844],
])('at %i × %i nothing covers what is in the head of the page, and a mouse reaches it', async (width, height) => {
  await withPage(
    async (page) => {
      await page.locator('.station').first().waitFor();
      const covered = await page
        .locator('header button:visible, header input[type=text]:visible')
        .evaluateAll((controls) =>
          controls.flatMap((control) => {
            control.scrollIntoView({ block: 'nearest', inline: 'nearest' });
            const { left, top, width, height } = control.getBoundingClientRect();
            const hit = document.elementFromPoint(left + width / 2, top + height / 2);
            return hit && (control.contains(hit) || hit.contains(control)) ? [] : [control.textContent || control.id];
          }),
        );
      expect(covered).toEqual([]);
      await page.getByRole('button', { name: 'Shelf', exact: true }).click();
      await page.getByRole('button', { name: 'Shelf', exact: true, pressed: true }).waitFor();
    },
    { width, height },
  );
});

test('links over the page skip to the workbench and to the suggestions', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    for (const [name, id] of [
      ['Skip to the workbench', 'workbench'],
      ['Skip to the suggestions', 'suggestions'],
    ]) {
      const link = page.getByRole('button', { name, exact: true });
      await link.focus();
      expect((await link.boundingBox())!.width).toBeGreaterThan(24);
      await page.keyboard.press('Enter');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(id);
    }
  });
});
