import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { writeWav } from '../../src/outputs/audio/wav.ts';
import { shown, withPage } from '../support/browser.ts';

const openPanel = async (page: Page) => {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.getByRole('heading', { name: 'Listening' }).waitFor();
};
const begin = async (page: Page) => {
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.listen-panel[data-state=on]').waitFor();
  await expect.poll(() => played(page)).toBeGreaterThan(0.5);
};
const played = async (page: Page) => Number(await page.locator('.listen-panel').getAttribute('data-seconds'));
const gaps = async (page: Page) => Number(await page.locator('.listen-panel').getAttribute('data-gaps'));
const level = async (page: Page) => Number(await page.locator('.listen-level meter').getAttribute('value'));

/** Each channel a function of time, as 16 bits a sample. */
function wav(channels: ((t: number) => number)[], rate: number, seconds: number): Buffer {
  const frames = Math.round(rate * seconds);
  const data = channels.map((at) => Float32Array.from({ length: frames }, (_, i) => at(i / rate)));
  return Buffer.from(writeWav(data, { rate }));
}

describe('listening on the page', () => {
  test('silent until asked, then it goes on sounding while the dial is turned from end to end; gaps are counted and shown', async () => {
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
        await shown(page);
      }
      await page.mouse.up();
      await expect.poll(() => played(page)).toBeGreaterThan(from + 10);
      // How many there are depends on what else the machine does; that there are none is measured in bench/.
      const words = async () => (await page.locator('.listen-level').textContent()) ?? '';
      await expect
        .poll(async () => {
          const count = await gaps(page);
          return (await words()).includes(count === 0 ? 'no gaps' : count === 1 ? '1 gap' : `${count} gaps`);
        })
        .toBe(true);
    });
  });

  test('the level falls when the detector is taken out, and the meter and traces move', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      await begin(page);
      await expect.poll(() => level(page)).toBeGreaterThan(25);
      await page.getByText('Waves and spectrum').click();
      expect(await page.locator('.listen-scope canvas').count()).toBe(4);
      await page.getByLabel('Detector removed').check();
      await expect.poll(() => level(page)).toBeLessThan(5);
      const traces = page.locator('.listen-scope figcaption');
      await expect.poll(() => traces.nth(1).textContent()).toMatch(/After the detector 0 V$/);
      await expect.poll(() => traces.nth(2).textContent()).toMatch(/noise of the room only$/);
      const boxes = await Promise.all(
        (await page.locator('.listen-scope canvas').all()).map((one) => one.boundingBox()),
      );
      expect(new Set(boxes.map((box) => box!.height)).size).toBe(1);
    });
  });

  test('keys and buttons tune by a kilohertz, a channel, a station; files that are no sound are refused in words', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      const at = async () => Number.parseInt((await page.locator('.listen-tune output').textContent())!, 10);
      await page.getByRole('button', { name: 'Next station up' }).click();
      const first = await at();
      const onDial = async () => Number.parseFloat((await page.locator('.readout-figure').textContent())!);
      expect(await onDial()).toBe(first);
      await page.getByRole('button', { name: '+1 kHz' }).click();
      await expect.poll(at).toBe(first + 1);
      await page.getByRole('button', { name: '−9 kHz' }).click();
      await expect.poll(at).toBeLessThan(first);
      await begin(page);
      await page.getByText('Your own sound').click();
      await page
        .getByLabel(/^A recording for/)
        .setInputFiles({ name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFFnothing') });
      await page.getByText('The browser cannot read broken.wav as sound').waitFor();
      await page
        .getByLabel(/^A recorded band/)
        .setInputFiles({ name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFFnothing') });
      await page.getByText('This is not a WAV file').waitFor();
    });
  });

  test('a recording of one’s own, the microphone and a recorded band are heard through the set', async () => {
    await withPage(async (page) => {
      await page.context().grantPermissions(['microphone']);
      await openPanel(page);
      await begin(page);
      await expect.poll(() => level(page)).toBeGreaterThan(25);
      await page.getByText('Your own sound').click();
      const recording = page.getByLabel(/^A recording for/);
      await recording.setInputFiles({ name: 'hush.wav', mimeType: 'audio/wav', buffer: wav([() => 0], 24_000, 2) });
      await expect.poll(() => level(page)).toBeLessThan(22);
      const tone = (t: number) => 0.8 * Math.sin(2 * Math.PI * 1000 * t);
      await recording.setInputFiles({ name: 'tone.wav', mimeType: 'audio/wav', buffer: wav([tone], 24_000, 2) });
      await expect.poll(() => level(page)).toBeGreaterThan(35);
      // What a made-up device sends to a microphone: short beeps.
      await page.getByRole('button', { name: /^The microphone as/ }).click();
      await expect.poll(() => level(page)).toBeLessThan(30);
      await expect.poll(() => level(page)).toBeGreaterThan(30);
      await page.getByRole('button', { name: 'Its own programme again' }).click();
      expect(await page.locator('.listen-panel .problem').count()).toBe(0);
      // A carrier 3 kHz above the middle of the recording, which lies that much below the pointer, with a tone on it.
      const kHz = Number(await page.getByRole('slider', { name: 'Pointer of the dial' }).getAttribute('aria-valuenow'));
      const carrier = (shift: number) => (t: number) =>
        0.5 * (1 + 0.5 * Math.sin(2 * Math.PI * 800 * t)) * Math.cos(2 * Math.PI * 3000 * t + shift);
      await page.getByLabel('Centre frequency, kHz').fill(String(kHz - 3));
      await page.getByLabel('Full scale at the aerial, mV').fill('300');
      await page.getByLabel(/^A recorded band/).setInputFiles({
        name: 'band.wav',
        mimeType: 'audio/wav',
        buffer: wav([carrier(0), carrier(-Math.PI / 2)], 48_000, 8),
      });
      await page.getByText(`8 s around ${(kHz - 3).toFixed(1)} kHz.`).waitFor();
      await expect.poll(() => level(page)).toBeGreaterThan(35);
      await page.getByRole('button', { name: 'The stations again' }).click();
      await expect.poll(() => level(page)).toBeGreaterThan(25);
    });
  });

  test('a valve goes on for a while without its heater, and comes back with it', async () => {
    await withPage(async (page) => {
      await page.locator('.station').first().waitFor();
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: 'Ferrite rod and valve diode' }).click();
      await page.locator('.summary', { hasText: 'Ridge Radio' }).waitFor();
      await openPanel(page);
      await begin(page);
      await expect.poll(() => level(page)).toBeGreaterThan(40);
      await page.getByLabel('Heater on').uncheck();
      // Between two words it is silent anyway: heard once while the cathode still glows, and no more when it is cold.
      const coolingWith = (coolest: number, loudest: number) =>
        page.waitForFunction(
          ([kelvins, decibels]) => {
            const panel = document.querySelector('.listen-panel')!;
            const cathode = Number(/cathode (\d+) K/.exec(panel.textContent ?? '')?.[1] ?? Number.NaN);
            const { value } = panel.querySelector<HTMLMeterElement>('.listen-level meter')!;
            return cathode > kelvins ? value > decibels : cathode <= kelvins && `${value} at ${cathode} K`;
          },
          [coolest, loudest],
        );
      expect(await (await coolingWith(800, 20)).jsonValue()).toBe(true);
      expect(await (await coolingWith(550, 200)).jsonValue()).toMatch(/^0 at/);
      await page.getByLabel('Heater on').check();
      await expect.poll(() => level(page)).toBeGreaterThan(40);
    });
  });

  test('no barrier found by axe, before and while it sounds', async () => {
    await withPage(async (page) => {
      await openPanel(page);
      const check = async () => (await new AxeBuilder({ page }).include('.listen-panel').analyze()).violations;
      expect(await check()).toEqual([]);
      await begin(page);
      expect(await check()).toEqual([]);
    });
  });
});
