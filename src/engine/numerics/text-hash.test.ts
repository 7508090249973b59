import { expect, test } from 'vitest';
import { textHash } from './text-hash.ts';

test('the published hashes of short texts', () => {
  // Test vectors of FNV-1a, 32 bits (draft-eastlake-fnv, appendix of test values).
  expect(textHash('')).toBe(0x811c9dc5);
  expect(textHash('a')).toBe(0xe40c292c);
  expect(textHash('foobar')).toBe(0xbf9cf968);
});
