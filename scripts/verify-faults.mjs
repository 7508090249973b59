// Plants faults in copies of sets, answers the checks asked for, and writes docs/fault-search.md; with names only prints.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { verifyFaults } = await bundled('test/support/fault-report.ts', 'verify-faults');
  verifyFaults(process.argv.slice(2));
}
