import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const boxOf = async (page: Page, selector: string) => (await page.locator(selector).first().boundingBox())!;

/** Heights of the frame, and how much of the bench is seen before anything is scrolled, px. */
test.each([
  { width: 1440, height: 900, touch: false, summary: 40, path: 96, dial: 116, bench: 500 },
  { width: 1024, height: 768, touch: false, summary: 40, path: 96, dial: 116, bench: 250 },
  { width: 390, height: 844, touch: true, summary: 60, path: 96, dial: 150, bench: 120 },
])(
  'at $width × $height the answer, the wants, the bench and the best suggestion are seen without scrolling',
  async (budget) => {
    const { width, height, touch } = budget;
    await withPage(
      async (page) => {
        await page.locator('.answer[aria-busy="false"]').waitFor();
        await page.locator('.station').first().waitFor();
        await page.locator('.help li').first().waitFor({ state: 'attached' });
        const heightOf = async (selector: string) => (await boxOf(page, selector)).height;
        expect(await heightOf('.summary'), 'headline').toBeLessThanOrEqual(budget.summary);
        expect(await heightOf('.path'), 'path').toBeLessThanOrEqual(budget.path);
        const foot = (await boxOf(page, '.foot')).y;
        expect(height - foot, 'dial').toBeLessThanOrEqual(budget.dial);
        expect(foot - (await boxOf(page, '.workbench')).y, 'bench').toBeGreaterThanOrEqual(budget.bench);
        const want = await boxOf(page, '#add-want');
        expect(want.y + want.height).toBeLessThan(foot);
        // On a phone the suggestions come after the bench: the best one stands below the wants.
        if (touch) {
          const best = page.locator('.station-best .try');
          await best.waitFor();
          const { y, height: tall } = (await best.boundingBox())!;
          expect(y + tall, 'best suggestion').toBeLessThan(foot);
        } else {
          const first = await boxOf(page, '.help li');
          expect(first.y + first.height, 'first suggestion').toBeLessThan(foot);
          expect(first.x, 'beside the bench').toBeGreaterThan((await boxOf(page, '.workbench')).x);
        }
        const isCut = await page.locator('.summary').evaluate((e) => e.scrollWidth > e.clientWidth);
        expect(isCut, 'the headline is whole').toBe(false);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        // No letter is smaller than the smallest of the scale, and there are at most seven sizes.
        const sizes = await page.evaluate(() => [
          ...new Set(
            [...document.querySelectorAll('.header *, .lead *, .stations *, .foot *')]
              .filter((e) => [...e.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
              .map((e) => Number.parseFloat(getComputedStyle(e).fontSize)),
          ),
        ]);
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
        expect(sizes.length).toBeLessThanOrEqual(7);
      },
      { width, height, touch },
    );
  },
);
