// Builds all that is shipped, from scratch where needed: the compiled engine and command line, and the page.
import { buildCommandLine, buildPage } from './support/build.mjs';
import { installIfNeeded } from './support/install.mjs';

await installIfNeeded();
await buildCommandLine({ force: true });
await buildPage({ force: true });
