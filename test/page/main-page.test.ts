import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import galena from '../../examples/medium-wave-galena.json' with { type: 'json' };
import { inEachTheme, settled, withPage } from '../support/browser.ts';

const answered = (page: Page) => page.locator('.station').first().waitFor();
const focusedId = (page: Page) => page.evaluate(() => document.activeElement?.id ?? '');
const PHONE = { width: 390, height: 844, touch: true } as const;

/** In the page: controls with a notice over their middle, even when they are scrolled to. */
function controlsUnderNotices(): string[] {
  for (const details of document.querySelectorAll<HTMLDetailsElement>('main details')) details.open = true;
  const controls = document.querySelectorAll<HTMLElement>(
    '.page :is(input, select, button, summary, a):not(.notices *, .skip-links *)',
  );
  return [...controls].flatMap((control) => {
    control.scrollIntoView({ block: 'center' });
    const { left, top, width, height } = control.getBoundingClientRect();
    if (width === 0 || height === 0) return [];
    const over = document.elementFromPoint(left + width / 2, top + height / 2);
    return over?.closest('.notices') ? [control.outerHTML] : [];
  });
}

describe('suggestions', () => {
  test('a line goes to its field; Try makes the change, Undo takes it back', async () => {
    await withPage(async (page) => {
      await answered(page);
      const advice = page.locator('.help li', { hasText: 'A higher aerial' });
      await advice.locator('.help-item').click();
      await expect.poll(() => focusedId(page)).toBe('f-aerial.height');
      const height = page.getByRole('textbox', { name: 'Height', exact: true });
      const before = await height.inputValue();
      await advice.getByRole('button', { name: /^Try/ }).click();
      await expect.poll(() => height.inputValue()).toBe('12 m');
      // What it changes is told in the room of the sentence, and each stage says what it was.
      await page.locator('.trial', { hasText: 'A higher aerial' }).waitFor();
      await expect.poll(() => page.locator('.stage-was').count()).toBeGreaterThan(3);
      await page.locator('.trial').getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => height.inputValue()).toBe(before);
    });
  });
});

describe('what is wrong', () => {
  test('is said by the labels of the fields, both of two at odds, and leads to the field', async () => {
    await withPage(async (page) => {
      await answered(page);
      const meshed = page.getByRole('textbox', { name: 'Meshed', exact: true });
      await meshed.fill('10 pF');
      await meshed.press('Enter');
      const behind = page.locator('.behind');
      await behind.waitFor();
      const said = (await behind.textContent())!;
      expect(said).toContain('Tuning capacitor › Open');
      expect(said).toContain('“Tuning capacitor › Meshed”');
      expect(said).not.toMatch(/tuning\.(minimum|maximum)/);
      await behind.getByRole('button', { name: 'Tuning capacitor › Open' }).click();
      await expect.poll(() => focusedId(page)).toBe('f-tuning.minimum');
      await meshed.fill('500');
      await meshed.press('Enter');
      await expect.poll(() => meshed.inputValue()).toBe('500 pF');
      await behind.waitFor({ state: 'detached' });
    });
  });
});

describe('a notice', () => {
  test.each([
    [1440, 900],
    [1000, 700],
    [390, 844],
  ])('covers no control at %i × %i', async (width, height) => {
    await withPage(
      async (page) => {
        await answered(page);
        await page.getByRole('tab', { name: /^Detector/ }).click();
        await page.getByLabel('Kind of detector').selectOption('valve');
        const notice = page.locator('.notice').first();
        await notice.waitFor();
        const covered = await page.evaluate(controlsUnderNotices);
        expect(covered).toEqual([]);
        expect(await notice.isVisible(), 'it was there all the time').toBe(true);
      },
      { width, height },
    );
  });
});

/** A description with more keys than the page knows: what is said when it is opened is long. */
const ODD = JSON.stringify({
  ...galena,
  ...Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`remark about the winding number ${i}`, i])),
});

