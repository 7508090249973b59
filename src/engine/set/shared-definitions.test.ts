import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { definitionName, type Json, sharingDefinitions } from './shared-definitions.ts';

const leaf = fc.record({
  title: fc.constantFrom('Length of the whole wire above ground', 'Height of the whole wire above ground'),
  type: fc.constantFrom('number', 'string'),
});
/** Few of each sort, so that many are the same. */
const { schema: anySchema } = fc.letrec<{ schema: Json }>((tie) => ({
  schema: fc.oneof(
    { depthSize: 'medium' },
    leaf,
    fc.record({
      type: fc.constant('object'),
      properties: fc.dictionary(fc.constantFrom('kind', 'wire', 'ferrite rod', 'item', '1'), tie('schema'), {
        maxKeys: 3,
      }),
    }),
    fc.record({ oneOf: fc.array(tie('schema'), { minLength: 1, maxLength: 3 }) }),
    fc.record({ type: fc.constant('array'), prefixItems: fc.array(tie('schema'), { minLength: 1, maxLength: 3 }) }),
    fc.record({ type: fc.constant('array'), items: tie('schema') }),
  ),
}));

/** With every reference replaced by what it refers to. */
function inFull(node: unknown, definitions: Json): unknown {
  if (Array.isArray(node)) return node.map((one) => inFull(one, definitions));
  if (typeof node !== 'object' || node === null) return node;
  const { $ref, ...rest } = node as Json & { $ref?: string };
  if ($ref === undefined)
    return Object.fromEntries(Object.entries(rest).map(([key, one]) => [key, inFull(one, definitions)]));
  expect(Object.keys(rest)).toEqual([]);
  return inFull(definitions[$ref.slice('#/$defs/'.length)], definitions);
}

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a schema with what it holds more than once stated once', () => {
  const anyRoot = fc
    .array(anySchema, { minLength: 1, maxLength: 8 })
    .map(
      (parts): Json => ({ type: 'object', properties: Object.fromEntries(parts.map((part, k) => [`part${k}`, part])) }),
    );

  it('is the same schema when written out again', () => {
    fc.assert(
      fc.property(anyRoot, (root) => {
        const { $defs, ...shared } = plain(sharingDefinitions(root)) as Json;
        expect(inFull(shared, $defs as Json)).toEqual(root);
      }),
      { numRuns: 100 },
    );
  });

  it('holds no long schema twice, and no definition that is used once', () => {
    fc.assert(
      fc.property(anyRoot, (root) => {
        const shared = plain(sharingDefinitions(root)) as Json;
        const uses = new Map<string, number>();
        const walk = (node: unknown): void => {
          if (typeof node !== 'object' || node === null) return;
          const { type, oneOf, $ref } = node as Json;
          const text = JSON.stringify(node);
          if (typeof type === 'string' || oneOf || $ref) uses.set(text, (uses.get(text) ?? 0) + 1);
          for (const inner of Object.values(node)) walk(inner);
        };
        walk(shared);
        for (const name of Object.keys(shared.$defs as Json))
          expect(uses.get(JSON.stringify({ $ref: `#/$defs/${name}` }))).toBeGreaterThan(1);
        for (const [text, count] of uses)
          if (!text.startsWith('{"$ref"') && text.length > 60) expect(count, text).toBe(1);
      }),
      { numRuns: 100 },
    );
  });

  it('names definitions by their place, as shortly as tells them apart, so that an address needs no escape', () => {
    const wire = (of: string) => ({ title: `Diameter of the wire of ${of}`, type: 'number', maximum: 1 });
    const pair = (of: Json) => ({ type: 'object', properties: { wire: of } });
    const root = {
      type: 'object',
      properties: {
        aerial: pair(wire('an aerial')),
        mast: pair(wire('an aerial')),
        loop: { type: 'object', title: 'Loop of wire indoors', properties: { wire: wire('a loop') } },
        frame: { type: 'object', title: 'Frame of wire indoors', properties: { wire: wire('a loop') } },
        'ferrite rod': pair(wire('a rod')),
        rod: { properties: { coil: wire('a rod') } },
      },
    };
    const { $defs } = sharingDefinitions(root, { [definitionName('field strength')]: { maximum: 1 } });
    expect(Object.keys($defs as Json)).toEqual(['aerial', 'loop.wire', 'ferrite-rod.wire']);
    fc.assert(
      fc.property(anyRoot, (one) => {
        for (const name of Object.keys(sharingDefinitions(one).$defs as Json))
          expect(encodeURIComponent(name)).toBe(name);
      }),
      { numRuns: 50 },
    );
  });
});
