import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { bare, metadataOf, type SchemaNode } from '../../../../engine/fields/introspect.ts';
import { refusalOf } from '../../../../engine/fields/refusal.ts';
import { boxDescription } from '../../../../engine/find/box-schema.ts';
import { description } from '../../../../engine/set/description.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { type Bounds, quantity } from '../../../../engine/units/schema.ts';
import { problemSentence } from './problems.ts';
import { touchstoneProblem } from './touchstone.ts';

const WIRE: Bounds = { above: 0, max: 0.02, typical: [1e-4, 2e-3] };

const sentence = (written: unknown, kind: QuantityKind, bounds: Bounds = {}): string => {
  const read = v.safeParse(quantity(kind, bounds), written);
  return read.success ? '' : problemSentence({ path: 'x', ...refusalOf(read.issues[0])! });
};

/** Every field of a quantity, with its place: "place.stations.distance". */
function quantities(node: SchemaNode, path: string): { path: string; kind: QuantityKind; bounds: Bounds }[] {
  const { quantity: kind, bounds = {} } = metadataOf(node);
  if (kind) return [{ path, kind, bounds }];
  const schema = bare(node);
  const inside = [schema.item, ...(schema.items ?? []), ...(schema.options ?? [])].filter(
    (one): one is SchemaNode => typeof one === 'object' && one !== null,
  );
  return [
    ...Object.entries(schema.entries ?? {}).flatMap(([key, entry]) => quantities(entry, path ? `${path}.${key}` : key)),
    ...inside.flatMap((one) => quantities(one, path)),
  ];
}

const QUANTITIES = [description, boxDescription].flatMap((schema) => quantities(schema as unknown as SchemaNode, ''));

const problemsOf = (path: string, written: unknown): string => {
  const { kind, bounds } = QUANTITIES.find((one) => one.path === path)!;
  return sentence(written, kind, bounds);
};

describe('the sentence of a problem', () => {
  it('names where, what was expected, what was given and a way out', () => {
    expect(sentence('28', 'length', WIRE)).toBe(
      'x: expected a length such as "28 SWG", got "28" (add a unit: "28 SWG", not "28")',
    );
    expect(sentence('5 m', 'capacitance')).toBe(
      'x: expected a capacitance such as "500 pF", got "5 m" ("m" is the unit of a length; write "500 pF" or "0.0005 µF" or "1 nF")',
    );
  });

  it('names limits in the unit a builder would use, so that the limit named is accepted', () => {
    expect(sentence('5000 kHz', 'frequency', { min: 1e5, max: 2e6 })).toMatch(/of at most 2 MHz, got/);
    expect(sentence('-90 °C', 'temperature', { min: 200, max: 400 })).toMatch(/of at least −73 °C, got/);
    expect(sentence('200 °C', 'temperature', { min: 200, max: 400 })).toMatch(/of at most 126 °C, got/);
    expect(sentence('300 %', 'ratio', { above: 0, max: 1.5 })).toMatch(/of at most 150 %, got/);
    expect(sentence('-1 m', 'length', WIRE)).toMatch(/a length above 0, got/);
  });

  it('gives examples of the field’s own size', () => {
    expect(problemsOf('place.stations.distance', 'abc')).toMatch(/^x: expected a length such as "50 km", got "abc"/);
    expect(problemsOf('aerial.height', '5 kHz')).toMatch(/a length such as "5 m", got .*; write "5 m"\)$/);
    expect(problemsOf('coils.formerDiameter', '63 pF')).toMatch(
      /such as "63 mm", got .*; write "63 mm" or "2 1\/2 in"\)$/,
    );
  });

  it('gives no example that its field would refuse, in any field of a set or a box', () => {
    expect(QUANTITIES.length).toBeGreaterThan(100);
    for (const { path, kind, bounds } of QUANTITIES)
      for (const written of ['abc', '5 furlongs', kind === 'length' ? '5 pF' : '5 mm', true]) {
        const text = sentence(written, kind, bounds);
        const [, such] = /such as "([^"]+)"/.exec(text) ?? [];
        const ways = [...(/; write (.*)\)$/.exec(text)?.[1] ?? '').matchAll(/"([^"]+)"/g)].map(([, way]) => way);
        expect(such, `${path}: ${text}`).toBeDefined();
        for (const example of [such!, ...ways]) {
          const read = v.safeParse(quantity(kind, bounds), example);
          expect(read.success, `${path}: ${text}`).toBe(true);
          const [low, high] = bounds.typical ?? [-Infinity, Infinity];
          expect(Number(read.output) >= low && Number(read.output) <= high, `${path}: ${text}`).toBe(true);
        }
      }
  });

  it('ends with how many others of its kind there are', () => {
    const problem = { path: 'coils', expected: { code: 'items.at-most', count: 12 }, more: 3 } as const;
    expect(problemSentence(problem)).toBe('coils: expected at most 12 of them (and 3 more of the same kind)');
    expect(problemSentence({ ...problem, hint: { code: 'leave-others-out' } })).toMatch(
      /\(leave the others out; and 3 more of the same kind\)$/,
    );
  });
});

it('a problem of a Touchstone file names its line', () => {
  expect(touchstoneProblem({ line: 4, code: 'three-numbers', counted: 9 })).toBe(
    'line 4: expected a frequency and two numbers, got 9 numbers, as in a two-port file',
  );
  expect(touchstoneProblem({ line: 3, code: 'one-port', given: '2' })).toMatch(/^line 3: expected 1 port, got "2": /);
});
