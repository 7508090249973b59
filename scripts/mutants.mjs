import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough())
  import('./support/mutants.mjs').then(async ({ runMutants }) => {
    process.exitCode = await runMutants(process.argv.slice(2));
  });
