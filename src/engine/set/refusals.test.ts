import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import * as v from 'valibot';
import { expect, it } from 'vitest';
import { type Refusal, refusalOf, refuse } from '../fields/refusal.ts';
import { description } from './description.ts';
import { readValue } from './read.ts';

const galena = () =>
  JSON.parse(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));

it('keeps what was expected, received and the way out as they are, whatever stands in them', () => {
  const refusal: Refusal = {
    expected: { code: 'literal', value: 'x, got y: z' },
    given: { code: 'value', json: '"expected", got' },
    hint: { code: 'did-you-mean', option: 'unlike: any; other' },
  };
  const [issue] = v.safeParse(v.string(refuse(refusal)), 1).issues!;
  expect(refusalOf(issue)).toEqual(refusal);
  expect(issue.message).toBe('literal');
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
    'wants',
    'keep',
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
        if (!read.ok) for (const { expected } of read.problems) expect(expected.code).not.toBe('another-value');
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
    {
      path: 'aerial.height',
      expected: { code: 'quantity', kind: 'length', usual: [2, 20] },
      given: { code: 'nothing' },
      hint: { code: 'missing' },
    },
  ]);
});

it.each(['aerialTap', 'detectorTap'])('refuses an %s above the turns in use, as one above the coil', (key) => {
  const { coils, ...set } = galena();
  const arrangement = { kind: 'tapped', coil: coils[0].name, aerialTap: 10, detectorTap: 10, usedTurns: 30, [key]: 31 };
  const read = readValue({ ...set, coils, arrangement });
  expect(read).toMatchObject({
    ok: false,
    problems: [
      {
        path: `arrangement.${key}`,
        expected: { code: 'turns.at-most', turns: 30 },
        hint: { code: 'taps-from-earth' },
      },
    ],
  });
  expect(readValue({ ...set, coils, arrangement: { ...arrangement, [key]: 30 } }).ok).toBe(true);
});
