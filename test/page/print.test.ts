import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { settled, withPage } from '../support/browser.ts';
import { rendered, withoutPoppler } from '../support/rendered-pdf.ts';

const A4 = { x: 0, y: 0, w: 210, h: 297 };

test('printing from the browser prints the ticked sheets alone, at true size', async ({ skip }) => {
  const reason = withoutPoppler();
  if (reason && process.env.CI) throw new Error(reason);
  if (reason) skip(reason);
  await withPage(
    async (page) => {
      await page.getByRole('button', { name: 'Sheets', exact: true }).click();
      await page.locator('.sheets-paper svg').waitFor();
      // What can be saved can be printed: drawn again once the ranges are known.
      await settled(page);
      await expect.poll(() => page.locator('.sheets-choice .primary').isEnabled()).toBe(true);
      const boxes = page.getByRole('checkbox', { name: /^Print / });
      for (const box of await boxes.all())
        if (!/dial/i.test((await box.getAttribute('aria-label'))!)) await box.uncheck();
      const title = await page.getByRole('button', { name: /dial/i }).first().textContent();
      const pages = Number(/\((\d+) pages\)/.exec(title!)?.[1] ?? 1);
      await page.getByRole('button', { name: /dial/i }).first().click();
      // Where the ruler of the page shown stands on its paper, mm.
      const ruler = await page.locator('.sheets-paper svg').evaluate((svg) => {
        const marked = [...svg.querySelectorAll('title')].find((one) => one.textContent === 'test ruler')!
          .parentElement!;
        const line = marked.matches('line') ? marked : marked.querySelector('line, path')!;
        const paper = svg.getBoundingClientRect();
        const box = line.getBoundingClientRect();
        const scale = 210 / paper.width;
        return { x: (box.left - paper.left) * scale, y: (box.top + box.height / 2 - paper.top) * scale };
      });
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      const raw = pdf.toString('latin1');
      expect(raw.match(/\/Type\s*\/Page\b/g)).toHaveLength(pages);
      for (const [, width, height] of raw.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)) {
        expect(Math.abs(Number(width) - 595.3)).toBeLessThan(1);
        expect(Math.abs(Number(height) - 841.9)).toBeLessThan(1);
      }
      const file = join(mkdtempSync(join(tmpdir(), 'printed-')), 'printed.pdf');
      writeFileSync(file, pdf);
      const dpi = 600;
      const strip = rendered(file, 1, dpi, { x: ruler.x - 5, y: ruler.y - 0.5, w: 110, h: 1 });
      const columns = Array.from({ length: strip.width }, (_, i) => i).filter((i) =>
        Array.from({ length: strip.height }, (_, j) => j).some((j) => strip.dark(i, j)),
      );
      const length = ((columns[columns.length - 1] - columns[0] + 1) * 25.4) / dpi;
      // The outermost divisions stand half their own width beyond the ends.
      expect(Math.abs(length - 0.15 - 100)).toBeLessThan(0.3);
      // Nothing of the page around the sheets is on the paper: the top margin is blank.
      const margin = rendered(file, 1, 50, { ...A4, h: 8 });
      for (let y = 0; y < margin.height; y++)
        for (let x = 0; x < margin.width; x++) expect(margin.dark(x, y)).toBe(false);
      expect(await page.locator('.printed-sheets').count()).toBe(0);
    },
    { colorScheme: 'dark' },
  );
});

test('printing before the sheets are drawn waits for them; the menu of the browser prints that they are not drawn', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    let letGo = () => {};
    const held = new Promise<void>((resolve) => (letGo = resolve));
    await page.route(/sheets/i, async (route) => {
      await held;
      await route.continue();
    });
    await page.evaluate(() => {
      const seen: number[] = [];
      // As a browser does, without its dialogue.
      window.print = () => {
        dispatchEvent(new Event('beforeprint'));
        seen.push(document.querySelectorAll('.printed-sheets > div > svg').length);
        dispatchEvent(new Event('afterprint'));
      };
      Object.assign(globalThis, { seen });
    });
    const seen = () => page.evaluate(() => (globalThis as unknown as { seen: number[] }).seen);
    await page.getByRole('button', { name: 'Sheets', exact: true }).click();
    // The menu cannot be held back.
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const onPaper = page.locator('body > *').filter({ visible: true });
    expect(await onPaper.allTextContents()).toEqual([
      expect.stringMatching(/^This page is no sheet: the sheets were still being drawn\..*waits for them\.$/s),
    ]);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.emulateMedia({ media: null });
    await page.keyboard.press('Control+p');
    await page.getByText('Printing begins when they are.').waitFor();
    // Taken back, and asked for again.
    await page.getByRole('button', { name: 'Do not print' }).press('Enter');
    await page.getByText('Printing begins when they are.').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+p');
    await page.getByText('Printing begins when they are.').waitFor();
    expect(await seen()).toEqual([]);
    letGo();
    await expect.poll(seen).toHaveLength(1);
    const save = await page.locator('.sheets-choice .primary').textContent();
    const pages = Number(/\d+/.exec(save!)![0]);
    expect(pages).toBeGreaterThan(10);
    expect(await seen()).toEqual([pages]);
    expect(await page.getByText('Printing begins when they are.').count()).toBe(0);
  });
});
