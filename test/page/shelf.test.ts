import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const answered = (page: Page) => page.locator('.station').first().waitFor();
const name = (page: Page) => page.getByLabel('Name of the set');
const turns = (page: Page) => page.getByRole('textbox', { name: 'Turns', exact: true });
const shelf = (page: Page) => page.getByRole('button', { name: 'Shelf', exact: true }).click();
const cards = (page: Page) => page.locator('.shelf-card .shelf-name').allTextContents();

async function rename(page: Page, text: string): Promise<void> {
  await name(page).fill(text);
  await page.keyboard.press('Enter');
}

test('sets stay on the shelf when others open, are copied, searched, deleted and restored, and go back to versions', async () => {
  await withPage(async (page) => {
    await answered(page);
    await rename(page, 'Kitchen set');
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: 'Long-wave set with a foil capacitor' }).click();
    await expect.poll(() => name(page).inputValue()).toBe('Long-wave set with a foil capacitor');
    await rename(page, 'Attic set');
    await shelf(page);
    await expect.poll(() => cards(page)).toEqual(['Attic set', 'Kitchen set']);
    await page.getByLabel('Copy Kitchen set').click();
    await expect.poll(() => cards(page)).toContain('Kitchen set (copy)');
    await page.getByPlaceholder('Search names and notes').fill('copy kitchen');
    await expect.poll(() => cards(page)).toEqual(['Kitchen set (copy)']);
    await page.getByLabel('Delete Kitchen set (copy)').click();
    await expect.poll(() => cards(page)).toEqual([]);
    await page.locator('.notice').getByRole('button', { name: 'Restore' }).click();
    await expect.poll(() => cards(page)).toEqual(['Kitchen set (copy)']);
    await page.getByRole('button', { name: 'Kitchen set (copy)', exact: true }).click();
    await expect.poll(() => name(page).inputValue()).toBe('Kitchen set (copy)');
    const before = await turns(page).inputValue();
    await turns(page).fill('33');
    await page.keyboard.press('Enter');
    await shelf(page);
    const versions = page.locator('.shelf-versions');
    await versions.getByText(`${before} → 33`).waitFor();
    await versions
      .getByRole('button', { name: /^Go back to the version/ })
      .last()
      .click();
    await page.reload();
    await expect.poll(() => turns(page).inputValue()).toBe(before);
  });
});

test('what is changed in one tab appears in the other, and whichever changes next goes on from it', async () => {
  await withPage(async (page, url) => {
    await answered(page);
    await rename(page, 'In both');
    const other = await page.context().newPage();
    await other.goto(url);
    await answered(other);
    await expect.poll(() => name(other).inputValue()).toBe('In both');
    await other.locator('.notice', { hasText: 'open in another tab' }).waitFor();
    await turns(page).fill('41');
    await expect.poll(() => turns(other).inputValue()).toBe('41');
    await rename(other, 'Renamed there');
    await expect.poll(() => name(page).inputValue()).toBe('Renamed there');
    expect(await turns(page).inputValue()).toBe('41');
    await page.close();
    await other.reload();
    await expect.poll(() => name(other).inputValue()).toBe('Renamed there');
    expect(await turns(other).inputValue()).toBe('41');
  });
});

test('an archive of all sets brings them to another browser, and a link holds the set without the exact position', async () => {
  const archive = await withPage(async (page) => {
    await answered(page);
    await rename(page, 'To be carried');
    await shelf(page);
    await page.getByRole('button', { name: 'Copy the link' }).click();
    const link = await page.getByLabel('The link').inputValue();
    await page.goto(link);
    await page.reload();
    await answered(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      shelf(page).then(() => page.getByRole('button', { name: 'Save all to one archive' }).click()),
    ]);
    const { readFile } = await import('node:fs/promises');
    return readFile((await download.path())!);
  });
  await withPage(async (page) => {
    await answered(page);
    await shelf(page);
    const file = { name: 'shelf.zip', mimeType: 'application/zip', buffer: archive };
    await page.getByLabel('Open an archive of sets').setInputFiles(file);
    await expect.poll(() => cards(page)).toContain('To be carried');
  });
});

