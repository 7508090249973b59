import type { TestProject } from 'vitest/node';
import { buildPage } from '../../scripts/support/build.mjs';
import { type FoundBrowser, findBrowser } from './find-browser.ts';

declare module 'vitest' {
  interface ProvidedContext {
    browser: FoundBrowser;
  }
}

/** Vitest runs this once, before the first page test, and only when page tests are among those chosen. */
export default async function setup({ provide }: TestProject): Promise<void> {
  await buildPage();
  const browser = await findBrowser();
  console.log(`Page tests run in ${browser.about}.`);
  provide('browser', browser);
}
