import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installIfNeeded } from './install.mjs';
import { inRoot, ROOT } from './paths.mjs';

/**
 * Bundles a TypeScript file of a checkout for Node, as a build would, and loads it.
 * @param {string} entry from its root
 * @param {string} folder in dist/
 * @param {string} root of the checkout; default this one
 * @returns {Promise<any>} what the file exports
 */
export async function bundled(entry, folder, root = ROOT) {
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
  const outDir = inRoot(`dist/${folder}`);
  await build({
    plugins: [ownPlace],
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: { ssr: resolve(root, entry), outDir, emptyOutDir: true, target: 'node20' },
  });
  const [name] = /[^/]+(?=\.ts$)/.exec(entry) ?? [''];
  return import(pathToFileURL(`${outDir}/${name}.js`).href);
}
