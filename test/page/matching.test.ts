import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test('the best taps for a station are found, taken and taken back', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    await page.getByText(/^Find the best taps for/).click();
    const tap = page.getByLabel('Aerial tap', { exact: true }).first();
    const before = await tap.inputValue();
    await page.getByText(/Best at \d+ turns \(now 11 turns\): /).waitFor();
    await page.getByText(/Of \w+ stations heard one remains, and the dial then covers \d+–\d+\skHz/).waitFor();
    await page.getByRole('button', { name: 'Take the best: Aerial tap' }).click();
    await expect.poll(() => tap.inputValue()).not.toBe(before);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await expect.poll(() => tap.inputValue()).toBe(before);
    await page.getByRole('tab', { name: /^Phones/ }).click();
    await page.getByText(/^Find the best transformer for/).click();
    await page.getByText(/Best as it is, with none\./).waitFor();
    await page.getByText('Best is the loudest', { exact: false }).waitFor();
  });
});

test('two circuits, once chosen, have coils and taps that reach the station; one step takes all of it back', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    const kind = page.getByLabel('Arrangement', { exact: true });
    const before = await kind.inputValue();
    await kind.selectOption('two circuits');
    // A field that is left meanwhile ends what is typed in it, not this step.
    await page.getByLabel('Name of the set').focus();
    await kind.focus();
    await page.getByText(/Tuning coil .* turns, aerial coil .* turns on a former of its own, .* apart/).waitFor();
    expect(await kind.inputValue()).toBe('two circuits');
    await expect.poll(() => page.locator('.station-card, .summary').first().textContent()).toMatch(/kHz/);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await expect.poll(() => kind.inputValue()).toBe(before);
    expect(await page.getByLabel('Name of the coil').count()).toBeLessThan(2);
  });
});

test('a Touchstone file is typed, or read from a file, and what is wrong in it is said by line', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: /^Aerial/ }).click();
    await page.getByLabel('Kind of aerial').selectOption('touchstone');
    const text = page.getByLabel('Touchstone text');
    expect(await text.evaluate((element) => element.tagName)).toBe('TEXTAREA');
    await page.getByLabel('Or from a file').setInputFiles({
      name: 'attic.s1p',
      mimeType: 'text/plain',
      buffer: Buffer.from('! attic wire\n# kHz S RI R 50\n500 0.96 -0.25\n1000 0.9 -0.4\n1600 0.8 -0.55\n'),
    });
    await expect.poll(() => text.inputValue()).toMatch(/attic wire/);
    await expect.poll(() => page.locator('.summary').textContent()).toMatch(/kHz/);
    expect(await page.locator('.field .problem').count()).toBe(0);
    await text.fill('# kHz S RI R 50\n500 0.96\n');
    await page
      .getByText(/line 2: /)
      .first()
      .waitFor();
  });
});
