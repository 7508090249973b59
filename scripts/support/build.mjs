import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { alone, isFresh, markFresh } from './fresh.mjs';
import { inRoot } from './paths.mjs';
import { runTool } from './run.mjs';

const settings = ['package-lock.json', 'tsconfig.base.json'].map((name) => inRoot(name));
const MAIN = inRoot('dist/cli/main.js');
const PAGE = inRoot('dist/page');

/** The built page, ready to be served. */
export const PAGE_FOLDER = PAGE;
/** The whole page in one file, to be opened from a disk. */
export const PAGE_FILE = inRoot('dist/faintwave.html');

const commandLine = {
  stamp: inRoot('dist/command-line.built'),
  sources: [
    ...['src/engine', 'src/outputs', 'src/cli', 'tsconfig.build.json'].map((name) => inRoot(name)),
    ...settings,
  ],
};
const page = {
  stamp: inRoot('dist/page.built'),
  sources: [
    ...['src', 'docs', 'examples', 'schema', 'scripts/page', 'vite.config.ts'].map((name) => inRoot(name)),
    ...settings,
  ],
};
const pageFile = { stamp: inRoot('dist/faintwave.built'), sources: page.sources };

const isCommandLineBuilt = () => existsSync(MAIN) && isFresh(commandLine.stamp, commandLine.sources);
const isPageBuilt = () => existsSync(inRoot('dist/page/index.html')) && isFresh(page.stamp, page.sources);
const isPageFileBuilt = () => existsSync(PAGE_FILE) && isFresh(pageFile.stamp, pageFile.sources);

/** Call after the compiler has gone through everything without error, with the time it started. @param {number} started */
export const markCommandLineBuilt = (started) => markFresh(commandLine.stamp, started);

/**
 * Compiles engine, outputs and command line into dist/ unless that is up to date. The compiler writes its output even
 * when types do not fit, so a type error is shown but only missing output is an error.
 * @param {{ quiet?: boolean, force?: boolean }} [options] quiet: the compiler's words go to stderr, nothing else is said
 */
export async function buildCommandLine({ quiet = false, force = false } = {}) {
  if (!force && isCommandLineBuilt()) return;
  await alone('command-line', async () => {
    if (!force && isCommandLineBuilt()) return; // another process has just done it
    if (!quiet) console.log('Compiling the engine and the command line…');
    const started = Date.now();
    /** @type {import('node:child_process').StdioOptions} */
    const stdio = ['ignore', quiet ? 2 : 'inherit', 'inherit'];
    const compile = (/** @type {string[]} */ ...more) =>
      runTool('tsc', ['-b', 'tsconfig.build.json', ...more], { stdio });
    let code = await compile();
    // The compiler trusts its notes in dist/*.tsbuildinfo even when the output beside them was deleted.
    if (!existsSync(MAIN)) code = await compile('--force');
    if (!existsSync(MAIN)) throw new Error('The command line could not be compiled: dist/cli/main.js is missing.');
    if (code === 0) markCommandLineBuilt(started);
    else console.error('(Types do not fit, see above; using what was compiled all the same.)');
  });
}

/**
 * Builds the page into dist/page unless that is up to date; built aside and moved, so a server never shows half of it.
 * @param {{ quiet?: boolean, force?: boolean }} [options]
 */
export async function buildPage({ quiet = false, force = false } = {}) {
  if (!force && isPageBuilt()) return;
  await alone('page', async () => {
    if (!force && isPageBuilt()) return;
    if (!quiet) console.log('Building the page…');
    const started = Date.now();
    const aside = `${PAGE}.new`;
    const code = await runTool('vite', ['build', '--outDir', aside, '--emptyOutDir', '--logLevel', 'warn']);
    if (code !== 0) throw new Error('The page could not be built (see above).');
    const old = `${PAGE}.old`;
    rmSync(old, { recursive: true, force: true });
    if (existsSync(PAGE)) renameSync(PAGE, old);
    renameSync(aside, PAGE);
    rmSync(old, { recursive: true, force: true });
    markFresh(page.stamp, started);
  });
}

/**
 * Builds the page in one file, dist/faintwave.html, unless that is up to date.
 * @param {{ quiet?: boolean, force?: boolean }} [options]
 */
export async function buildPageFile({ quiet = false, force = false } = {}) {
  if (!force && isPageFileBuilt()) return;
  await alone('page-file', async () => {
    if (!force && isPageFileBuilt()) return;
    if (!quiet) console.log('Building the page in one file…');
    const started = Date.now();
    const aside = inRoot('dist/one-file');
    const code = await runTool('vite', ['build', '--mode', 'one-file', '--outDir', aside, '--logLevel', 'error']);
    if (code !== 0) throw new Error('The page could not be built in one file (see above).');
    renameSync(join(aside, 'faintwave.html'), PAGE_FILE);
    rmSync(aside, { recursive: true, force: true });
    markFresh(pageFile.stamp, started);
  });
}

/** Builds all that is shipped, from scratch where needed: the compiled engine and command line, the page, and the page in one file. */
export async function buildAll() {
  await buildCommandLine({ force: true });
  await buildPage({ force: true });
  await buildPageFile({ force: true });
}
