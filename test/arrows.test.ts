import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';

/** What each part of src may use besides itself. */
const MAY_USE: Record<string, string[]> = {
  engine: [],
  outputs: ['engine'],
  app: ['outputs', 'engine'],
  cli: ['outputs', 'engine'],
};

/** Inside the engine each folder may use those before it. */
const ENGINE_ORDER = [
  'units',
  'numerics',
  'facts',
  'network',
  'parts',
  'place',
  'fields',
  'kinds',
  'set',
  'built',
  'solvers',
  'reception',
  'uncertainty',
  'vary',
  'find',
  'log',
  'measure',
  'faults',
  'waves',
];

/** What app and cli see of the engine and of outputs: their public indexes. */
const isPublic = (target: string) => target === 'engine/index.ts' || /^outputs\/(.+\/)?index\.ts$/.test(target);

const isPure = (part: string) => part === 'engine' || part === 'outputs';

/** Addresses that a source imports, re-exports, loads later or starts as a worker; comments do not count. */
function importsIn(source: string): string[] {
  const code = source.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const forms = [
    /\b(?:import|export)\b[^'"`;=()]*?\bfrom\s*['"]([^'"]+)['"]/g,
    /\bimport\s*['"]([^'"]+)['"]/g,
    /\bimport\s*\(\s*['"]([^'"]+)['"]/g,
    /\bnew URL\(\s*['"]([^'"]+)['"]\s*,\s*import\.meta\.url/g,
  ];
  return forms.flatMap((form) => [...code.matchAll(form)].map((match) => match[1]));
}

/** Why `file` (from src, with slashes) may not import `address`, or undefined when it may. */
function whyNot(file: string, address: string): string | undefined {
  const [part, folder] = file.split('/');
  if (!address.startsWith('.')) {
    const outside = address.startsWith('node:') || address.startsWith('preact') || address.startsWith('@preact/');
    return isPure(part) && outside ? `${part} knows neither Node nor the page` : undefined;
  }
  const target = posix.normalize(posix.join(posix.dirname(file), address));
  if (target.startsWith('..')) return isPure(part) ? `${part} stands alone, without files outside src` : undefined;
  const [usedPart, usedFolder] = target.split('/');
  if (usedPart !== part) {
    if (!MAY_USE[part]?.includes(usedPart)) return `${part} may not use ${usedPart}`;
    return isPure(part) || isPublic(target) ? undefined : `${part} uses ${usedPart} through an index.ts`;
  }
  if (part !== 'engine' || !file.includes('/', part.length + 1)) return undefined; // engine/index.ts sees all of it
  const [own, used] = [ENGINE_ORDER.indexOf(folder), ENGINE_ORDER.indexOf(usedFolder)];
  if (own < 0) return `engine/${folder} has no place in the order`;
  return used >= 0 && used <= own ? undefined : `${folder} comes before ${usedFolder}`;
}

function sources(): string[] {
  const files = readdirSync(inRoot('src'), { recursive: true, encoding: 'utf8' }).map((name) =>
    name.replaceAll('\\', '/'),
  );
  return files.filter((name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name));
}

test('every import follows an allowed arrow', () => {
  const offending = sources().flatMap((file) =>
    importsIn(readFileSync(join(inRoot('src'), file), 'utf8')).flatMap((address) => {
      const reason = whyNot(file, address);
      return reason ? [`src/${file} → ${address} (${reason})`] : [];
    }),
  );
  expect(offending, offending.join('\n')).toEqual([]);
});

/**
 * Files that import one another in a circle, each circle sorted by name (Tarjan's strongly connected components); types
 * count, since a circle of them too has no first thing to read.
 */
function circles(importsOf: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (file: string): void => {
    order.set(file, order.size);
    lowest.set(file, order.get(file)!);
    open.push(file);
    for (const next of importsOf.get(file) ?? []) {
      if (!order.has(next)) visit(next);
      else if (!open.includes(next)) continue;
      lowest.set(file, Math.min(lowest.get(file)!, lowest.get(next)!));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const circle = open.splice(open.indexOf(file));
    if (circle.length > 1 || importsOf.get(file)?.includes(file)) found.push(circle.sort());
  };
  for (const file of importsOf.keys()) visit(file);
  return found;
}

/** Circles there are for a reason. */
const RECURSIVE = [
  // A part has fields, a field may be a list, and a list may hold parts: editors of a tree call one another.
  ['app/editing/FieldEditor.tsx', 'app/editing/ListEditor.tsx', 'app/editing/PartEditor.tsx'],
];

test('no files import one another in a circle', () => {
  const importsOf = new Map(
    sources().map((file) => {
      // Starting a worker is no import: it is a program of its own.
      const addresses = importsIn(readFileSync(join(inRoot('src'), file), 'utf8')).filter(
        (address) => address.startsWith('.') && !/\.worker\.ts$/.test(address),
      );
      return [file, addresses.map((a) => posix.normalize(posix.join(posix.dirname(file), a)))];
    }),
  );
  expect(circles(importsOf)).toEqual(RECURSIVE);
});

test('circles are found, long ones and those of one file, and none where files meet again', () => {
  const graph = (text: string) =>
    new Map(
      text.split(' ').map((line) => [line.split('>')[0], line.split('>')[1].split(',').filter(Boolean)] as const),
    );
  expect(circles(graph('a>b b>c c>a,d d>'))).toEqual([['a', 'b', 'c']]);
  expect(circles(graph('a>b,c b>d c>d d>'))).toEqual([]);
  expect(circles(graph('a>a b>a'))).toEqual([['a']]);
});

test('every part of src and every folder of the engine is known here', () => {
  const folders = (path: string) =>
    readdirSync(inRoot(path), { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? [entry.name] : []));
  expect(Object.keys(MAY_USE)).toEqual(expect.arrayContaining(folders('src')));
  expect(ENGINE_ORDER).toEqual(expect.arrayContaining(folders('src/engine')));
});

test('imports are found in every form and not in comments', () => {
  const source = `
    import a, { type B } from './a.ts';
    import type {
      C,
    } from "../c.ts";
    export * from './d.ts';
    import './e.css';
    const f = await import('./f.ts');
    new Worker(new URL('./g.ts', import.meta.url), { type: 'module' });
    // import h from './h.ts';
    /* import i from './i.ts'; */
    export const from = 'nowhere';`;
  expect(importsIn(source).sort()).toEqual(['../c.ts', './a.ts', './d.ts', './e.css', './f.ts', './g.ts']);
});

test('arrows are judged as the map says', () => {
  expect(whyNot('engine/parts/coil.ts', '../units/quantities.ts')).toBeUndefined();
  expect(whyNot('engine/units/parse.ts', '../parts/coil.ts')).toBeDefined();
  expect(whyNot('engine/index.ts', './measure/fit.ts')).toBeUndefined();
  expect(whyNot('engine/parts/coil.ts', '../index.ts')).toBeDefined();
  expect(whyNot('engine/parts/coil.ts', 'node:fs')).toBeDefined();
  expect(whyNot('outputs/plots/a.ts', '../../app/state/set.ts')).toBeDefined();
  expect(whyNot('cli/main.ts', '../app/main.tsx')).toBeDefined();
  expect(whyNot('app/state/set.ts', '../../engine/index.ts')).toBeUndefined();
  expect(whyNot('app/state/set.ts', '../../engine/place/index.ts')).toBeDefined();
  expect(whyNot('cli/main.ts', '../engine/set/read.ts')).toBeDefined();
  expect(whyNot('cli/main.ts', '../outputs/tables/index.ts')).toBeUndefined();
  expect(whyNot('cli/main.ts', '../outputs/tables/table.ts')).toBeDefined();
  expect(whyNot('outputs/plots/q.ts', '../../engine/units/format.ts')).toBeUndefined();
});
