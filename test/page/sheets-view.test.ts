import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test('the set is turned from the keyboard, and the sheets of a job are chosen at once', async () => {
  await withPage(async (page) => {
    await page.getByRole('button', { name: 'Sheets', exact: true }).click();
    const view = page.locator('.set-view svg');
    await view.waitFor();
    const before = await view.innerHTML();
    const slider = page.getByRole('slider', { name: 'Turn the set' });
    const turn = Number(await slider.inputValue());
    await slider.press('ArrowRight');
    expect(Number(await slider.inputValue())).toBe(turn + 5);
    await expect.poll(() => view.innerHTML()).not.toBe(before);
    await page.getByRole('button', { name: 'To wind', exact: true }).click();
    expect(await page.getByRole('checkbox', { name: /^Print .*glance/ }).isChecked()).toBe(false);
    expect(
      await page
        .getByRole('checkbox', { name: /^Print .*[Cc]oil/ })
        .first()
        .isChecked(),
    ).toBe(true);
    // Drawn by a worker of its own, and put at its place among the others.
    const tree = page.getByRole('button', { name: 'Finding a fault (2 pages)' });
    await tree.waitFor();
    const titles = await page.locator('.sheets-list button').allTextContents();
    const place = titles.findIndex((title) => title.startsWith('Finding a fault'));
    expect(titles[place - 1]).toMatch(/^Bringing it up/);
    await page.getByRole('button', { name: 'To find a fault', exact: true }).click();
    expect(await page.getByRole('checkbox', { name: 'Print “Finding a fault”' }).isChecked()).toBe(true);
    expect(await page.getByRole('checkbox', { name: /^Print .*glance/ }).isChecked()).toBe(false);
    await tree.click();
    await expect.poll(() => page.locator('.sheets-paper svg').textContent()).toContain('Faintwave');
    expect(await page.locator('.sheets-paper svg').textContent()).toContain('→ step 2');
    await expect.poll(() => page.locator('.sheets-choice .primary').isEnabled()).toBe(true);
    // Nothing else that changes draws it anew: a screen reader keeps its place in it.
    await page.locator('.sheets-paper svg').evaluate((svg) => svg.setAttribute('data-same', ''));
    await page.getByRole('checkbox', { name: 'Print “Finding a fault”' }).uncheck();
    expect(await page.locator('.sheets-paper svg[data-same]').count()).toBe(1);
  });
});
