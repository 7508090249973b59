import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) import('./support/bench.mjs').then(({ runBench }) => runBench(process.argv.slice(2)));
