import { execFile } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { inRoot, ROOT } from './paths.mjs';
import { TOOLS } from './run.mjs';

/**
 * Something new of each sort that people add, written into a copy of the sources: whatever must know of it does not
 * compile any more.
 * @typedef {{ file: string, after: string, toy: string }} Toy
 * @type {Record<string, Toy>}
 */
export const TOYS = {
  arrangement: {
    file: 'src/engine/kinds/arrangements/arrangement-schema.ts',
    after: 'ferrite, elements',
    toy: ", object({ kind: v.literal('toy'), coil, detectorTap, traps })",
  },
  coil: {
    file: 'src/engine/kinds/coils/coil-schema.ts',
    after: 'core, measured',
    toy: ", object({ shape: v.literal('toy'), name, wire, former, turns: turns('coil.turns') })",
  },
  detector: {
    file: 'src/engine/kinds/detectors/detector-schema.ts',
    after: 'valve, measured',
    toy: ", object({ kind: v.literal('toy'), ...overrides })",
  },
  load: {
    file: 'src/engine/kinds/loads/load-schema.ts',
    after: 'movingCoil, amplifier',
    toy: ", object({ kind: v.literal('toy'), ...common })",
  },
  objective: {
    file: 'src/engine/vary/question.ts',
    after: "| { readonly of: 'stations heard' }",
    toy: " | { readonly of: 'toy' }",
  },
  sheet: {
    file: 'src/outputs/sheets/paper/sheet-ids.ts',
    after: "  'text',\n",
    toy: "  'toy',\n",
  },
};

const LINKED = ['node_modules', 'examples', 'schema', 'reference', 'docs'];

/** The compiler's settings for a copy of all of src at once, without its tests. */
const SETTINGS = {
  extends: inRoot('tsconfig.base.json'),
  compilerOptions: {
    noEmit: true,
    composite: false,
    // From the second sort on only what the toys change is checked anew: half the time of the compiler.
    incremental: true,
    declaration: false,
    rewriteRelativeImportExtensions: false,
    allowImportingTsExtensions: true,
    module: 'esnext',
    moduleResolution: 'bundler',
    lib: ['es2023', 'dom', 'dom.iterable', 'dom.asynciterable'],
    jsx: 'react-jsx',
    jsxImportSource: 'preact',
    types: ['vite/client', 'node'],
  },
  include: ['src'],
};

/**
 * @param {string} folder
 * @returns {Promise<string[]>} files that do not compile, each once, sorted
 */
async function failing(folder) {
  const tsc = [TOOLS.tsc, '-p', folder, '--pretty', 'false'];
  const said = await promisify(execFile)(process.execPath, tsc, { cwd: folder, maxBuffer: 1e8 }).then(
    ({ stdout }) => stdout,
    (error) => {
      if (typeof error.stdout !== 'string' || error.stdout === '') throw error;
      return error.stdout;
    },
  );
  const files = [...said.matchAll(/^(\S[^(\n]*)\(\d+,\d+\): error/gm)].map((match) => match[1].replaceAll('\\', '/'));
  return [...new Set(files)].sort();
}

/**
 * Which files must learn of something new, by the sort of it. Takes some seconds of the compiler for each.
 * @param {readonly string[]} [sorts] default all
 * @returns {Promise<Record<string, string[]>>}
 */
export async function filesToExtend(sorts = Object.keys(TOYS)) {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-toy-'));
  try {
    cpSync(inRoot('src'), join(folder, 'src'), { recursive: true, filter: (name) => !/\.test\.tsx?$/.test(name) });
    for (const name of LINKED) symlinkSync(join(ROOT, name), join(folder, name), 'junction');
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(SETTINGS));
    /** @type {Record<string, string[]>} */
    const found = {};
    for (const sort of sorts) {
      const { file, after, toy } = TOYS[sort];
      const path = join(folder, file);
      const source = readFileSync(path, 'utf8');
      const at = source.lastIndexOf(after);
      if (at < 0) throw new Error(`scripts/support/toy-kind.mjs: ${file} does not hold "${after}" any more`);
      writeFileSync(path, source.slice(0, at + after.length) + toy + source.slice(at + after.length));
      found[sort] = await failing(folder);
      writeFileSync(path, source);
    }
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const CONTRIBUTING = inRoot('CONTRIBUTING.md');

/** Where CONTRIBUTING lists them. @param {string} sort */
const listed = (sort) => new RegExp(`(<!-- toy ${sort} -->\n)([\\s\\S]*?)(<!-- end -->)`);

/** @param {readonly string[]} files */
const asList = (files) => `${files.map((file) => `- \`${file}\``).join('\n')}\n`;

/**
 * What CONTRIBUTING says, and what it ought to.
 * @param {Record<string, string[]>} found
 * @returns {{ now: string, right: string }}
 */
export function contributing(found) {
  const now = readFileSync(CONTRIBUTING, 'utf8');
  let right = now;
  for (const [sort, files] of Object.entries(found)) {
    if (!listed(sort).test(now)) throw new Error(`CONTRIBUTING.md has no list "<!-- toy ${sort} -->"`);
    right = right.replace(listed(sort), (_, begin, __, end) => `${begin}${asList(files)}${end}`);
  }
  return { now, right };
}

/** Puts the lists right. @param {Record<string, string[]>} found */
export const writeContributing = (found) => writeFileSync(CONTRIBUTING, contributing(found).right);
