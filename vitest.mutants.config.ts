import { defineConfig } from 'vitest/config';

/** Only the tests that are to notice a mutant of the group at hand. */
export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: (process.env.MUTANTS_TESTS ?? '').split(','),
    testTimeout: 60_000,
    env: { TZ: 'UTC' },
  },
});
