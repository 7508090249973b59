import { expect, test } from 'vitest';
import { settled, withPage } from '../support/browser.ts';

/** Twice what browsers begin with, px. */
const LETTERS = 32;
/** What comes last into a view, and is widest. */
const LAST: Readonly<Record<string, string>> = {
  Set: '.help li',
  Measure: '.readings-file',
  Explain: '.explain-stage canvas',
};

test('at 390 px with letters twice as large no view is wider than the screen', async () => {
  await withPage(
    async (page, url) => {
      const session = await page.context().newCDPSession(page);
      await session.send('Page.enable');
      await session.send('Page.setFontSizes', { fontSizes: { standard: LETTERS, fixed: LETTERS } });
      await page.goto(url);
      await page.locator('.station').first().waitFor();
      expect(await page.evaluate(() => getComputedStyle(document.body).fontSize)).toBe(`${LETTERS}px`);
      const views = await page.locator('.views button').allTextContents();
      expect(views).toEqual(expect.arrayContaining(['Set', 'Measure', 'Explain']));
      for (const view of views) {
        await page.locator('.views').getByRole('button', { name: view, exact: true }).press('Enter');
        if (LAST[view]) await page.locator(LAST[view]).first().waitFor();
        await settled(page);
        expect(await tooWide(page), view).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), view).toBe(390);
      }
    },
    { width: 390, height: 844, touch: true, open: false },
  );
});

type OpenPage = Parameters<Parameters<typeof withPage>[0]>[0];

/** Elements that reach beyond the screen, but for what scrolls in a box of its own. */
const tooWide = (page: OpenPage): Promise<string[]> =>
  page.evaluate(() => {
    const { clientWidth } = document.documentElement;
    const reaches = (element: Element): boolean => element.getBoundingClientRect().right > clientWidth + 0.5;
    const isBoxed = (element: Element): boolean => {
      for (let box = element.parentElement; box && box !== document.body; box = box.parentElement)
        if (getComputedStyle(box).overflowX !== 'visible' && !reaches(box)) return true;
      return false;
    };
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.getBoundingClientRect().width > 0 && reaches(element) && !isBoxed(element))
      .map((element) => `${element.tagName}.${element.getAttribute('class')}`);
  });
