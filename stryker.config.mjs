/** Of one group of files, by `npm run mutants`, which sets both variables. */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'vitest.mutants.config.ts', related: false },
  mutate: (process.env.MUTANTS_FILES ?? '').split(','),
  reporters: ['clear-text', 'json'],
  clearTextReporter: { logTests: false, reportTests: false, reportMutants: false },
  jsonReporter: { fileName: 'reports/mutants.json' },
  ignorePatterns: ['/dist', '/reports', '/test/output/changed'],
  concurrency: 2,
  coverageAnalysis: 'perTest',
  ignoreStatic: true,
  // TypeScript 7 has no compiler API: nothing may be checked or rewritten by it, so no such file is named.
  tsconfigFile: 'tsconfig.none.json',
  allowEmpty: true,
};
