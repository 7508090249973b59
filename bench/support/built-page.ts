import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { findBrowser, launch } from '../../test/support/find-browser.ts';

/** The page as it is built, opened in a real browser by a new visitor. @param use gets it blank, and its address. */
export async function onBuiltPage<T>(use: (page: Page, url: string) => Promise<T>): Promise<T> {
  // These find the checkout by their own place, so they must not be bundled.
  const here = (file: string) => import(/* @vite-ignore */ pathToFileURL(resolve(file)).href);
  const [{ buildPage, PAGE_FOLDER }, { serve }] = await Promise.all([
    here('scripts/support/build.mjs'),
    here('scripts/support/serve.mjs'),
  ]);
  await buildPage();
  const server = await serve(PAGE_FOLDER);
  const browser = await launch(await findBrowser());
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
    return await use(await context.newPage(), server.url);
  } finally {
    await browser.close();
    await server.close();
  }
}

/** From now on the page notes what its own thread is busy with for 50 ms or more at a stretch. */
export const watchLongTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const found: number[] = [];
    Object.assign(window, { longTasks: found });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) found.push(entry.duration);
    }).observe({ type: 'longtask' });
  });

/** The longest since, ms; 0 where none was as long as 50. */
export const longestTaskSeen = (page: Page): Promise<number> =>
  page.evaluate(() => Math.max(0, ...(window as unknown as { longTasks: number[] }).longTasks));