test.each([
  [1440, 900],
  [1024, 768],
  [390, 844],
])(
  'a long message takes few lines, can be opened and read whole, and covers no control at %i × %i',
  async (width, height) => {
    await withPage(
      async (page) => {
        await answered(page);
        const file = { name: 'odd.json', mimeType: 'application/json', buffer: Buffer.from(ODD) };
        await page.locator('input[type=file]').first().setInputFiles(file);
        const notice = page.locator('.notice', { hasText: 'odd.json' });
        await notice.waitFor();
        const text = notice.locator('p');
        expect((await text.textContent())!.length).toBeGreaterThan(300);
        const tallest = async () => (await page.locator('.notices').boundingBox())!.height;
        expect(await tallest()).toBeLessThan(150);
        expect(await text.evaluate((p) => p.scrollHeight > p.clientHeight)).toBe(true);
        await notice.getByRole('button', { name: 'Whole message' }).press('Enter');
        await notice.getByRole('button', { name: 'Less', expanded: true }).waitFor();
        expect(await tallest()).toBeLessThan(150);
        await text.press('End');
        await expect.poll(() => text.evaluate((p) => p.scrollTop + p.clientHeight >= p.scrollHeight - 1)).toBe(true);
        expect(await page.evaluate(controlsUnderNotices)).toEqual([]);
      },
      { width, height },
    );
  },
);

test('a notice does not come over the control that brought it', async () => {
  await withPage(
    async (page) => {
      await answered(page);
      await page.getByRole('tab', { name: /^Detector/ }).click();
      const kind = page.getByLabel('Kind of detector');
      await kind.focus();
      await kind.evaluate((select) => {
        const foot = document.querySelector('.foot')!.getBoundingClientRect().top;
        scrollBy(0, select.getBoundingClientRect().bottom + 2 - foot);
      });
      await kind.selectOption('valve');
      await page.locator('.notice').first().waitFor();
      const over = () =>
        kind.evaluate((select) => {
          const { left, top, width, height } = select.getBoundingClientRect();
          return document.elementFromPoint(left + width / 2, top + height / 2) === select;
        });
      await expect.poll(over).toBe(true);
    },
    { width: 390, height: 844 },
  );
});

describe('on a phone', () => {
  test('the head takes two rows, the open stage is seen with its figures, and power is still called power', async () => {
    await withPage(async (page) => {
      await answered(page);
      expect((await page.locator('.header').boundingBox())!.height).toBeLessThan(100);
      const stage = page.getByRole('tab', { name: /^Tuned circuit/ });
      await expect.poll(() => stage.locator('.stage-change').textContent()).toMatch(/^[\d.]+ dB power loss$/);
      expect((await stage.boundingBox())!.height, 'one stage and its neighbours').toBeLessThan(90);
      const box = (await stage.boundingBox())!;
      expect(box.x >= 0 && box.x + box.width <= 390, 'the open stage is in sight').toBe(true);
    }, PHONE);
  });
  test('tapping a stage brings its workbench into view', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.getByRole('tab', { name: /^Aerial/ }).tap();
      const title = page.getByRole('heading', { name: 'Aerial and earth' });
      await expect.poll(async () => (await title.boundingBox())?.y ?? 9e9).toBeLessThan(400);
    }, PHONE);
  });
});

describe('nothing is wider than the screen', () => {
  for (const [name, options] of [
    ['wide', { width: 1280, height: 800 }],
    ['in between', { width: 900, height: 700 }],
    ['a phone', PHONE],
  ] as const)
    test(`on any workbench with all of it open, ${name}`, async () => {
      await withPage(async (page) => {
        await answered(page);
        const over = () =>
          page.evaluate(() => {
            const { scrollWidth, scrollHeight } = document.documentElement;
            // With room enough the columns scroll, and the page itself has nothing below its dial.
            const isWhole = getComputedStyle(document.querySelector('.page')!).display === 'grid';
            return { wide: scrollWidth > innerWidth, long: isWhole && scrollHeight > innerHeight };
          });
        for (const stage of await page.getByRole('tab').all()) {
          await stage.click();
          await page.evaluate(() => {
            for (const details of document.querySelectorAll<HTMLDetailsElement>('#workbench details'))
              details.open = true;
          });
          await settled(page);
          expect(await over(), (await stage.textContent())!).toEqual({ wide: false, long: false });
        }
      }, options);
    });
});

