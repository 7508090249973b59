import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inRoot } from './paths.mjs';

const notASource = /\.test\.tsx?$|^\.|~$/;

/**
 * The latest change, in ms, of anything under a file or folder; a folder's own date tells of removed files. 0 if absent.
 * @param {string} path
 * @returns {number}
 */
function latestChange(path) {
  const info = statSync(path, { throwIfNoEntry: false });
  if (!info) return 0;
  if (!info.isDirectory()) return info.mtimeMs;
  const inside = readdirSync(path).filter((name) => !notASource.test(name));
  return Math.max(info.mtimeMs, ...inside.map((name) => latestChange(join(path, name))));
}

/**
 * Is what the stamp file speaks of newer than all its sources?
 * @param {string} stamp
 * @param {string[]} sources
 */
export function isFresh(stamp, sources) {
  try {
    const builtFrom = Number(readFileSync(stamp, 'utf8'));
    return sources.every((source) => latestChange(source) < builtFrom);
  } catch {
    return false;
  }
}

/**
 * Notes that a build which started reading its sources at `time` (ms) is complete.
 * @param {string} stamp
 * @param {number} time
 */
export function markFresh(stamp, time) {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, `${time}\n`);
}

/** @param {number} pid */
function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}

/** @param {string} lock */
function takeLock(lock) {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    let owner = '';
    try {
      owner = readFileSync(lock, 'utf8');
    } catch {
      return false; // given back this moment
    }
    const age_ms = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    // Left behind by a process that was killed: the next round takes it.
    if (owner === '' ? age_ms > 5000 : !isRunning(Number(owner))) rmSync(lock, { force: true });
    return false;
  }
}

/**
 * Does `work` while no other process of this project does work of the same name; the others wait.
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function alone(name, work) {
  const lock = inRoot('dist', `${name}.lock`);
  mkdirSync(dirname(lock), { recursive: true });
  while (!takeLock(lock)) await new Promise((resolve) => setTimeout(resolve, 100));
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
}
