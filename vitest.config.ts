import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const inPage = 'test/page/**/*.test.{ts,tsx}';

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['src/**/*.test.{ts,tsx}', 'test/**/*.test.{ts,tsx}'],
          exclude: [inPage],
          setupFiles: ['test/support/fixed-seed.ts'],
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        // Whole pages in a real browser: after the rest and two files at a time, since each is several processes.
        test: {
          name: 'page',
          include: [inPage],
          globalSetup: 'test/support/page-setup.ts',
          maxWorkers: 2,
          expect: { poll: { timeout: 180_000 } },
          sequence: { groupOrder: 1 },
        },
      },
    ],
    // By itself Vitest leaves one processor out: half of a machine of two.
    maxWorkers: availableParallelism(),
    // A busy machine answers late, which is no fault; these only end what hangs.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    env: { TZ: 'UTC' },
  },
});
