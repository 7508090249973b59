import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import { PAGE_FOLDER } from '../../scripts/support/build.mjs';
import { serve } from '../../scripts/support/serve.mjs';
import { launch, launchProfile } from './find-browser.ts';
import { killerOf } from './kill-whole.ts';

export interface PageOptions {
  /** CSS pixels; 1280. */
  width?: number;
  /** CSS pixels; 800. */
  height?: number;
  /** 'light'. */
  colorScheme?: 'light' | 'dark';
  /** True for a person who asked for less movement; true, so that nothing is caught half-way. */
  reducedMotion?: boolean;
  /** A finger instead of a mouse; false. */
  touch?: boolean;
  /** Lets the page keep itself for use without a network; false, for then every test would fetch everything. */
  serviceWorker?: boolean;
  /** False leaves the page blank, to prepare something before `page.goto(url)`; true. */
  open?: boolean;
  /** True when the test provokes errors in the page on purpose; otherwise any error in its console fails the test. */
  errorsExpected?: boolean;
}

/** Only ends what hangs: no test may depend on how fast the machine is. */
const PATIENCE = 180_000;

let browser: Promise<Browser> | undefined;
let server: ReturnType<typeof serve> | undefined;

afterAll(async () => {
  await (await browser)?.close();
  await (await server)?.close();
});

/**
 * Opens the built page in a real browser, as a new visitor with empty storage, for the time of `use`. The test fails if
 * the page throws, logs an error, or asks for anything from another place than its own (it must work without a network).
 * @param use gets the page, and its address with a slash at the end
 */
export async function withPage<T>(use: (page: Page, url: string) => Promise<T>, options: PageOptions = {}): Promise<T> {
  browser ??= launch(inject('browser'));
  server ??= serve(PAGE_FOLDER);
  const [{ url }, running] = await Promise.all([server, browser]);
  const context = await running.newContext(contextOptions(options));
  context.setDefaultTimeout(PATIENCE);
  const problems: string[] = [];
  context.on('weberror', (error) => problems.push(`thrown in the page: ${error.error().stack ?? error.error()}`));
  context.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on('request', (request) => {
    const address = request.url();
    if (/^https?:/.test(address) && !address.startsWith(url)) problems.push(`asked the network for ${address}`);
  });
  try {
    const page = await context.newPage();
    if (options.open !== false) await page.goto(url);
    const result = await use(page, url);
    if (problems.length > 0 && !options.errorsExpected) throw new Error(problems.join('\n'));
    return result;
  } catch (error) {
    // A page that broke explains a step that timed out better than the time-out does.
    if (problems.length > 0 && error instanceof Error && !error.message.includes(problems[0])) {
      error.message += `\n\nBefore that, in the page:\n${problems.join('\n')}`;
    }
    throw error;
  } finally {
    await context.close();
  }
}

/**
 * A browser of its own with a folder of its own, for what outlives a browser.
 * @returns `kill` ends it at once, as a power cut would.
 */
export async function openProfile(folder: string): Promise<{ page: Page; kill: () => Promise<void> }> {
  server ??= serve(PAGE_FOLDER);
  const context = await launchProfile(inject('browser'), folder, contextOptions({}));
  context.setDefaultTimeout(PATIENCE);
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto((await server).url);
  return { page, kill: await killerOf(context) };
}

/** Waits until the page has drawn what it was told. */
export const shown = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
  });

/** Does the same in the light and in the dark colours, the page as it stands. */
export async function inEachTheme(page: Page, check: (theme: 'light' | 'dark') => Promise<void>): Promise<void> {
  for (const theme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: theme });
    await shown(page);
    await check(theme);
  }
}

/** Waits until so much time has passed for the page: its timers that were due by then have run. */
export const passed = (page: Page, ms: number): Promise<void> =>
  page.evaluate((pause) => new Promise<void>((resolve) => setTimeout(resolve, pause)), ms);

/** Waits until the page has left everything in its place for a second: drawings and curves come in after the answer. */
export async function settled(page: Page): Promise<void> {
  // On a busy machine the medians may come later than a second after the first figures.
  await page.waitForFunction(() => document.querySelector('.answer[aria-busy=true]') === null);
  // A worker that ends while it loads leaves a request that never ends; what counts is that nothing moves any more.
  await page.waitForLoadState('networkidle', { timeout: 20_000 }).catch(() => undefined);
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const QUIET = 1000;
        let timer = setTimeout(done, QUIET);
        const watch = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(done, QUIET);
        });
        function done() {
          watch.disconnect();
          resolve();
        }
        watch.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
      }),
  );
}

function contextOptions(options: PageOptions): BrowserContextOptions {
  return {
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    colorScheme: options.colorScheme ?? 'light',
    reducedMotion: (options.reducedMotion ?? true) ? 'reduce' : 'no-preference',
    hasTouch: options.touch ?? false,
    serviceWorkers: options.serviceWorker ? 'allow' : 'block',
    locale: 'en-GB',
    timezoneId: 'UTC',
    acceptDownloads: true,
  };
}
