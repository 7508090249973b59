import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) import('./support/test.mjs').then(({ testEverything }) => testEverything(process.argv.slice(2)));