describe('from the keyboard alone', () => {
  test('Tab goes through the page from head to dial and every stop is seen to have the focus', async () => {
    await withPage(async (page) => {
      await answered(page);
      // What still comes in would push what has the focus along.
      await settled(page);
      const stops: string[] = [];
      for (let n = 0; n < 200; n++) {
        await page.keyboard.press('Tab');
        const stop = await page.evaluate(() => {
          const at = document.activeElement as HTMLElement | null;
          if (!at || at === document.body) return undefined;
          const box = at.getBoundingClientRect();
          // A radio button is drawn by the words after it.
          const shown = at.matches('.day-night input') ? (at.nextElementSibling as HTMLElement) : at;
          const style = getComputedStyle(shown);
          return {
            name: at.getAttribute('aria-label') || at.id || at.textContent?.trim().slice(0, 30) || at.tagName,
            isMarked: style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 1,
            isInView: box.bottom > 0 && box.top < innerHeight,
          };
        });
        if (!stop) break;
        expect(stop.isMarked, `${stop.name} has a mark of focus`).toBe(true);
        expect(stop.isInView, `${stop.name} is in view`).toBe(true);
        stops.push(stop.name);
      }
      expect(stops.length).toBeGreaterThan(30);
      const order = ['Name of the set', 'stage-2', 'f-tuning.maximum', 'Pointer of the dial'].map((name) =>
        stops.indexOf(name),
      );
      expect(order).toEqual([...order].sort((a, b) => a - b));
      expect(order[0]).toBeGreaterThanOrEqual(0);
    });
  });
  test('an unfolded menu lies whole within a window 360 to 1440 px wide', async () => {
    await withPage(
      async (page) => {
        await answered(page);
        for (const width of [360, 390, 600, 768, 1440]) {
          await page.setViewportSize({ width, height: 700 });
          await page.getByRole('button', { name: 'Open', exact: true }).click();
          const list = page.locator('.menu-list');
          const box = (await list.boundingBox())!;
          expect(box.x, `${width} px`).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width).toBeLessThanOrEqual(width);
          expect(box.y + box.height).toBeLessThanOrEqual(700);
          await page.keyboard.press('Escape');
          await list.waitFor({ state: 'detached' });
        }
      },
      { width: 360, height: 700 },
    );
  });
  test('a menu opens, Escape folds it and gives the focus back', async () => {
    await withPage(async (page) => {
      await answered(page);
      const open = page.getByRole('button', { name: 'Open', exact: true });
      await open.press('Enter');
      const first = page.getByRole('button', { name: /^A file/ });
      await first.waitFor();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Escape');
      await first.waitFor({ state: 'detached' });
      expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Open/);
    });
  });
});

describe('for everybody', () => {
  for (const [name, options] of [
    ['wide', { width: 1440, height: 900 }],
    ['a phone', PHONE],
  ] as const)
    test(`axe finds nothing in the other views, with a notice or with something wrong: ${name}, light and dark`, async () => {
      await withPage(async (page) => {
        await answered(page);
        const expectNothing = () =>
          inEachTheme(page, async (theme) => {
            const { violations } = await new AxeBuilder({ page }).analyze();
            expect(
              violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
              theme,
            ).toEqual([]);
          });
        await page.locator('.help .try').first().click();
        await page.locator('.trial').waitFor();
        await page.getByRole('textbox', { name: 'Meshed', exact: true }).fill('10 pF');
        await page.keyboard.press('Enter');
        await page.locator('.behind').waitFor();
        await expectNothing();
        await page.getByRole('button', { name: 'Explain', exact: true }).click();
        await page.locator('.explain-stage canvas').waitFor();
        await expectNothing();
        await page.getByRole('button', { name: 'Sheets', exact: true }).click();
        await page.locator('.sheets-paper svg').waitFor();
        await expectNothing();
      }, options);
    });
});