test('three taps write down what is heard; it is there after a reload, beside the prediction, and in a CSV file', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.getByRole('button', { name: 'Log', exact: true }).click();
    const station = page.locator('.log-stations button').nth(1);
    const called = (await station.locator('.log-station-name').textContent())!;
    await station.click();
    await page.locator('.log-heard').getByRole('button', { name: 'faint' }).click();
    await page.getByRole('button', { name: '3. Write it down' }).click();
    await page.locator('.log-entries').getByText(called).waitFor();
    await page.reload();
    await answered(page);
    await page.getByRole('button', { name: 'Log', exact: true }).click();
    await page.locator('.log-entries').getByText(called).waitFor();
    await page.locator('.log-table').getByText('faint 1').waitFor();
    const when = page.locator('figure', { hasText: 'When it was heard' });
    await when.locator('circle').first().waitFor({ state: 'attached' });
    await when.getByText('In words').click();
    await when.locator('p', { hasText: '1 heard, 0 not heard, 0 masked' }).waitFor();
    const heardOn = (light: string) => page.getByRole('combobox', { name: 'Heard' }).selectOption(light);
    await expect.poll(() => page.locator('.log .map-station.is-heard').count()).toBe(1);
    await heardOn('by night');
    const byNight = await page.locator('.log-table tr', { hasText: 'by night' }).filter({ hasText: 'faint 1' }).count();
    await expect.poll(() => page.locator('.log .map-station.is-heard').count()).toBe(byNight);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV' }).click(),
    ]);
    const { readFile } = await import('node:fs/promises');
    const text = await readFile((await download.path())!, 'utf8');
    expect(text).toContain(called);
    await page.getByRole('button', { name: /^Delete the entry/ }).click();
    await page.getByText('No entry yet.').waitFor();
    const file = { name: 'log.csv', mimeType: 'text/csv', buffer: Buffer.from(text) };
    await page.getByLabel('Add a log from a CSV file').setInputFiles(file);
    await page.locator('.log-entries').getByText(called).waitFor();
  });
});

