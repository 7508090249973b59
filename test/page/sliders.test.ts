import { readdirSync, readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { shown, withPage } from '../support/browser.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((file) => file.endsWith('.json'));

const answered = (page: Page) => page.locator('.station, .stations .quiet').first().waitFor();

/** A slider of the same name and as many steps is tried in one example only. */
const tried = new Set<string>();

/** Where a slider stands, from a frame after all that a key changed. */
const standing = (slider: Locator): Promise<number> =>
  slider.evaluate(async (element) => {
    for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
    return element instanceof HTMLInputElement ? element.valueAsNumber : Number(element.getAttribute('aria-valuenow'));
  });

/** What is wrong with the sliders to be seen: without a name, or not moved by a key. */
async function faults(page: Page, where: string): Promise<string[]> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  await shown(page);
  const found: string[] = [];
  const sliders = page.getByRole('slider');
  for (let i = 0; i < (await sliders.count()); i++) {
    const slider = sliders.nth(i);
    const name = /^- slider "([^"]+)"/.exec(await slider.ariaSnapshot())?.[1];
    if (!name || /^\W/.test(name)) {
      found.push(`${where}: ${await slider.evaluate((element) => element.outerHTML)} has no name`);
      continue;
    }
    if (!(await slider.isEnabled())) continue;
    const id = `${name}, ${await slider.getAttribute('max')} steps`;
    if (tried.has(id)) continue;
    tried.add(id);
    await slider.focus();
    let at = await standing(slider);
    const began = at;
    const press = async (key: string, isRight: (before: number, after: number) => boolean) => {
      await slider.press(key);
      const after = await standing(slider);
      if (!isRight(at, after)) found.push(`${where}: ${name}: ${key} from ${at} to ${after}`);
      at = after;
    };
    const more = (before: number, after: number) => after > before;
    const less = (before: number, after: number) => after < before;
    await press('End', (before, after) => after >= before);
    await press('ArrowLeft', less);
    await press('PageDown', less);
    await press('Home', (before, after) => after <= before);
    await press('ArrowRight', more);
    await press('PageUp', more);
    if (await slider.evaluate((element) => element instanceof HTMLInputElement)) await slider.fill(String(began));
  }
  return found;
}

test.each(EXAMPLES)('every slider has a name and moves from the keyboard: %s', async (file) => {
  await withPage(async (page) => {
    await answered(page);
    const text = readFileSync(new URL(file, FOLDER));
    await page.locator('#open-file').setInputFiles({ name: file, mimeType: 'application/json', buffer: text });
    await expect.poll(() => page.locator('.file-name').textContent()).toBe(file);
    await answered(page);
    const found: string[] = [];
    for (const tab of await page.getByRole('tab').all()) {
      await tab.click();
      found.push(...(await faults(page, (await tab.getAttribute('id')) ?? '')));
    }
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.getByRole('heading', { name: 'Listening' }).waitFor();
    found.push(...(await faults(page, 'Listen')));
    for (const view of ['Explain', 'Sheets']) {
      await page.getByRole('button', { name: view, exact: true }).click();
      await page.locator('.explain-stage canvas, .sheets-paper svg').first().waitFor();
      found.push(...(await faults(page, view)));
    }
    expect(found).toEqual([]);
  });
});
