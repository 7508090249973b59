import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const openPanel = async (page: Page) => {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.getByRole('heading', { name: 'Listening' }).waitFor();
};
const begin = async (page: Page) => {
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.listen-panel[data-state=on]').waitFor();
  await expect.poll(() => played(page), { timeout: 30_000 }).toBeGreaterThan(0.5);
};
const played = async (page: Page) => Number(await page.locator('.listen-panel').getAttribute('data-seconds'));
const gaps = async (page: Page) => Number(await page.locator('.listen-panel').getAttribute('data-gaps'));
const level = async (page: Page) => Number(await page.locator('.listen-level meter').getAttribute('value'));

describe('listening on the page', () => {
  test('silent until asked, then ten seconds without a gap while the dial is turned from end to end', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      expect(await page.locator('.listen-panel').getAttribute('data-state')).toBe('off');
      await page.getByText('turn the volume down first').waitFor();
      await begin(page);
      const from = await played(page);
      const slider = page.getByRole('slider', { name: 'Pointer of the dial' });
      const box = (await slider.boundingBox())!;
      await page.mouse.move(box.x + 20, box.y + box.height / 2);
      await page.mouse.down();
      const steps = 100;
      for (let k = 0; k <= steps; k++) {
        await page.mouse.move(box.x + 20 + ((box.width - 40) * k) / steps, box.y + box.height / 2);
        await page.waitForTimeout(80);
      }
      await page.mouse.up();
      await expect.poll(() => played(page), { timeout: 30_000 }).toBeGreaterThan(from + 10);
      expect(await gaps(page)).toBe(0);
    });
  }, 120_000);

  test('the level falls when the detector is taken out, and the meter and traces move', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      await begin(page);
      await expect.poll(() => level(page), { timeout: 15_000 }).toBeGreaterThan(25);
      expect(await page.locator('.listen-scope canvas').count()).toBe(4);
      await page.getByLabel('Detector taken out').check();
      await expect.poll(() => level(page), { timeout: 15_000 }).toBeLessThan(5);
    });
  }, 120_000);

  test('keys and buttons tune by a kilohertz, a channel, a station; files that are no sound are refused in words', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      const at = async () => Number.parseInt((await page.locator('.listen-tune output').textContent())!, 10);
      await page.getByRole('button', { name: 'Station above' }).click();
      const first = await at();
      await page.getByRole('button', { name: '+1 kHz' }).click();
      await expect.poll(at).toBe(first + 1);
      await page.getByRole('button', { name: '−9 kHz' }).click();
      await expect.poll(at).toBeLessThan(first);
      await begin(page);
      await page.getByText('Your own sound').click();
      await page
        .getByLabel(/^A recording for/)
        .setInputFiles({ name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFFnothing') });
      await page.getByText('broken.wav is no sound that this browser can read').waitFor();
      await page
        .getByLabel(/^A recorded band/)
        .setInputFiles({ name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFFnothing') });
      await page.getByText('this is not a WAV file').waitFor();
    });
  }, 120_000);

  test('no barrier found by axe, before and while it sounds', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      const check = async () => (await new AxeBuilder({ page }).include('.listen-panel').analyze()).violations;
      expect(await check()).toEqual([]);
      await begin(page);
      expect(await check()).toEqual([]);
    });
  }, 120_000);
});
