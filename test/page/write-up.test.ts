import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';
import { ran } from '../support/command-line.ts';

test('a write-up opened from a disk: accessible, its wave zooms, its sound is whole, and its policy refuses nothing of it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
  const photo = join(folder, 'front.png');
  // One white pixel.
  writeFileSync(
    photo,
    Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAG7buVgAAAABJRU5ErkJggg==',
      'base64',
    ),
  );
  const file = join(folder, 'set.html');
  const { status } = await ran([
    ...['share', 'examples/medium-wave-galena.json', '--html', file, '--photo', `${photo}=The set from the front`],
    ...['--log', 'examples/logs/first-evenings.csv'],
  ]);
  expect(status).toBe(0);
  await withPage(
    async (page) => {
      await page.context().setOffline(true);
      await page.goto(pathToFileURL(file).href);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
      const shown = page.locator('#wave-shown');
      expect(await shown.textContent()).toBe('2.00 ms');
      const drawing = () =>
        page.locator('#wave-drawing').evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
      const before = await drawing();
      await page.getByRole('slider', { name: 'Time shown' }).press('End');
      expect(await shown.textContent()).toBe('4.00 µs');
      expect(await drawing()).not.toBe(before);
      const duration = () => page.locator('audio').evaluate((audio) => (audio as HTMLAudioElement).duration);
      await expect.poll(duration).toBeCloseTo(5, 2);
      expect(await page.getByRole('img', { name: 'The set from the front' }).count()).toBe(1);
      await page.getByRole('heading', { name: 'What was heard' }).waitFor();
    },
    { open: false, width: 390, height: 844 },
  );
});
