import { pathToFileURL } from 'node:url';
import { installIfNeeded } from './install.mjs';
import { inRoot, ROOT } from './paths.mjs';

const HELP = `Measures how fast things are, as work per second and as ratios within this run.

  npm run bench                  everything in bench/
  npm run bench -- reception     only the files whose name contains this
  npm run bench -- --json        for programs
`;

/** Bundles bench/ so that the timed code is what a build makes of it, and runs it. @param {string[]} args */
export async function runBench(args) {
  if (args.includes('--help') || args.includes('-h')) {
    console.log(HELP);
    return;
  }
  await installIfNeeded();
  const { build } = await import('vite');
  // These find the checkout by their own place, so they stay where they are.
  const ownPlace = {
    name: 'own-place',
    enforce: /** @type {const} */ ('pre'),
    /** @param {string} source */
    resolveId(source) {
      const [file] = /scripts\/support\/.*$/.exec(source) ?? [];
      return file ? { id: pathToFileURL(inRoot(file)).href, external: true } : undefined;
    },
  };
  await build({
    plugins: [ownPlace],
    root: ROOT,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      ssr: inRoot('bench/run.ts'),
      outDir: inRoot('dist/bench'),
      emptyOutDir: true,
      target: 'node20',
    },
  });
  const { bench } = await import(pathToFileURL(inRoot('dist/bench/run.js')).href);
  const wanted = args.filter((arg) => !arg.startsWith('-'));
  await bench(wanted, args.includes('--json'));
}
