import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { withPage } from '../support/browser.ts';

async function detectorBench(page: Page, example?: string): Promise<void> {
  await page.locator('.station').first().waitFor();
  if (example)
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles(inRoot('examples', `${example}.json`));
  await page
    .getByRole('tab', { name: /detector/i })
    .first()
    .click();
}

describe('the crystal', () => {
  test('is probed from the keyboard: the spot, what is heard through it and what a good one is worth', () =>
    withPage(async (page) => {
      await detectorBench(page);
      await page.locator('summary', { hasText: 'Search the crystal' }).click();
      const face = page.getByRole('application', { name: /Crystal face/ });
      const words = page.locator('#crystal-words');
      await expect.poll(() => words.textContent()).toMatch(/: -?\d+ dB SPL, .* a good spot; .*\.$/);
      await expect
        .poll(() => page.getByText(/^Touch it with the pointer/).textContent())
        .toMatch(/On this crystal .* is, through a good spot, [\d.]+ dB louder than through a fair one/);
      const seen = new Set<string>();
      await face.focus();
      for (let i = 0; i < 30; i++) {
        await face.press('ArrowRight');
        seen.add((await words.textContent())!.split('.')[0]);
      }
      expect(seen.size).toBeGreaterThan(1);
      expect(await face.locator('circle').count()).toBeGreaterThan(25);
      const found = await new AxeBuilder({ page }).include('.crystal-hand').include('.crystal').analyze();
      expect(found.violations.map((v) => v.id)).toEqual([]);
    }));
});

describe('detectors compared', () => {
  test('has curves with their swing, loading, law, best tap and load, and words for each ticked', () =>
    withPage(async (page) => {
      await detectorBench(page);
      const card = page.locator('details', { has: page.locator('summary', { hasText: 'Compare detectors' }) });
      await card.locator('summary').first().click();
      await expect.poll(() => card.locator('tbody tr').count()).toBeGreaterThan(10);
      // At first as many columns as the bench has room for, the choice of one the last of them.
      expect(await card.locator('thead th').count()).toBe(6);
      expect(
        await card.locator('table').evaluate((e) => e.getBoundingClientRect().width - e.parentElement!.clientWidth),
      ).toBeLessThan(1);
      await card.getByRole('button', { name: 'More columns' }).press('Enter');
      const heads = (await card.locator('thead th').allTextContents()).map((t) => t.trim());
      for (const head of ['Direct voltage', 'Input resistance', 'Distortion', 'Linear above', 'Best tap', 'Best load'])
        expect(heads).toContain(head);
      await card.locator('figure svg').waitFor();
      const words = card.locator('.bench-words li');
      expect(await words.count()).toBe(3);
      await card.getByRole('checkbox', { name: /^Gold-bonded/ }).check();
      await expect.poll(() => words.count()).toBe(4);
      expect(await card.textContent()).toMatch(/detection loss of \d+ dB.*Square law at this carrier/);
    }));
});

test('behind the detector stands what becomes of the programme', () =>
  withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab').nth(4).click();
    const words = page.locator('#workbench .bench-words li');
    await expect.poll(() => words.count()).toBe(4);
    expect((await words.allTextContents()).join(' ')).toMatch(
      /Treble loss in the tuned circuit.*direct current.*depth of modulation.*capacitor/s,
    );
  }));

describe('a valve', () => {
  test('is seen warming and cooling, and what 5 V costs is said', () =>
    withPage(async (page) => {
      await detectorBench(page, 'ferrite-rod-valve-diode');
      const heater = page.locator('details', {
        has: page.locator('summary', { hasText: 'The heater, switched on and off' }),
      });
      await expect.poll(() => heater.textContent()).toMatch(/At 5 V on the heater .* It warms up in \d+ s/);
      expect(await heater.textContent()).toMatch(
        /Switched off, the valve goes on working while the cathode cools: 3 dB are lost after \d+ s/,
      );
      await heater.locator('svg').first().waitFor();
    }));
});
