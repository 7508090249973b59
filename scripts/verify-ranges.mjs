// Compares the stated ranges of the examples with plain draws, and writes docs/accuracy.md; with names only prints.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { verifyRanges } = await bundled('test/support/range-report.ts', 'verify-ranges');
  verifyRanges(process.argv.slice(2));
}
