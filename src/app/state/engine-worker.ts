/** The engine beside the page, so that no figure ever holds the page up. */
export const newEngineWorker = (name: string): Worker =>
  new Worker(new URL('../workers/engine.worker.ts', import.meta.url), { type: 'module', name });
