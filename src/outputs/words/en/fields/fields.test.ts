import { expect, it } from 'vitest';
import { bare, metadataOf, type SchemaNode } from '../../../../engine/fields/introspect.ts';
import { boxDescription } from '../../../../engine/find/box-schema.ts';
import { description } from '../../../../engine/set/description.ts';
import { FIELDS } from './index.ts';

/** Every field of every kind of every part, with its place in the schema. */
function fields(node: SchemaNode, path: string): { path: string; field?: string }[] {
  const schema = bare(node);
  const inside = [schema.item, ...(schema.items ?? []), ...(schema.options ?? [])].filter(
    (one): one is SchemaNode => typeof one === 'object' && one !== null,
  );
  return [
    ...Object.entries(schema.entries ?? {})
      .filter(([, entry]) => bare(entry).type !== 'literal')
      .flatMap(([key, entry]) => [
        { path: `${path}.${key}`, field: metadataOf(entry).field },
        ...fields(entry, `${path}.${key}`),
      ]),
    ...inside.flatMap((one) => [{ path, field: metadataOf(one).field ?? 'none' }, ...fields(one, path)]),
  ];
}

const all = [description, boxDescription].flatMap((schema) => fields(schema as unknown as SchemaNode, ''));

it('every field of a description has a label, and every label a field', () => {
  expect(all.filter(({ field }) => field === undefined).map(({ path }) => path)).toEqual([]);
  const used = new Set(all.map(({ field }) => field));
  expect(Object.keys(FIELDS).filter((id) => !used.has(id))).toEqual([]);
});

it('labels are short and begin with a capital letter; explanations are whole phrases', () => {
  for (const [id, { label, help }] of Object.entries(FIELDS)) {
    expect(label, id).toMatch(/^\p{Lu}.{0,27}$/u);
    if (help !== undefined) expect(help, id).toMatch(/^(?:[\p{Lu}±0-9]|dB ).*\.$/u);
  }
});
