import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test('a band is proposed, added, switched and changed by itself; a station turns the switch to its band', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    await page.getByText('Band switch: more than one band').click();
    await page.getByRole('button', { name: 'Propose a long-wave band' }).click();
    await page.getByText('One coil more: main long wave.').waitFor();
    await page.getByRole('button', { name: 'Add this band' }).click();

    const onSwitch = (name: RegExp) => page.locator('.band-switch').getByRole('button', { name });
    await expect.poll(() => onSwitch(/^long wave/).getAttribute('aria-pressed')).toBe('true');
    const arrangement = page.locator('section[aria-labelledby="arrangement-title"]');
    const tap = arrangement.getByLabel('Aerial tap', { exact: true }).first();
    const coil = arrangement.getByLabel('Tuning coil', { exact: true }).first();
    await expect.poll(() => coil.inputValue()).toBe('main long wave');
    await tap.fill('33');
    await tap.press('Enter');

    // The same field is the other band's own.
    await onSwitch(/^medium wave/).click();
    await expect.poll(() => coil.inputValue()).toBe('main');
    await expect.poll(() => tap.inputValue()).toBe('11');
    await page
      .getByText(/switched out on this band/)
      .first()
      .waitFor();

    // A station of medium wave, chosen while the switch is on long wave.
    await onSwitch(/^long wave/).click();
    await expect.poll(() => tap.inputValue()).toBe('33');
    const station = page.getByRole('button', { name: /^Saltmarsh Radio/ });
    await page.getByRole('button', { name: /^Saltmarsh Radio.*on medium wave/ }).waitFor();
    await station.click();
    await expect.poll(() => onSwitch(/^medium wave/).getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => page.locator('.chosen-sentence').textContent()).toMatch(/^Saltmarsh Radio, 603 kHz\./);

    await page.getByRole('button', { name: 'Remove the band long wave' }).click();
    await expect.poll(() => page.locator('.band-switch').count()).toBe(0);
    await expect.poll(() => page.locator('.stations').textContent()).not.toMatch(/on (long|medium) wave/);
    await expect.poll(() => tap.inputValue()).toBe('11');
  });
});

test('a band can share the coil that is there', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    await page.getByText('Band switch: more than one band').click();
    await page.getByRole('button', { name: 'Propose a long-wave band' }).click();
    await page.getByRole('radio', { name: /^The coil there is/ }).check();
    await page.getByText(/^No further coil/).waitFor();
    await page.getByRole('button', { name: 'Add this band' }).click();
    const onSwitch = (name: RegExp) => page.locator('.band-switch').getByRole('button', { name });
    const arrangement = page.locator('section[aria-labelledby="arrangement-title"]');
    const inUse = arrangement.getByLabel('Turns in use', { exact: true }).first();
    await onSwitch(/^medium wave/).click();
    await expect.poll(() => inUse.inputValue()).toBe('56');
    await onSwitch(/^long wave/).click();
    await expect.poll(() => inUse.count()).toBe(0);
  });
});

test('the switch is reached by the keyboard and fits a phone', async () => {
  await withPage(
    async (page) => {
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: 'Two-band breadboard set' }).click();
      const long = page.locator('.band-switch').getByRole('button', { name: /^long wave/ });
      await long.focus();
      await long.press('Enter');
      await expect.poll(() => page.locator('.summary').textContent()).toMatch(/(171|225) kHz/);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    },
    { width: 390, height: 844 },
  );
});

test('the band that is looked at is there again after a reload, where no station was chosen', async () => {
  await withPage(async (page) => {
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: 'Two-band breadboard set' }).click();
    const pressed = () => page.locator('.band-switch [aria-pressed=true]').textContent();
    await page.locator('.band-switch').waitFor();
    const other = page.locator('.band-switch [aria-pressed=false]').first();
    // Before the range that follows it once it is known.
    const name = /^\D+/.exec((await other.textContent())!)![0].trim();
    await other.click();
    await expect.poll(pressed).toContain(name);
    await page.reload();
    await page.locator('.answer[aria-busy=false]').waitFor();
    await expect.poll(pressed).toContain(name);
  });
});
