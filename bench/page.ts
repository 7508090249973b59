import { gzipSync } from 'node:zlib';
import type { Measurement } from './bench.ts';
import { longestTaskSeen, onBuiltPage, watchLongTasks } from './support/built-page.ts';

const answered = '.station';

/** kB of script a browser must have before it can draw anything. */
const firstScript = () =>
  onBuiltPage(async (page, url) => {
    await page.goto(url);
    const scripts = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLScriptElement | HTMLLinkElement>('script[src], link[rel=modulepreload]')].map(
        (one) => ('src' in one ? one.src : one.href),
      ),
    );
    const sizes = await Promise.all(
      scripts.map(async (script) => gzipSync(await (await page.request.get(script)).body()).length),
    );
    return sizes.reduce((sum, size) => sum + size, 0) / 1e3;
  });

/** Seconds from asking for the page to the stations in the order of how they are heard; the middle one of five. */
const firstAnswer = () =>
  onBuiltPage(async (page, url) => {
    const times: number[] = [];
    for (let k = 0; k < 5; k++) {
      await page.context().clearCookies();
      const start = performance.now();
      await page.goto(url);
      await page.locator(answered).first().waitFor();
      times.push((performance.now() - start) / 1000);
    }
    return times.sort((a, b) => a - b)[2];
  });

/** Seconds from the first answer until its figures are medians; the middle one of five. */
const firstMedians = () =>
  onBuiltPage(async (page, url) => {
    const times: number[] = [];
    for (let k = 0; k < 5; k++) {
      await page.goto(url);
      await page.locator(answered).first().waitFor();
      const start = performance.now();
      await page.locator('.answer[aria-busy=false]').waitFor();
      times.push((performance.now() - start) / 1000);
    }
    return times.sort((a, b) => a - b)[2];
  });

/**
 * From a slider's move to the new figure in the path strip, ms: the 95th percentile of 200 moves, each made when the
 * answer to the one before is there.
 */
const sliderToFigure = () =>
  onBuiltPage(async (page, url) => {
    await page.goto(url);
    await page.locator(answered).first().waitFor();
    await page.waitForTimeout(2000);
    return page.evaluate(async () => {
      const slider = document.querySelector<HTMLInputElement>('input[aria-label="Turns, slider"]')!;
      const figures = () => document.querySelector('.path')!.textContent;
      const times: number[] = [];
      const [low, high] = [Number(slider.min), Number(slider.max)];
      for (let k = 0; k < 200; k++) {
        const before = figures();
        const start = performance.now();
        slider.value = String(low + (high - low) * (0.4 + 0.2 * Math.sin(k)));
        slider.dispatchEvent(new Event('input', { bubbles: true }));
        while (figures() === before && performance.now() - start < 2000)
          await new Promise((next) => requestAnimationFrame(next));
        times.push(performance.now() - start);
      }
      times.sort((a, b) => a - b);
      return times[Math.floor(times.length * 0.95)];
    });
  });

/** While every stage is opened, the dial turned from end to end and a slider moved. */
const longestTask = () =>
  onBuiltPage(async (page, url) => {
    await page.goto(url);
    await page.locator(answered).first().waitFor();
    await page.waitForTimeout(2000);
    await watchLongTasks(page);
    for (const stage of await page.getByRole('tab').all()) {
      await stage.click();
      await page.waitForTimeout(300);
    }
    await page.locator('[aria-label="Pointer of the dial"]').focus();
    for (let k = 0; k < 60; k++) {
      await page.keyboard.press('PageUp');
      await page.waitForTimeout(20);
    }
    await page.getByRole('tab', { name: /^Tuned circuit/ }).click();
    const slider = page.locator('#workbench input[type=range]').first();
    await slider.focus();
    for (let k = 0; k < 60; k++) {
      await page.keyboard.press('ArrowRight');
      await page.waitForTimeout(20);
    }
    return longestTaskSeen(page);
  });

/** While a text of 20,000 malformed stations is pasted on the page, and as many rows into the dialog for tables. */
const longestTaskOfPaste = () =>
  onBuiltPage(async (page, url) => {
    await page.goto(url);
    await page.locator(answered).first().waitFor();
    // Made in the page beforehand: handing such texts over would be the longest task.
    await page.evaluate(() => {
      const stations = Array.from({ length: 20_000 }, (_, n) => ({
        name: `Station ${n}`,
        frequency: '1 x',
        power: -1,
      }));
      const rows = Array.from({ length: 19_999 }, (_, n) => `Station ${n},1 x,none`);
      const texts = {
        description: JSON.stringify({ format: 'faintwave-set-1', place: { stations } }),
        table: ['Name,Frequency,Power', ...rows].join('\n'),
      };
      Object.assign(window, { texts });
    });
    const paste = (selector: string, which: 'description' | 'table') =>
      page.locator(selector).evaluate((element, name) => {
        const clipboardData = new DataTransfer();
        clipboardData.setData('text/plain', (window as unknown as { texts: Record<string, string> }).texts[name]);
        element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
      }, which);
    await page.getByRole('tab', { name: 'Field' }).click();
    await page.waitForTimeout(2000);
    await watchLongTasks(page);
    await paste('body', 'description');
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Paste or import a table…' }).click();
    await paste('#import-text', 'table');
    await page.getByRole('dialog').getByText('No station can be read').waitFor();
    await page.waitForTimeout(500);
    return longestTaskSeen(page);
  });

export const measurements: Measurement[] = [
  { name: 'first script of the page, compressed', unit: 'kB', measure: firstScript, goal: { atMost: 250 } },
  { name: 'first answer on the page', unit: 's', measure: firstAnswer, goal: { atMost: 0.5 } },
  { name: 'from the first answer on the page to medians', unit: 's', measure: firstMedians, goal: { atMost: 0.5 } },
  { name: 'from a slider to the figures', unit: 'ms', measure: sliderToFigure, goal: { atMost: 50 } },
  {
    name: 'longest task on the main page’s own thread while stages, dial and slider are used',
    unit: 'ms',
    measure: longestTask,
    goal: { atMost: 50 },
  },
  {
    name: 'longest task on the page’s own thread while 20,000 malformed stations are pasted',
    unit: 'ms',
    measure: longestTaskOfPaste,
    goal: { atMost: 50 },
  },
];
