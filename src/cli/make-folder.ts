import { rmdirSync } from 'node:fs';
import { mkdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/**
 * Make a folder and those above it that are not there, one by one: a file system that will not have a folder and does
 * not say why (as /proc) ends with an error.
 * @returns removes again, while they are empty, the folders that were made.
 */
export async function makeFolder(folder: string): Promise<() => void> {
  const missing: string[] = [];
  for (let at = resolve(folder); ; at = dirname(at)) {
    const stats = await stat(at).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return undefined;
      throw error;
    });
    if (stats?.isDirectory()) break;
    if (stats) throw Object.assign(new Error('ENOTDIR'), { code: at === resolve(folder) ? 'EEXIST' : 'ENOTDIR' });
    missing.unshift(at);
    if (dirname(at) === at) break;
  }
  const created: string[] = [];
  // At once, so that an interruption can do it.
  const undo = (): void => {
    try {
      for (const one of created.toReversed()) rmdirSync(one);
    } catch {}
  };
  for (const one of missing) {
    try {
      await mkdir(one);
      created.push(one);
    } catch (error) {
      // Another process may have made it just now.
      if ((error as NodeJS.ErrnoException).code === 'EEXIST' && (await stat(one).catch(() => undefined))?.isDirectory())
        continue;
      undo();
      throw error;
    }
  }
  return undo;
}
