import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { writeLicences } from './licences.mjs';
import { ROOT } from './paths.mjs';

const run = promisify(execFile);
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const options = { maxBuffer: 1 << 26, shell: process.platform === 'win32' };

/**
 * @typedef {{ filename: string, files: { path: string }[] }} Packed
 * @param {string} from folder of a package
 * @param {string} to folder for its file
 * @returns {Promise<Packed>}
 */
async function packed(from, to) {
  const args = ['pack', '--ignore-scripts', '--json', '--pack-destination', to];
  const { stdout } = await run(npm, args, { ...options, cwd: from });
  return JSON.parse(stdout)[0];
}

/** What a package says of itself to those who install it: no scripts and tools of the checkout. */
function published(/** @type {Record<string, unknown>} */ written) {
  const { scripts: _scripts, devDependencies: _tools, private: _private, ...rest } = written;
  return rest;
}

/**
 * Packs what has been built as it is published: the files that package.json lists, without what belongs to the checkout.
 * @param {string} to folder for the file
 * @returns {Promise<Packed>} its name there, and what is in it
 */
export async function packRelease(to) {
  writeLicences();
  mkdirSync(to, { recursive: true });
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-pack-'));
  try {
    const { filename } = await packed(ROOT, folder);
    await run('tar', ['-xzf', filename], { ...options, cwd: folder });
    const stated = join(folder, 'package', 'package.json');
    const written = JSON.parse(readFileSync(stated, 'utf8'));
    writeFileSync(stated, `${JSON.stringify(published(written), null, 2)}\n`);
    renameSync(join(folder, 'package'), join(folder, 'published'));
    return await packed(join(folder, 'published'), to);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
