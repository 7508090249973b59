import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

async function openFaults(page: Page): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Faults', exact: true }).press('Enter');
  await page.getByRole('heading', { name: 'Next check' }).waitFor();
}

const causes = (page: Page) => page.locator('.fault-causes > li');

test('by keyboard, on a phone: silence and an open coil lead to the winding, with its remedy; nothing is beyond the edge', async () => {
  await withPage(
    async (page) => {
      await openFaults(page);
      expect(await page.locator('.faults').textContent()).toMatch(/calculated: \w.*, at \d+(\.\d+)?°/);
      for (const one of await page.getByLabel(/: how loud$/).all()) await one.selectOption('not heard');
      const next = page.locator('.faults-next');
      await expect.poll(() => next.textContent()).toMatch(/Good: .* With the likeliest cause: /);
      // Whichever is asked: every reading through the coil is open, and all else is as it should be.
      await page.locator('summary', { hasText: 'Readings' }).press('Enter');
      await page.getByLabel('Resistance from the far end of the tuned coil to the earth terminal').fill('open');
      const tap = page.getByLabel('Resistance from the detector’s terminal on the coil side to the earth terminal');
      await tap.fill('nonsense');
      await tap.press('Enter');
      await expect.poll(() => tap.getAttribute('aria-invalid')).toBe('true');
      await tap.fill('open');
      await tap.press('Enter');
      await expect
        .poll(() => causes(page).first().textContent())
        .toMatch(/Main: wire broken or joint open.*Remedy: Scrape/);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      const { violations } = await new AxeBuilder({ page }).include('.faults').analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes[0].html])).toEqual([]);
    },
    { width: 390, height: 844, touch: true },
  );
});

test('the next check: what it touches is lit on circuit and board, what cannot be done is not asked again, answers clear', async () => {
  await withPage(async (page) => {
    await openFaults(page);
    const question = page.locator('.faults-question');
    await expect
      .poll(() => page.locator('.faults-next svg desc').allTextContents())
      .toContainEqual(expect.stringMatching(/^Positive lead of the meter at .*, negative lead at /));
    // From all cases: from the first few another check may seem best.
    await page.locator('.faults progress').waitFor({ state: 'detached' });
    const first = await question.textContent();
    await page.getByRole('button', { name: 'I cannot do this' }).press('Enter');
    await expect.poll(() => question.textContent()).not.toBe(first);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Next check');
    await page.getByRole('button', { name: 'Clear the answers' }).press('Enter');
    await expect.poll(() => question.textContent()).toBe(first);
  });
});
