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

/** Names that stand in two places, each for a reason: never in one file under both meanings. */
const NAMED_TWICE: Readonly<Record<string, string>> = {
  path: 'the command as it is called, and a line of a drawing as SVG calls it',
  earth: 'the schema of the part and the model of the part',
  measuredCoil: 'the schema of the part and the model of the part',
  dial: 'a kind of measurement, and the command',
  detector: 'a kind of measurement, and the schema of the part',
  resonance: 'a kind of measurement, and what a tuned circuit passes',
  Wire: 'wire as described and wire as calculated: one shape',
  TimeOfDay: 'a component and what it shows',
  NodeWaves: 'a component and what it shows',
  PathProfile: 'a component and what it shows',
  Heater: 'a component and what it shows',
};

test('a name that is exported means one thing, or there is a reason', () => {
  const found = twice(exported).filter((line) => !(line.split(':')[0] in NAMED_TWICE));
  expect(found, found.join('\n')).toEqual([]);
});

test('what may stand in two places does', () => {
  const found = twice(exported).map((line) => line.split(':')[0]);
  expect(Object.keys(NAMED_TWICE).sort()).toEqual(found.sort());
});

/** Files named after another for a reason: the folder says what of it. */
const MIRRORS = /^(outputs\/words\/en|cli\/calc|cli\/commands)\//;
/** Two folders with a file of one name, apart from those: the figure may fall and never rise. */
const MOST_FILES_TWICE = 40;

test('a file’s name says what it holds: no more stand in two folders than did', () => {
  const named = files
    .filter((file) => !MIRRORS.test(file) && !/^index\.tsx?$/.test(basename(file)))
    .map((file) => [basename(file), file] as const);
  const found = twice(named);
  expect(found.length, found.join('\n')).toBeLessThanOrEqual(MOST_FILES_TWICE);
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
