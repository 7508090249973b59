import { spawn } from 'node:child_process';
import { inRoot, ROOT } from './paths.mjs';

/**
 * Runs a program in the project's folder with this terminal and resolves to its exit code (128 when a signal ended it).
 * @param {string} command
 * @param {string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<number>}
 */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'], ...options });
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 128));
  });
}

/** Where the JavaScript of a tool's command is, so that it runs on this very Node and without a shell on any system. */
export const TOOLS = {
  tsc: inRoot('node_modules/typescript/bin/tsc'),
  vite: inRoot('node_modules/vite/bin/vite.js'),
  vitest: inRoot('node_modules/vitest/vitest.mjs'),
  biome: inRoot('node_modules/@biomejs/biome/bin/biome'),
  knip: inRoot('node_modules/knip/bin/knip.js'),
  stryker: inRoot('node_modules/@stryker-mutator/core/bin/stryker.js'),
};

/**
 * @param {keyof typeof TOOLS} tool
 * @param {string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 */
export const runTool = (tool, args, options) => run(process.execPath, [TOOLS[tool], ...args], options);
