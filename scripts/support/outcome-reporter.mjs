import { writeFileSync } from 'node:fs';

/** @typedef {{ passed: number, skipped: number, failures: string[] }} Outcome */

/**
 * Vitest reporter that leaves the outcome of a run in the file named by FAINTWAVE_OUTCOME: how many passed, and in a line
 * each what failed. A file that does not load, a failing hook and an error outside any test are a failure each.
 */
export default class OutcomeReporter {
  /**
   * @param {ReadonlyArray<import('vitest/node').TestModule>} modules
   * @param {ReadonlyArray<import('vitest').SerializedError>} unhandled
   * @param {import('vitest/node').TestRunEndReason} reason
   */
  onTestRunEnd(modules, unhandled, reason) {
    /** @type {Outcome} */
    const outcome = { passed: 0, skipped: 0, failures: [] };
    /** @type {(where: string, error: { message?: string } | undefined) => void} */
    const fails = (where, error) => {
      outcome.failures.push(`${where}: ${error?.message?.split('\n', 1)[0] ?? 'it failed without a message'}`);
    };
    for (const error of unhandled) fails('outside any test', error);
    for (const module of modules) {
      const file = module.relativeModuleId;
      const before = outcome.failures.length;
      for (const error of module.errors()) fails(file, error);
      for (const suite of module.children.allSuites()) {
        for (const error of suite.errors()) fails(`${file} > ${suite.fullName}`, error);
      }
      for (const test of module.children.allTests()) {
        const { state, errors } = test.result();
        if (state === 'passed') outcome.passed++;
        else if (state === 'failed') fails(`${file} > ${test.fullName}`, errors[0]);
        else outcome.skipped++;
      }
      if (module.state() === 'failed' && outcome.failures.length === before) fails(file, undefined);
    }
    if (reason === 'interrupted') outcome.failures.push('the run was interrupted');
    writeFileSync(/** @type {string} */ (process.env.FAINTWAVE_OUTCOME), JSON.stringify(outcome));
  }
}
