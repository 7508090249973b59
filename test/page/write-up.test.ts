import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';
import { ran } from '../support/command-line.ts';

/** White. */
const ONE_PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAG7buVgAAAABJRU5ErkJggg==',
  'base64',
);

test('a write-up opened from a disk: accessible, its wave zooms, its sound is whole, and its policy refuses nothing of it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
  const photo = join(folder, 'front.png');
  writeFileSync(photo, ONE_PIXEL);
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

test('the page saves the same of the set in focus: photos with their captions, and no position', async () => {
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    const photo = { name: 'front-view.png', mimeType: 'image/png', buffer: ONE_PIXEL };
    await page.getByLabel('Photos for the write-up').setInputFiles(photo);
    await page.getByLabel('What is seen in front-view.png').fill('The set on its board');
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a web page' }).click(),
    ]);
    const html = readFileSync(await saved.path(), 'utf8');
    expect(html).toContain('<figcaption>The set on its board</figcaption>');
    expect(html).toContain('<audio controls');
    const [, description] = /href="data:application\/json;base64,([^"]+)"/.exec(html)!;
    const { place } = JSON.parse(Buffer.from(description, 'base64').toString('utf8'));
    expect(place.stations.length).toBeGreaterThan(0);
    expect(place.position).toBeUndefined();
    await page
      .getByLabel('Photos for the write-up')
      .setInputFiles({ ...photo, name: 'x.png', buffer: Buffer.from('no') });
    await page.getByRole('button', { name: 'Save as Markdown' }).click();
    await page.getByText('This browser cannot read as a picture: x.png').waitFor();
  });
});
