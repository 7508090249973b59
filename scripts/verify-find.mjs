// Searches random boxes, receives every set of them in full, and writes what the search missed into docs/find-search.md.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { verifyFind } = await bundled('test/support/find-report.ts', 'verify-find');
  await verifyFind(process.argv.slice(2));
}
