import { expect, test } from 'vitest';
import { contributing, filesToExtend, TOYS } from '../scripts/support/toy-kind.mjs';

// Six runs of the compiler, one after another; on a busy machine each may take a minute.
const PATIENCE_MS = 900_000;

test('CONTRIBUTING lists exactly the files that must learn of something new', { timeout: PATIENCE_MS }, async () => {
  const found = await filesToExtend();
  for (const sort of Object.keys(TOYS)) expect(found[sort], `nothing must learn of a new ${sort}`).not.toEqual([]);
  const { now, right } = contributing(found);
  expect(now, 'run `npm run toy-kind` to put the lists right').toBe(right);
});
