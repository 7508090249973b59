import { chmodSync, existsSync, lstatSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { inRoot } from './paths.mjs';

/** Makes `npx faintwave` work in the checkout: npm links the commands of dependencies only, not the project's own. */
export function linkOwnCommand() {
  const folder = inRoot('node_modules/.bin');
  if (!existsSync(folder)) return;
  const place = inRoot('node_modules/.bin/faintwave');
  if (lstatSync(place, { throwIfNoEntry: false })) rmSync(place, { force: true });
  if (process.platform === 'win32') {
    writeFileSync(`${place}.cmd`, '@node "%~dp0\\..\\..\\bin\\faintwave.mjs" %*\r\n');
    writeFileSync(place, '#!/bin/sh\nexec node "$(dirname "$0")/../../bin/faintwave.mjs" "$@"\n');
  } else {
    symlinkSync('../../bin/faintwave.mjs', place);
    chmodSync(inRoot('bin/faintwave.mjs'), 0o755);
  }
}
