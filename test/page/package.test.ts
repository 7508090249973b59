import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { shippedPackages } from '../../scripts/support/licences.mjs';
import { packRelease } from '../../scripts/support/pack.mjs';
import { inRoot } from '../../scripts/support/paths.mjs';

const run = promisify(execFile);

const SCRIPT = `import { readFileSync } from 'node:fs';
import { type Problem, readText, receive, type Reception } from 'faintwave';
import { verdictWords } from 'faintwave/outputs';

const read = readText(readFileSync('node_modules/faintwave/examples/medium-wave-galena.json', 'utf8'));
if (!read.ok) throw new Error(read.problems.map(({ path }: Problem): string => path).join());
const reception: Reception = receive(read.set);
const words: string = verdictWords[reception.stations[reception.best[0]].verdict];
console.log(read.set.place.stations[reception.best[0]].name, words);
`;
const SETTINGS = {
  compilerOptions: { strict: true, skipLibCheck: false, target: 'es2023', module: 'nodenext', types: ['node'] },
  files: ['script.ts'],
};

// It stands among the tests of the page because the page must have been built.
test('the package as it is published works in an empty project: types, library, command, page, licences', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-package-'));
  const { filename, files } = await packRelease(folder);
  const paths = files.map(({ path }) => path);
  for (const path of ['LICENSE', 'dist/licences.txt', 'dist/page/index.html', 'schema/faintwave-set-1.schema.json'])
    expect(paths).toContain(path);
  expect(paths.filter((path) => /\.map$|\.test\.|\.tsbuildinfo$|^(src|test|scripts)\//.test(path))).toEqual([]);

  // In place of an installation, which would need a network: the package, and what it names as its dependencies.
  const modules = join(folder, 'node_modules');
  mkdirSync(modules);
  await run('tar', ['-xzf', join(folder, filename), '-C', modules]);
  await run('node', ['-e', `require('fs').renameSync('package', 'faintwave')`], { cwd: modules });
  // Compilers before 5.7 know no kinds of typed arrays; the package is for 5.5 and later.
  const types = paths.filter((path) => path.endsWith('.d.ts'));
  expect(types.length).toBeGreaterThan(50);
  for (const path of types)
    expect(readFileSync(join(modules, 'faintwave', path), 'utf8'), path).not.toMatch(
      /(?:Int|Uint|Float)\d+(?:Clamped)?Array</,
    );
  const published = JSON.parse(readFileSync(join(modules, 'faintwave/package.json'), 'utf8')) as object;
  expect(Object.keys(published)).not.toEqual(expect.arrayContaining(['scripts']));
  expect(Object.keys(published)).not.toEqual(expect.arrayContaining(['devDependencies']));
  for (const name of [...new Set(shippedPackages().map((one) => one.name)), '@types/node', 'undici-types']) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(inRoot(`node_modules/${name}`), join(modules, name), 'junction');
  }
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ type: 'module', private: true }));
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(SETTINGS));
  writeFileSync(join(folder, 'script.ts'), SCRIPT);
  const node = (...args: string[]) => run(process.execPath, args, { cwd: folder });
  await node(inRoot('node_modules/typescript/bin/tsc'), '-p', '.').catch(({ stdout }) => expect(stdout).toBe(''));
  const answer = await node('script.js');
  expect(answer.stdout).toMatch(/^Saltmarsh Radio \w+/);
  const command = join(modules, 'faintwave/bin/faintwave.mjs');
  const told = await node(command, 'dial', join(modules, 'faintwave/examples/medium-wave-galena.json'));
  expect(told.stdout).toMatch(/The dial covers \d+–\d+\skHz/);
});
