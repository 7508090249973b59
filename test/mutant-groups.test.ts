import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { GROUPS } from '../scripts/support/mutants.mjs';
import { inRoot } from '../scripts/support/paths.mjs';

const files = ['src', 'test'].flatMap((folder) =>
  readdirSync(inRoot(folder), { recursive: true, encoding: 'utf8' }).map((file) => `${folder}/${file}`),
);
const filesLike = (pattern: string): string[] => {
  const expression = pattern
    .replace(/[.]/g, '\\.')
    .replace(/\*\*\/|\*/g, (star) => (star === '*' ? '[^/]*' : '(?:.*/)?'));
  return files.filter((file) => new RegExp(`^${expression}$`).test(file));
};

describe.each(Object.entries(GROUPS))('the group "%s" of mutants', (_, group) => {
  test.each([...group.files, ...group.tests].map((pattern) => pattern.replace(/^!/, '')))(
    'has files at %s',
    (pattern) => {
      expect(filesLike(pattern)).not.toEqual([]);
    },
  );
});
