#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const main = join(root, 'dist/cli/main.js');

/** In a checkout, compiles what has changed first; an installed package has no sources and is complete. */
async function prepare() {
  if (!existsSync(join(root, 'src/cli/main.ts'))) return;
  const hasPackages = existsSync(join(root, 'node_modules/valibot'));
  if (hasPackages && !existsSync(join(root, 'node_modules/typescript')) && existsSync(main)) return;
  if (!hasPackages || !existsSync(join(root, 'node_modules/typescript'))) {
    throw new Error(`The packages are not installed yet. Run this first:\n\n  cd ${root}\n  npm ci`);
  }
  const { buildCommandLine } = await import(pathToFileURL(join(root, 'scripts/support/build.mjs')).href);
  await buildCommandLine({ quiet: true });
}

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`faintwave needs Node 20.19 or later; this is Node ${process.versions.node}.`);
  process.exitCode = 1;
} else {
  try {
    await prepare();
  } catch (error) {
    console.error(`faintwave: ${error instanceof Error ? error.message : error}`);
    process.exit(1);
  }
  await import(pathToFileURL(main).href);
}
