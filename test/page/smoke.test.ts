import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

test('the page opens, is titled and has its heading', async () => {
  await withPage(async (page) => {
    expect(await page.title()).toContain('Faintwave');
    await page.getByRole('heading', { level: 1 }).waitFor();
  });
});

test('the page may share memory between threads, for the sound', async () => {
  await withPage(async (page) => {
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
  });
});

test('once loaded, the page opens again without a network', async () => {
  await withPage(
    async (page) => {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await page.context().setOffline(true);
      await page.reload();
      await page.getByRole('heading', { level: 1 }).waitFor();
    },
    { serviceWorker: true },
  );
});
