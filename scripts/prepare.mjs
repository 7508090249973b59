// npm runs this after installing in the checkout. A source that does not compile must not keep anybody from installing
// the tools to mend it, so this never fails; the command line compiles again when it is first used.
import { existsSync } from 'node:fs';
import { buildCommandLine } from './support/build.mjs';
import { linkOwnCommand } from './support/link.mjs';
import { TOOLS } from './support/run.mjs';

try {
  linkOwnCommand();
  if (existsSync(TOOLS.tsc)) await buildCommandLine({ quiet: true });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
}
