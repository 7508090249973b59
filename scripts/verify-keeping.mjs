// Edits sets at random in two tabs of a browser that is killed again and again, and says whether anything was lost.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { verifyKeeping } = await bundled('test/support/keeping-report.ts', 'verify-keeping');
  await verifyKeeping(process.argv.slice(2));
}
