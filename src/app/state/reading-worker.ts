/** Reads descriptions beside the page, so that no long one ever holds the page up. */
export const newReadingWorker = (): Worker =>
  new Worker(new URL('../workers/reading.worker.ts', import.meta.url), { type: 'module', name: 'reading' });
