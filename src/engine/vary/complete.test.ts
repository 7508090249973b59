import { describe, expect, test } from 'vitest';
import { bare, fieldsOf, type SchemaNode, variantChoices } from '../fields/introspect.ts';
import { assumedIn, placeOf } from '../set/assumed.ts';
import { description } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { valueAtPath } from '../set/write.ts';
import { bandFigures } from './band-figures.ts';
import { BANDS } from './bands.ts';
import { completeDescription } from './complete.ts';

const NAMES = { set: 'Set', place: 'Here', coil: 'main', station: String, assumedStation: String };
const complete = (known: unknown) => completeDescription(known, NAMES);

const readOf = (written: unknown) => {
  const read = readValue(written);
  expect(read.ok ? [] : read.problems).toEqual([]);
  if (!read.ok) throw new Error('refused');
  expect(read.notes).toEqual([]);
  return read.set;
};

const BENCH = {
  place: { name: 'Little Withy' },
  coils: [{ formerDiameter: '63 mm', wire: { size: '26 SWG' } }],
  tuning: { maximum: '365 pF' },
  detector: { kind: 'galena' },
  load: { kind: 'phones' },
};

/** Turns that are given need not be looked for. */
const WOUND = { coils: [{ turns: 60 }] };

describe('a description made whole', () => {
  test('a tube, some wire, a capacitor, a detector, phones and a town are enough, and what is given stays', () => {
    const written = complete(BENCH);
    readOf(written);
    expect(written).toMatchObject(BENCH);
  });

  test('the turns are those that tune the band with the capacitor there is', () => {
    const { lowest, highest } = bandFigures(readOf(complete(BENCH)));
    const { from, to } = BANDS['medium wave'];
    expect(lowest).toBeLessThan(from);
    expect(lowest).toBeGreaterThan(0.9 * from);
    expect(highest).toBeGreaterThan(0.9 * to);
    const longWave = complete({
      ...BENCH,
      tuning: { maximum: '500 pF' },
      place: { name: 'Here', stations: [{ name: 'Far Light', frequency: '198 kHz' }] },
    });
    const long = bandFigures(readOf(longWave));
    expect(long.lowest).toBeLessThan(BANDS['long wave'].from);
  });

  test('what is given stays, a number for a text and a text for a list too: the reader takes or refuses it', () => {
    const place = { name: 'Here', stations: [{ frequency: 603_000 }] };
    readOf(complete({ ...BENCH, ...WOUND, place }));
    expect(valueAtPath(complete({ ...BENCH, coils: 'some wire' }), ['coils'])).toEqual(['some wire']);
  });

  test('turns that are given are not changed, nor called assumed', () => {
    const written = complete({ ...BENCH, coils: [{ formerDiameter: '63 mm', turns: 31 }] });
    expect(valueAtPath(written, ['coils', 0, 'turns'])).toBe(31);
    expect(assumedIn(written)).not.toContain('coils[0].turns');
  });

  test('every value that is not given is called assumed, and nothing that is given', () => {
    const written = complete(BENCH);
    const assumed = assumedIn(written);
    const leaves = (value: unknown, path: string): string[] =>
      typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, inner]) =>
            leaves(inner, Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key),
          )
        : [path];
    const given = new Set(leaves(BENCH, ''));
    const names = ['format', 'name', 'coils[0].name', 'arrangement.coil'];
    for (const leaf of leaves({ ...(written as object), assumed: undefined }, '')) {
      if (leaf === 'assumed') continue;
      const isAssumed = assumed.some((place) => leaf === place || leaf.startsWith(`${place}.`));
      expect([leaf, isAssumed]).toEqual([leaf, !given.has(leaf) && !names.includes(leaf)]);
    }
    for (const place of assumed) expect([place, valueAtPath(written, placeOf(place))]).not.toEqual([place, undefined]);
  });

  test('nothing at all is completed as well, and a whole description stays as it is', () => {
    const written = complete({});
    readOf(written);
    const whole = { ...(written as Record<string, unknown>) };
    delete whole.assumed;
    expect(complete(whole)).toEqual(whole);
    expect(complete(written)).toEqual(written);
  });

  test('what is known of a part tells its kind', () => {
    const kindOf = (part: string, known: unknown) => valueAtPath(complete({ ...WOUND, [part]: known }), [part, 'kind']);
    expect(kindOf('detector', { spot: 'good' })).toBe('galena');
    expect(kindOf('detector', {})).toBe('germanium');
    expect(kindOf('earth', { resistance: '60 Ω' })).toBe('measured');
    expect(kindOf('aerial', { length: '12 m' })).toBe('inverted-L');
    expect(kindOf('load', { impedance: '600 Ω' })).toBe('moving-coil phones');
  });

  test.each(['aerial', 'earth', 'tuning', 'detector', 'load'])('every kind of %s is completed', (part) => {
    const node = bare(description as unknown as SchemaNode).entries![part];
    for (const kind of variantChoices(node)!.choices) readOf(complete({ ...WOUND, [part]: { kind } }));
  });

  test('every shape of coil is completed', () => {
    const node = bare(bare(description as unknown as SchemaNode).entries!.coils).item!;
    for (const shape of variantChoices(node)!.choices) {
      const hasTurns = fieldsOf(node, { shape }).some(({ key }) => key === 'turns');
      readOf(complete({ coils: [{ shape, ...(hasTurns ? { turns: 60 } : {}) }] }));
    }
  });

  test('what is given wrong stays to be seen', () => {
    const read = readValue(complete({ ...BENCH, tuning: { maximum: 'big' } }));
    expect(read.ok ? [] : read.problems.map(({ path }) => path)).toEqual(['tuning.maximum']);
  });
});
