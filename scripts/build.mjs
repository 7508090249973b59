// Builds all that is shipped, from scratch where needed: the compiled engine and command line, the page, and the page
// in one file; and the licences of all of it.
import { writeFileSync } from 'node:fs';
import { buildCommandLine, buildPage, buildPageFile } from './support/build.mjs';
import { installIfNeeded } from './support/install.mjs';
import { licencesText } from './support/licences.mjs';
import { inRoot } from './support/paths.mjs';

await installIfNeeded();
await buildCommandLine({ force: true });
await buildPage({ force: true });
await buildPageFile({ force: true });
writeFileSync(inRoot('dist/licences.txt'), licencesText());
