import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { apiPages, undocumented } from '../scripts/support/api.mjs';
import { inRoot } from '../scripts/support/paths.mjs';

// The compiler may have to write its declarations first.
const PATIENCE_MS = 600_000;

test('every public function tells its parameters and what it returns', { timeout: PATIENCE_MS }, async () => {
  expect(await undocumented()).toEqual([]);
});

test('the reference in docs/api is what the docstrings say', { timeout: PATIENCE_MS }, async () => {
  const pages = await apiPages();
  expect(readdirSync(inRoot('docs/api')).sort(), 'run `npm run api`').toEqual([...pages.keys()].sort());
  for (const [name, text] of pages)
    expect(readFileSync(inRoot('docs/api', name), 'utf8'), `docs/api/${name}: run \`npm run api\``).toBe(text);
});
