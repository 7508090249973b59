import { defineConfig } from 'vite';
import { handbook } from './scripts/page/handbook.mjs';
import { offline } from './scripts/page/offline.mjs';
import { oneFile } from './scripts/page/one-file.mjs';
import { sharedWorkers } from './scripts/page/shared-workers.mjs';

// Without these two headers a browser gives the page no memory shared between threads.
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

/** What many workers need is one file, loaded once, rather than dozens of small ones that wait for each other. */
const SHARED = { name: 'shared', test: /src\/(engine|outputs)\/|node_modules\/valibot/, minShareCount: 10 };

export default defineConfig(({ mode }) => {
  const inOneFile = mode === 'one-file';
  const inOnePiece = inOneFile ? { rolldownOptions: { output: { codeSplitting: false } } } : {};
  const split = inOneFile ? inOnePiece : { rolldownOptions: { output: { codeSplitting: { groups: [SHARED] } } } };
  return {
    root: 'src/app',
    base: './', // the built folder works at any address
    publicDir: inOneFile ? false : 'public',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: {
      outDir: inOneFile ? '../../dist/one-file' : '../../dist/page',
      emptyOutDir: true,
      target: 'es2022',
      // What preloads looks for a document, which workers do not have.
      modulePreload: false,
      cssCodeSplit: !inOneFile,
      chunkSizeWarningLimit: inOneFile ? 20_000 : 900,
      ...split,
    },
    // The sound worklet too is a module: import its address with `?worker&url`.
    worker: { format: 'es', ...inOnePiece },
    server: { headers: isolation, port: 5173 },
    preview: { headers: isolation },
    plugins: [handbook(), ...(inOneFile ? [oneFile()] : [sharedWorkers(), offline()])],
  };
});
