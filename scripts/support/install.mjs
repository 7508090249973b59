import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { inRoot } from './paths.mjs';
import { run } from './run.mjs';

/** @typedef {Record<string, { version?: string, optional?: boolean, link?: boolean }>} Packages */

/** @param {string} file */
function packagesIn(file) {
  try {
    return /** @type {Packages} */ (JSON.parse(readFileSync(file, 'utf8')).packages);
  } catch {
    return undefined;
  }
}

/**
 * True when node_modules holds every package of package-lock.json in the locked version. Compares what npm noted while
 * installing, not dates: those lie after a clone or a change of branch.
 * @param {Packages | undefined} locked
 * @param {Packages | undefined} installed
 */
function isInstalled(locked, installed) {
  if (!locked || !installed) return false;
  return Object.entries(locked).every(([path, { version, optional }]) => {
    if (path === '') return true;
    const there = installed[path];
    return there ? there.version === version : optional === true;
  });
}

/** Installs the packages that package-lock.json names, when they are not there already. Throws when npm fails. */
export async function installIfNeeded() {
  const locked = packagesIn(inRoot('package-lock.json'));
  const installed = packagesIn(inRoot('node_modules/.package-lock.json'));
  if (isInstalled(locked, installed)) return;
  console.log('Installing the packages this needs (about a minute, once)…');
  // A person's own npm settings may leave out development packages or refuse one that asks for a newer Node.
  const args = ['ci', '--include=dev', '--include=optional', '--engine-strict=false', '--loglevel=error'];
  const npm = process.env.npm_execpath ?? '';
  const code = basename(npm).startsWith('npm')
    ? await run(process.execPath, [npm, ...args])
    : await run('npm', args, { shell: process.platform === 'win32' });
  if (code !== 0) throw new Error(`The packages could not be installed: npm ci ended with ${code} (see above).`);
}
