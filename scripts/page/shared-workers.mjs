import { dirname, resolve } from 'node:path';

/** An address of a worker's file, as it stands in the code that starts it. */
const ADDRESS = /new URL\(\s*(['"])([^'"]+\.worker\.ts)\1,\s*import\.meta\.url,?\s*\)/g;
const NOT_READ = /\.worker\.ts['"],/;

/**
 * Builds workers with the page instead of each by itself, so that all of them load what they share once: the engine.
 * @returns {import('vite').Plugin}
 */
export function sharedWorkers() {
  return {
    name: 'faintwave-shared-workers',
    apply: 'build',
    enforce: 'pre',
    transform: {
      filter: { code: '.worker.ts' },
      handler(code, file) {
        const shared = code.replace(ADDRESS, (_, _quote, name) => {
          const id = resolve(dirname(file), name);
          const reference = this.emitFile({ type: 'chunk', id, name: name.slice(name.lastIndexOf('/') + 1, -3) });
          return `import.meta.ROLLUP_FILE_URL_${reference}`;
        });
        if (NOT_READ.test(shared))
          this.error(`The address of a worker in ${file} is written otherwise than they are found by.`);
        return shared === code ? undefined : { code: shared, map: null };
      },
    },
  };
}
