import { readdirSync, readFileSync } from 'node:fs';
import type { ElementHandle, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { settled, shown, withPage } from '../support/browser.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((file) => file.endsWith('.json'));

const answered = (page: Page) => page.locator('.station, .stations .quiet').first().waitFor();

/**
 * A slider of the same name is tried at one place only: every step of every slider of every example is held by the tests
 * of their scales, src/app/description/figure-scale.test.ts.
 */
const tried = new Set<string>();

/** Where a slider stands, from a frame after all that a key changed. */
const standing = (slider: ElementHandle<SVGElement | HTMLElement>): Promise<number> =>
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
  const snapshot = await page.locator('body').ariaSnapshot();
  if (/- slider(?! "\w)/.test(snapshot)) found.push(`${where}: a slider has no name:\n${snapshot}`);
  // Elements, not places in a list: the page may put another slider before this one at any time.
  const sliders = (await page.getByRole('slider').elementHandles()) as ElementHandle<SVGElement | HTMLElement>[];
  for (const slider of sliders) {
    const name = await slider.evaluate((element) => {
      const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
      return element.ariaLabel ?? labels.map((label) => label.textContent).join(' ');
    });
    if (tried.has(name) || !(await slider.isEnabled()) || !(await slider.isVisible())) continue;
    tried.add(name);
    await slider.focus();
    let at = await standing(slider);
    const began = at;
    const press = async (key: string, isRight: (before: number, after: number) => boolean) => {
      await page.keyboard.press(key);
      const after = await standing(slider);
      if (!isRight(at, after)) found.push(`${where}: ${name}: ${key} from ${at} to ${after}`);
      at = after;
    };
    await press('End', (before, after) => after >= before);
    await press('ArrowLeft', (before, after) => after < before);
    await press('Home', (before, after) => after <= before);
    await press('ArrowRight', (before, after) => after > before);
    if (await slider.evaluate((element) => element instanceof HTMLInputElement)) await slider.fill(String(began));
    else {
      await press('PageUp', (before, after) => after > before);
      await press('PageDown', (before, after) => after < before);
    }
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
      // The map's sliders come with the figures of the place.
      if ((await tab.getAttribute('id')) === 'stage-0') await settled(page);
      found.push(...(await faults(page, (await tab.getAttribute('id')) ?? '')));
    }
    expect(found).toEqual([]);
  });
});

test('every slider has a name and moves from the keyboard: listening, every scene of Explain, sheets', async () => {
  await withPage(async (page) => {
    await answered(page);
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.locator('.listen-panel input[type=range]').first().waitFor();
    const found = await faults(page, 'Listen');
    await page.getByRole('button', { name: 'Explain', exact: true }).click();
    await page.locator('.explain-stage canvas').waitFor();
    for (const scene of await page.locator('.explain-scenes ol button').all()) {
      await scene.click();
      found.push(...(await faults(page, `Explain, ${await scene.textContent()}`)));
    }
    await page.getByRole('button', { name: 'Sheets', exact: true }).click();
    await page.locator('.sheets-paper svg').first().waitFor();
    found.push(...(await faults(page, 'Sheets')));
    expect(found).toEqual([]);
  });
});
