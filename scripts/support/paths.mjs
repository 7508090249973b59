import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** @param {string[]} parts */
export const inRoot = (...parts) => join(ROOT, ...parts);
