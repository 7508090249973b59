// Tries readers, laws, storage and listening with random cases for an hour, or as long as said; --write: docs/reliability.md.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { soak } = await bundled('test/soak/soak.ts', 'soak');
  if (!(await soak(process.argv.slice(2)))) process.exitCode = 1;
}
