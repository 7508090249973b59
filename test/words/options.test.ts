import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { bare, metadataOf, type SchemaNode } from '../../src/engine/fields/introspect.ts';
import { description } from '../../src/engine/set/description.ts';
import { namedOptions, optionName, symbolLabels } from '../../src/outputs/words/index.ts';

/** Every choice among words in a schema, with its field. */
function choicesIn(node: SchemaNode, seen = new Set<SchemaNode>()): { field: string; options: readonly string[] }[] {
  if (seen.has(node)) return [];
  seen.add(node);
  const plain = bare(node);
  const { field } = metadataOf(node);
  const own =
    plain.type === 'picklist' && field !== undefined ? [{ field, options: (plain.options ?? []).map(String) }] : [];
  const inner = [
    ...(node.wrapped ? [node.wrapped] : []),
    ...Object.values(plain.entries ?? {}),
    ...(plain.item ? [plain.item] : []),
    ...(plain.items ?? []),
    ...((plain.options ?? []).filter((option) => typeof option === 'object') as SchemaNode[]),
    ...((node.pipe ?? []).filter((step) => 'entries' in step || 'options' in step) as unknown as SchemaNode[]),
  ];
  return [...own, ...inner.flatMap((one) => choicesIn(one, seen))];
}

// A story is edited with lists of its own.
const choices = choicesIn(description as unknown as SchemaNode).filter(({ field }) => !field.startsWith('scene.'));

test('every option of a choice has a name in words, and every name an option', () => {
  const found = new Map<string, Set<string>>();
  for (const { field, options } of choices) found.set(field, new Set([...(found.get(field) ?? []), ...options]));
  expect(found.size).toBeGreaterThan(20);
  expect(Object.fromEntries([...found].map(([field, options]) => [field, [...options].sort()]).sort())).toEqual(
    Object.fromEntries(
      Object.entries(namedOptions)
        .map(([field, names]) => [field, Object.keys(names ?? {}).sort()] as const)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
  );
});

test('two options of a choice are told apart by their names, and what is no option keeps its own', () => {
  for (const names of Object.values(namedOptions))
    expect(new Set(Object.values(names ?? {})).size).toBe(Object.keys(names ?? {}).length);
  expect(optionName('detector.make', 'phones coil')).toBe('phones coil');
  expect(optionName(undefined, 'constructor')).toBe('constructor');
  expect(optionName('detector.make', 'constructor')).toBe('constructor');
});

test('no editor shows an option as the file has it', () => {
  const folder = inRoot('src/app/editing');
  const bareOption = /<option[^>]*>\s*\{(?:option|choice|word|name|value)\}\s*<\/option>/;
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.tsx')))
    expect(readFileSync(`${folder}/${file}`, 'utf8'), file).not.toMatch(bareOption);
});

test('no sentence has an option as the file has it: it asks for the option’s name', () => {
  const fields = [...new Set(Object.keys(namedOptions).map((field) => field.split('.').at(-1)!))];
  // As values of a template, alone or as the last key of an object; a few keys also stand for a text of the tool.
  const bare = new RegExp(`\\$\\{(?:\\w+\\.)*(?:${fields.filter((key) => !OTHER_MEANINGS.has(key)).join('|')})\\}`);
  const folder = inRoot('src/outputs/words/en');
  const found = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .flatMap((name) =>
      readFileSync(`${folder}/${name}`, 'utf8')
        .split('\n')
        .flatMap((line) => (bare.test(line) ? [`${name}: ${line.trim()}`] : [])),
    );
  expect(found).toEqual([]);
  expect(fields.length).toBeGreaterThan(15);
  expect(['{coil.former}', '{law}'].every((inserted) => bare.test(`$${inserted} vanes`))).toBe(true);
});

test('a diagram calls a mineral as the choice does', () => {
  expect(symbolLabels.detector.mineral({ kind: 'mineral', mineral: 'zincite-bornite' } as never).lines).toEqual([
    'zincite and bornite',
  ]);
});

/** Keys of choices that sentences also use for texts and figures of their own. */
const OTHER_MEANINGS = new Set(['kind', 'type', 'time', 'programme', 'winding', 'dielectric', 'form']);
