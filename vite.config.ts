import { defineConfig } from 'vite';
import { offline } from './scripts/page/offline.mjs';

// Without these two headers a browser gives the page no memory shared between threads.
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  root: 'src/app',
  base: './', // the built folder works at any address
  publicDir: 'public',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  // The sound worklet too is a module: import its address with `?worker&url`.
  worker: { format: 'es' },
  server: { headers: isolation, port: 5173 },
  preview: { headers: isolation },
  plugins: [offline()],
});
