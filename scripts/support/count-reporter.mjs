import { writeFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/**
 * Vitest reporter that leaves the counts of a run in the file named by FAINTWAVE_COUNTS. A file that does not load, a
 * failing hook and an error outside any test count as one failure each.
 */
export default class CountReporter {
  /**
   * @param {ReadonlyArray<import('vitest/node').TestModule>} modules
   * @param {ReadonlyArray<import('vitest').SerializedError>} unhandled
   * @param {import('vitest/node').TestRunEndReason} reason
   */
  onTestRunEnd(modules, unhandled, reason) {
    /** @type {Counts} */
    const counts = { passed: 0, failed: unhandled.length, skipped: 0 };
    for (const module of modules) {
      let failedHere = 0;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') counts.passed++;
        else if (state === 'failed') failedHere++;
        else counts.skipped++;
      }
      if (failedHere === 0 && module.state() === 'failed') failedHere = 1;
      counts.failed += failedHere;
    }
    if (reason === 'interrupted') counts.failed++;
    writeFileSync(/** @type {string} */ (process.env.FAINTWAVE_COUNTS), JSON.stringify(counts));
  }
}
