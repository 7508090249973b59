import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { publishedBoxSchema, publishedBoxSchemaText, publishedSchema, publishedSchemaText } from './schema-json.ts';

// `UPDATE_SCHEMA=1 npm test` writes it anew.
it.each([
  ['set', publishedSchema, publishedSchemaText],
  ['box', publishedBoxSchema, publishedBoxSchemaText],
])('the committed JSON Schema of a %s is the one the reader uses', (sort, published, text) => {
  const file = new URL(`../../../schema/faintwave-${sort}-1.schema.json`, import.meta.url);
  const now = text();
  expect(JSON.parse(now)).toEqual(JSON.parse(JSON.stringify(published())));
  if (process.env.UPDATE_SCHEMA) writeFileSync(file, now);
  expect(readFileSync(file, 'utf8')).toBe(now);
});

it('bounds every list, text and whole number of the schema', () => {
  const open: string[] = [];
  const walk = (node: unknown, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    const { type, maxItems, maxLength, maximum } = node as Record<string, unknown>;
    if (type === 'array' && maxItems === undefined) open.push(path);
    if (type === 'string' && maxLength === undefined) open.push(path);
    if (type === 'integer' && maximum === undefined) open.push(path);
    for (const [key, inner] of Object.entries(node)) walk(inner, `${path}/${key}`);
  };
  walk(publishedSchema(), 'set');
  walk(publishedBoxSchema(), 'box');
  expect(open).toEqual([]);
});

it('states each definition once: less than an eighth of what all of them written out would be', () => {
  const { $defs, ...rest } = publishedSchema() as { $defs: Record<string, object> };
  const inFull = (node: unknown): unknown => {
    if (Array.isArray(node)) return node.map(inFull);
    if (typeof node !== 'object' || node === null) return node;
    const { $ref, ...own } = node as { $ref?: string };
    const named = $ref === undefined ? {} : inFull($defs[$ref.slice('#/$defs/'.length)]);
    return { ...(named as object), ...Object.fromEntries(Object.entries(own).map(([key, one]) => [key, inFull(one)])) };
  };
  expect(publishedSchemaText().length / JSON.stringify(inFull(rest), null, 2).length).toBeLessThan(1 / 8);
});
