import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) import('./support/start.mjs').then(({ start }) => start(process.argv.slice(2)));
