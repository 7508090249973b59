import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText } from '../../src/engine/set/read.ts';
import { sheetsFor } from '../../src/outputs/sheets/index.ts';
import { fewestPages, SPARSE } from '../../src/outputs/sheets/paper/fewest-pages.ts';
import { Flow } from '../../src/outputs/sheets/paper/flow.ts';
import type { PageLayout, PaperName } from '../../src/outputs/sheets/paper/page.ts';

const files = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

describe.each(files)('%s', (file) => {
  const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!read.ok) throw new Error(`${file} has problems`);
  const { written, set } = read;
  const reception = receive(set, {});

  test.each(['a4', 'letter'] as const)('on %s no page of several is mostly empty', (paper) => {
    const sheets = sheetsFor(written, set, reception, { paper }).filter(({ pages }) => pages.length > 1);
    expect(sheets.length).toBeGreaterThan(2);
    for (const { pages } of sheets)
      for (const { filled, scene } of pages)
        expect(filled, `${scene.title} on ${paper}`).toBeGreaterThanOrEqual(SPARSE);
  });
});

/** A sheet of two sections with so many lines each, as it is laid out. */
const sections = (first: number, second: number, paper: PaperName = 'a4') => {
  const layouts: PageLayout[] = [];
  const sheet = fewestPages((layout) => {
    layouts.push(layout);
    const flow = new Flow({ id: 'wiring', title: 'Sections', set: 'a set', paper, layout });
    const rows = (count: number) => Array.from({ length: count }, (_, i) => [`row ${i + 1}`, 'words']);
    const columns = [
      { title: 'one', share: 1 },
      { title: 'two', share: 1 },
    ];
    for (const count of [first, second]) {
      flow.heading('A section');
      flow.table(columns, rows(count));
    }
    return flow.finish();
  });
  return { sheet, layouts };
};

describe('a sheet', () => {
  test('that fits one page is laid out once, as usual', () => {
    const { sheet, layouts } = sections(10, 10);
    expect(sheet.pages).toHaveLength(1);
    expect(layouts).toEqual([{ size: 2.9, tight: 1 }]);
  });

  test('a little too long for a page is set closer and takes one', () => {
    const { sheet } = sections(21, 21);
    expect(sheet.pages).toHaveLength(1);
    expect(sheet.pages[0].filled).toBeGreaterThan(0.8);
  });

  test('whose last page would be mostly empty moves a section to it', () => {
    const sheet = fewestPages((layout) => {
      const flow = new Flow({ id: 'wiring', title: 'Blocks', set: 'a set', paper: 'a4', layout });
      // No closer layout makes these lower.
      const block = (height: number) => flow.need(height).add('Figure', [], 'a block').space(height);
      flow.heading('First');
      block(110);
      flow.heading('Second');
      block(100);
      block(40);
      return flow.finish();
    });
    expect(sheet.pages.map(({ headings }) => headings)).toEqual([1, 1]);
    for (const { filled } of sheet.pages) expect(filled).toBeGreaterThanOrEqual(SPARSE);
  });

  test('of many pages is laid out once where no closer layout can save one', () => {
    const { sheet, layouts } = sections(40, 20);
    expect(sheet.pages).toHaveLength(2);
    expect(layouts).toHaveLength(1);
  });
});

test('the ruler stands only on pages with something at full size', () => {
  const flow = new Flow({ id: 'coil', title: 'Two pages', set: 'a set', paper: 'a4' });
  flow.para('Words.').turn();
  flow.template([], { w: 100, h: 50 }, 'a template');
  const { pages, fullSize } = flow.finish();
  expect(fullSize).toBe(true);
  expect(pages.map(({ blocks }) => blocks.some(({ alt }) => alt?.startsWith('Test ruler')))).toEqual([false, true]);
  expect(pages.map(({ scene }) => scene.drawnAt)).toEqual([undefined, 1]);
});

test('what is at full size goes on the next page rather than into the ruler', () => {
  const flow = new Flow({ id: 'coil', title: 'Two pages', set: 'a set', paper: 'a4' });
  flow.para('Words.').space(flow.room - 40);
  flow.template([], { w: 100, h: 35 }, 'a template');
  expect(flow.finish().pages).toHaveLength(2);
});
