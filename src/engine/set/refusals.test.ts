import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import * as v from 'valibot';
import { expect, it } from 'vitest';
import { brief } from '../fields/problem.ts';
import { refusalOf, refuse } from '../units/refusal.ts';
import { description } from './description.ts';
import { readValue } from './read.ts';

const galena = () =>
  JSON.parse(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));

it('keeps what was expected, received and the way out as they are, whatever stands in them', () => {
  const refusal = { expected: 'x, received y: z', received: '"expected", received', hint: 'unlike: any; other' };
  const [issue] = v.safeParse(v.string(refuse(refusal)), 1).issues!;
  expect(refusalOf(issue)).toEqual(refusal);
  expect(issue.message).toBe('expected x, received y: z, received "expected", received: unlike: any; other');
});

it('has the parts of every refusal of a description from the schema, and shows what was given in them', () => {
  const keys = [
    'name',
    'notes',
    'place',
    'aerial',
    'earth',
    'coils',
    'tuning',
    'arrangement',
    'detector',
    'load',
    'ear',
  ];
  const nasty = fc.oneof(fc.jsonValue(), fc.constant(', received 5: write "7"'), fc.constant('galena: did you mean'));
  fc.assert(
    fc.property(
      fc.constantFrom(...keys),
      fc.option(fc.constantFrom('kind', 'shape', 'height', 'name')),
      nasty,
      (key, inner, junk) => {
        const value = galena();
        if (inner === null) value[key] = junk;
        else value[key] = { ...value[key], [inner]: junk };
        for (const issue of v.safeParse(description, value).issues ?? [])
          expect(refusalOf(issue), JSON.stringify([issue.path?.map((p) => p.key), issue.message])).toBeDefined();
        const read = readValue(value);
        if (!read.ok) for (const { expected } of read.problems) expect(expected).not.toBe('');
      },
    ),
    { numRuns: 300, seed: 3 },
  );
});

it('says of a missing field what it expects there', () => {
  const value = galena();
  delete value.aerial.height;
  const read = readValue(value);
  expect(read.ok ? [] : read.problems).toEqual([
    { path: 'aerial.height', expected: 'a length such as "63 mm"', received: brief(undefined), hint: 'it is missing' },
  ]);
});