test('a place kept once is used by two sets, its change is brought to both and undone; boxes are listed beside', async () => {
  await withPage(async (page) => {
    await answered(page);
    await rename(page, 'Kitchen set');
    await shelf(page);
    await page.getByLabel('Copy Kitchen set').click();
    await expect.poll(() => cards(page)).toContain('Kitchen set (copy)');
    await page.getByRole('button', { name: 'Places', exact: true }).click();
    await page.getByText('No place is kept yet.').waitFor();
    await page.getByRole('button', { name: 'Keep the place of the open set' }).click();
    const card = page.locator('.shelf-card');
    await expect.poll(() => card.textContent()).toMatch(/The open set uses it\. Used by .*Kitchen set/);
    await card.getByRole('button', { name: /^Rename/ }).click();
    await page.getByLabel('New name').fill('Fen corner');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change it in 2 sets too' }).click();
    await expect.poll(() => card.textContent()).toMatch(/Fen corner.*The open set uses it\. Used by .*\(copy\)/);
    await page.locator('.notice', { hasText: 'is changed in 2 sets' }).getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => card.textContent()).toMatch(/No set on the shelf uses it/);
    await page.getByPlaceholder('Search names and notes of places').waitFor();
    await card.getByRole('button', { name: 'Use Fen corner for the open set' }).press('Enter');
    await expect.poll(() => card.textContent()).toMatch(/Used by Kitchen set\./);
    await expect.poll(() => page.evaluate(() => document.activeElement?.ariaLabel)).toBe('Rename Fen corner');
    await page.reload();
    await answered(page);
    await shelf(page);
    await page.getByRole('button', { name: 'Places', exact: true }).click();
    await expect.poll(() => card.textContent()).toMatch(/Fen corner.*Used by Kitchen set\./);
    await card.getByRole('button', { name: 'Delete Fen corner' }).click();
    await page.getByText('No place is kept yet.').waitFor();
    await page.locator('.notice').getByRole('button', { name: 'Put it back' }).click();
    await card.getByText('Fen corner').waitFor();
    await page.getByRole('button', { name: 'Boxes of parts', exact: true }).click();
    await page.getByRole('button', { name: 'New box' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Shed');
    await page.keyboard.press('Enter');
    await shelf(page);
    await page.getByRole('button', { name: 'Boxes of parts', exact: true }).click();
    await card.getByRole('button', { name: 'Copy Shed' }).click();
    await expect.poll(() => cards(page).then((all) => all.sort())).toEqual(['Shed', 'Shed (copy)']);
    await card.getByRole('button', { name: 'Delete Shed', exact: true }).click();
    await expect.poll(() => cards(page)).toEqual(['Shed (copy)']);
    await page.getByPlaceholder('Search names and notes of boxes').fill('attic');
    await expect.poll(() => cards(page)).toEqual([]);
  });
});

test('notes of a place and of a box have several lines, are kept and found', async () => {
  await withPage(async (page) => {
    await answered(page);
    const lines = 'Mast by the shed\nKeys at the gate';
    await page.getByRole('tab', { name: /^Field/ }).click();
    await page.getByRole('button', { name: 'Notes', exact: true }).press('Enter');
    const notes = page.getByRole('textbox', { name: 'Notes', exact: true });
    await notes.pressSequentially('Mast by the shed');
    await notes.press('Enter');
    await notes.pressSequentially('Keys at the gate');
    await notes.blur();
    expect(await notes.inputValue()).toBe(lines);
    await shelf(page);
    await page.getByRole('button', { name: 'Places', exact: true }).click();
    await page.getByRole('button', { name: 'Keep the place of the open set' }).click();
    const card = page.locator('.shelf-card');
    await expect.poll(() => card.locator('.shelf-notes').textContent()).toContain(lines);
    await page.getByPlaceholder('Search names and notes of places').fill('gate');
    await expect.poll(() => card.count()).toBe(1);
    await page.getByPlaceholder('Search names and notes of places').fill('gatepost');
    await expect.poll(() => card.count()).toBe(0);
    await page.getByRole('button', { name: 'Boxes of parts', exact: true }).click();
    await page.getByRole('button', { name: 'New box' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Shed');
    await page.keyboard.press('Enter');
    const add = page.getByRole('button', { name: 'Notes', exact: true });
    if ((await notes.count()) === 0) await add.press('Enter');
    await notes.fill(lines);
    await notes.blur();
    await page.reload();
    await answered(page);
    await page.getByRole('button', { name: 'Find', exact: true }).click();
    await expect.poll(() => notes.inputValue()).toBe(lines);
  });
});

test('a box that cannot be read is listed, saved to a file and deleted, while the others are there', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.evaluate(() => {
      const box = (name: string) => ({
        written: { format: 'faintwave-box/1', name },
        fileName: 'box.json',
        changed: 5,
      });
      localStorage.setItem('faintwave.box.whole', JSON.stringify(box('Whole')));
      localStorage.setItem('faintwave.box.broken', '{"written":');
      const list = ['Whole', 'Broken'].map((name) => ({ id: name.toLowerCase(), name }));
      localStorage.setItem('faintwave.boxes', JSON.stringify(list));
    });
    await page.reload();
    await answered(page);
    await shelf(page);
    await page.getByRole('button', { name: 'Boxes of parts', exact: true }).click();
    await expect.poll(() => cards(page).then((all) => all.sort())).toEqual(['Broken', 'Whole']);
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save Broken to a file' }).click();
    await saved;
    await page.getByRole('button', { name: 'Delete Broken' }).click();
    await expect.poll(() => cards(page)).toEqual(['Whole']);
  });
});

test('of many boxes the first are drawn, and more when asked for', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.evaluate(() => {
      const ids = Array.from({ length: 30 }, (_, k) => `box-${k}`);
      for (const id of ids)
        localStorage.setItem(
          `faintwave.box.${id}`,
          JSON.stringify({ written: { format: 'faintwave-box/1', name: id }, fileName: 'box.json', changed: 5 }),
        );
      localStorage.setItem('faintwave.boxes', JSON.stringify(ids.map((id) => ({ id, name: id }))));
    });
    await page.reload();
    await answered(page);
    await shelf(page);
    await page.getByRole('button', { name: 'Boxes of parts', exact: true }).click();
    await expect.poll(() => cards(page).then((all) => all.length)).toBe(24);
    await page.getByRole('button', { name: 'Show 6 more' }).click();
    await expect.poll(() => cards(page).then((all) => all.length)).toBe(30);
  });
});
