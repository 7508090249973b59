import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';

const files = readdirSync(inRoot('src'), { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name));

/** Names that a source declares and exports; what it passes on from elsewhere is declared there. */
const declared = (source: string): string[] =>
  [
    ...source.matchAll(/^export (?:declare )?(?:async )?(?:const|function\*?|class|interface|type|enum) ([\w$]+)/gm),
  ].map(([, name]) => name);

/** Where each name stands, of those that stand in two places and more. */
function twice(names: readonly (readonly [name: string, file: string])[]): string[] {
  const places = new Map<string, Set<string>>();
  for (const [name, file] of names) places.set(name, (places.get(name) ?? new Set()).add(file));
  return [...places].filter(([, at]) => at.size > 1).map(([name, at]) => `${name}: ${[...at].join(', ')}`);
}

const exported = files.flatMap((file) =>
  declared(readFileSync(inRoot(`src/${file}`), 'utf8')).map((name) => [name, file] as const),
);

/** Exported names that mean two things today: the figure may fall and never rise. */
const MOST_NAMES_TWICE = 105;

test('a name that is exported means one thing: no more stand in two places than did', () => {
  const found = twice(exported);
  expect(found.length, found.join('\n')).toBeLessThanOrEqual(MOST_NAMES_TWICE);
});

test('names are found however they are declared, and not where they are only passed on', () => {
  expect(
    declared(
      'export const a = 1;\nexport type B = 1;\nexport async function c() {}\nexport { d } from "./d.ts";\nconst e = 2;',
    ),
  ).toEqual(['a', 'B', 'c']);
  expect(
    twice([
      ['a', 'x.ts'],
      ['a', 'y.ts'],
      ['b', 'x.ts'],
      ['b', 'x.ts'],
    ]),
  ).toEqual(['a: x.ts, y.ts']);
  expect(exported.length).toBeGreaterThan(1000);
  expect(files.map((file) => basename(file))).toContain('receive.ts');
});
