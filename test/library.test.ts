import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { beforeAll, expect, test } from 'vitest';
import { buildCommandLine } from '../scripts/support/build.mjs';
import { inRoot, ROOT } from '../scripts/support/paths.mjs';

// The compiler may have to come first, and each program is a Node of its own.
const PATIENCE_MS = 600_000;

const programs = [
  ...readFileSync(inRoot('docs/library.md'), 'utf8').matchAll(
    /^## (.*)$(?:(?!^## )[\s\S])*?^```js\n([\s\S]*?)^```\n\n```text\n([\s\S]*?)^```/gm,
  ),
].map(([, title, code, printed]) => ({ title, code, printed }));

const NUMBER = /\d+(?:\.\d+)?/g;
/** The words with `#` for each number, and the numbers. */
const parted = (text: string) => ({
  words: text.trim().replace(NUMBER, '#'),
  numbers: (text.match(NUMBER) ?? []).map(Number),
});

beforeAll(async () => buildCommandLine({ quiet: true }), PATIENCE_MS);

test('every section of docs/library.md has a program and what it prints', () => {
  const sections = readFileSync(inRoot('docs/library.md'), 'utf8').match(/^## /gm) ?? [];
  expect(programs).toHaveLength(sections.length);
});

test.each(programs)('$title', { timeout: PATIENCE_MS }, async ({ code, printed }) => {
  const run = promisify(execFile)(process.execPath, ['--input-type=module', '--eval', code], { cwd: ROOT });
  const { stdout } = await run;
  const [got, wanted] = [parted(stdout), parted(printed)];
  expect(got.words).toBe(wanted.words);
  // Printed with two or three figures: the models may become better by a little without these pages being wrong.
  got.numbers.forEach((number, i) => {
    expect(Math.abs(number - wanted.numbers[i]), stdout).toBeLessThanOrEqual(0.03 * wanted.numbers[i]);
  });
});
