import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const COAST = JSON.parse(readFileSync(new URL('../../examples/coast-by-night.json', import.meta.url), 'utf8'));

const withStations = (count: number, station: (index: number) => object): string =>
  JSON.stringify({
    ...COAST,
    place: { ...COAST.place, stations: Array.from({ length: count }, (_, index) => station(index)) },
  });
const MALFORMED = withStations(20_000, (index) => ({ name: `Station ${index}`, frequency: '1 x', power: -1 }));
const RIGHT = withStations(1000, (index) => ({
  name: `Station ${index}`,
  frequency: `${531 + 9 * (index % 120)} kHz`,
  power: '5 kW',
  distance: `${100 + index} km`,
}));
const ROWS = Array.from(
  { length: 1500 },
  (_, index) => `Station number ${index},${531 + 9 * (index % 120)} kHz,5,${100 + index}`,
);
const TABLE = ['Name,kHz,kW,km', ...ROWS].join('\n');

/** The scripts of workers of a name come only when they are let through: until then nothing is read. */
async function holdWorker(page: Page, name: string): Promise<() => void> {
  let letThrough = () => {};
  const held = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route(new RegExp(`/${name}\\.worker-[^/]*\\.js$`), async (route) => {
    await held;
    await route.continue();
  });
  return letThrough;
}

const openFile = (page: Page, name: string, text: string) =>
  page.locator('#open-file').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

/** As a person pastes it; a field is filled otherwise. */
const paste = (page: Page, selector: string, text: string) =>
  page.locator(selector).evaluate((element, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', pasted);
    element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);

test('while a long file is read the page answers, and reading can be stopped', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    const letThrough = await holdWorker(page, 'reading');
    await openFile(page, 'malformed.json', MALFORMED);
    const notice = page.locator('.notice').filter({ has: page.getByRole('progressbar') });
    await notice.getByText(/^Reading malformed\.json/).waitFor();
    await page.getByRole('tab', { name: /^Detector/ }).click();
    expect(await page.getByRole('tab', { name: /^Detector/ }).getAttribute('aria-selected')).toBe('true');
    expect(await notice.count()).toBe(1);
    const before = await page.locator('.file-name').textContent();
    await notice.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(() => notice.count()).toBe(0);
    letThrough();
    // What is opened next is what comes of it: the stopped one would have put its dialog before it.
    await openFile(page, 'right.json', RIGHT);
    await expect.poll(() => page.locator('.file-name').textContent()).not.toBe(before);
    expect(await page.locator('.file-name').textContent()).toBe('right.json');
    expect(await page.locator('dialog[open]').count()).toBe(0);
  });
});

test('everything wrong with a long pasted description is shown in few lines, and the work is untouched', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    const before = await page.locator('.file-name').textContent();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: 'Paste a description…' }).click();
    await paste(page, '#pasted', MALFORMED);
    expect((await page.locator('#pasted').inputValue()).length).toBeLessThan(2000);
    await page.getByText(/characters; this is the beginning/).waitFor();
    await page.getByRole('button', { name: 'Open it' }).click();
    const dialog = page.getByRole('dialog', { name: 'Paste a description' });
    await dialog.getByText('at most 1000 of them').waitFor();
    expect(await dialog.getByRole('row').count()).toBeLessThan(100);
    // What was pasted is there still, to be mended.
    expect((await page.locator('#pasted').inputValue()).slice(0, 100)).toBe(MALFORMED.slice(0, 100));
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    expect(await page.locator('.file-name').textContent()).toBe(before);
  });
});

test('a list of 1,000 stations is edited as any other, and undone', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await openFile(page, 'right.json', RIGHT);
    await expect.poll(() => page.locator('.file-name').textContent()).toBe('right.json');
    const name = page.getByRole('textbox', { name: 'Name of the set' });
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    const turns = page.locator('#workbench').getByRole('textbox', { name: 'Turns', exact: true }).first();
    const began = await turns.inputValue();
    await turns.fill('-5');
    await turns.press('Enter');
    await page.locator('#workbench .problem').first().waitFor();
    await name.focus();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => page.locator('#workbench .problem').count()).toBe(0);
    expect(await turns.inputValue()).toBe(began);
  });
});

test('a long table of stations: the page answers while it is read; at most 1,000 are taken, and it says so', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('tab', { name: 'Field' }).click();
    const rows = page.locator('.place-table tbody tr');
    await rows.first().waitFor();
    const listed = await rows.count();
    const letThrough = await holdWorker(page, 'place');
    // By a key: figures that come in meanwhile move what a pointer aims at.
    const open = () => page.getByRole('button', { name: 'Paste or import a table…' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await open();
    await paste(page, '#import-text', TABLE);
    await dialog.getByRole('progressbar').waitFor();
    expect(await dialog.getByRole('button', { name: 'Add to the list' }).isDisabled()).toBe(true);
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(() => dialog.count()).toBe(0);
    letThrough();
    await open();
    await paste(page, '#import-text', TABLE);
    await dialog.getByText(/^1,000 stations read.*500 more are left out/).waitFor();
    await dialog.getByRole('button', { name: 'Add to the list' }).click();
    await page.locator('.notice', { hasText: `${listed} of the table are left out` }).waitFor();
    await page.getByRole('button', { name: 'Show all 1000' }).waitFor();
  });
});
