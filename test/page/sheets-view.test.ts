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
  });
});
