import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const panel = (page: Page) =>
  page.locator('details', { has: page.locator('summary', { hasText: 'Waves at any point' }) });

async function openWaves(page: Page): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page
    .getByRole('tab', { name: /detector/i })
    .first()
    .click();
  await panel(page).locator('summary').click();
  await page.locator('.node-waves-window canvas').waitFor();
}

const drawn = (page: Page) =>
  panel(page)
    .getByText(/^Drawn:/)
    .textContent();

test('true waves at any point of the set: chosen, read in words, zoomed by keys and saved', () =>
  withPage(async (page) => {
    await openWaves(page);
    const readings = panel(page).locator('.node-waves-readings li');
    await expect.poll(() => readings.count()).toBe(4);
    await expect.poll(() => readings.last().textContent()).toMatch(/^After the detector, .* audio .* peak/);
    expect(await readings.first().textContent()).toMatch(/^Aerial terminal: −.* carrier .* modulated \d+ %/);

    // The current through the detector as well: a run of its own.
    await panel(page).getByLabel('Current through the detector').check();
    await expect.poll(() => readings.count()).toBe(5);
    await expect.poll(() => readings.nth(3).textContent()).toMatch(/µA|nA|mA/);

    const whole = await drawn(page);
    expect(whole).toMatch(/^Drawn: 5 ms from the start/);
    const picture = panel(page).locator('.node-waves-window');
    await picture.focus();
    for (let i = 0; i < 30; i++) await picture.press('+');
    await expect.poll(() => drawn(page)).toMatch(/ 1(\.0)? cycle of the carrier/);
    await picture.press('Home');
    await expect.poll(() => drawn(page)).toBe(whole);
    await panel(page).getByRole('button', { name: 'Single cycles' }).click();
    await expect.poll(() => drawn(page)).toMatch(/ 3(\.0)? cycles of the carrier/);

    const [csv] = await Promise.all([
      page.waitForEvent('download'),
      panel(page).getByRole('button', { name: 'Save as CSV' }).click(),
    ]);
    const lines = (await readFile((await csv.path())!, 'utf8')).trim().split('\n');
    expect(lines[0]).toContain('"Current through the detector (A)"');
    expect(lines.length).toBeGreaterThan(90);
    const [svg] = await Promise.all([
      page.waitForEvent('download'),
      panel(page).getByRole('button', { name: 'Save as SVG' }).click(),
    ]);
    expect(await readFile((await svg.path())!, 'utf8')).toContain('Top of the coil');

    const found = await new AxeBuilder({ page }).include('.node-waves').analyze();
    expect(found.violations.map((v) => v.id)).toEqual([]);
  }));

test('a long run shows how far it is and can be stopped', () =>
  withPage(async (page) => {
    await openWaves(page);
    // Looked for before it begins and stopped within the page: from outside, on a busy machine, it might be over by then.
    const bars = panel(page).evaluate(
      (box) =>
        new Promise<number>((done) => {
          const look = () => {
            const stop = [...box.querySelectorAll('button')].find(({ textContent }) => textContent === 'Stop');
            if (!stop) return void requestAnimationFrame(look);
            const count = box.querySelectorAll('progress').length;
            stop.click();
            done(count);
          };
          look();
        }),
    );
    await panel(page).getByLabel('Duration').selectOption('0.05');
    expect(await bars).toBe(1);
    await panel(page).getByRole('button', { name: 'Calculate again' }).waitFor();
    // What was there before stays.
    expect(await drawn(page)).toMatch(/^Drawn: 5 ms/);
  }));
