// Builds all that is shipped, from scratch where needed: the compiled engine and command line, the page, and the page
// in one file; and the licences of all of it.
import { buildAll } from './support/build.mjs';
import { installIfNeeded } from './support/install.mjs';
import { writeLicences } from './support/licences.mjs';

await installIfNeeded();
await buildAll();
writeLicences();
