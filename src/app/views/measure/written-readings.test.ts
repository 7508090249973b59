import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Fields,
  formatQuantity,
  MEASUREMENTS,
  type MeasurementKind,
  type OfferedMeasurement,
  type PropertyId,
  parseQuantity,
  type ReadingField,
  type ScalarField,
} from '../../../engine/index.ts';
import { propertyNames } from '../../../outputs/words/index.ts';
import { cardFor, draftKey, draftOf, fieldsOfCard, unitOf, writtenReadings } from './written-readings.ts';

const cardOf = (kind: OfferedMeasurement['kind'], properties: readonly PropertyId[] = []): OfferedMeasurement => ({
  kind,
  part: 'coil',
  properties,
  equipment: [],
  cautions: [],
});
const CARDS: readonly (readonly [string, OfferedMeasurement])[] = [
  ...(Object.keys(MEASUREMENTS) as MeasurementKind[]).map((kind) => [kind, cardOf(kind)] as const),
  ...(Object.keys(propertyNames) as PropertyId[]).map((id) => [`value of ${id}`, cardOf('value', [id])] as const),
];

/** Any size that a bench may give, within the bounds of the field. */
const sizes = ({ min = 0, max = 1e12 }: { readonly min?: number; readonly max?: number }) =>
  fc
    .tuple(fc.double({ min: 1, max: 10, maxExcluded: true, noNaN: true }), fc.integer({ min: -13, max: 9 }))
    .map(([figure, power]) => Math.min(max, Math.max(min, Number(`${figure}e${power}`))));

/** A quantity as files hold it: a bare SI number, or with a unit. */
function written(field: ReadingField): fc.Arbitrary<unknown> {
  switch (field.type) {
    case 'quantity': {
      const size = sizes(field);
      const withUnit = size.map((x) => formatQuantity(x, field.quantity, 5));
      const bareText = field.quantity === 'ratio' ? [size.map(String)] : [];
      return fc.oneof(size, withUnit, ...bareText);
    }
    case 'number':
      return fc.double({ min: field.min, max: field.max, noNaN: true });
    case 'choice':
      return fc.constantFrom(...field.options);
    case 'text':
      return fc.string({ minLength: 1 });
    case 'samples':
      return fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1 });
    case 'list':
      return fc.array(record(field.columns), { minLength: 1, maxLength: 5 });
    case 'group':
      return record(field.fields);
  }
}
const record = (fields: Fields) =>
  fc.record(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, written(field)])));

/** As it is read: exactly, but for the last bits of a ratio, which is typed in per cent. */
function read(value: unknown, field: ReadingField): unknown {
  const inside = (fields: Fields<ScalarField>) => (one: object) =>
    Object.fromEntries(Object.entries(one).map(([key, inner]) => [key, read(inner, fields[key])]));
  if (field.type === 'list') return (value as object[]).map(inside(field.columns));
  if (field.type === 'group') return inside(field.fields)(value as object);
  if (field.type === 'number') return (value as number) + 0;
  if (field.type === 'samples') return (value as number[]).map((x) => x + 0);
  if (field.type !== 'quantity') return value;
  const quantity = parseQuantity(value, field.quantity);
  if (!quantity.ok) return quantity;
  return field.quantity === 'ratio' ? quantity.value.toPrecision(9) : quantity.value;
}

describe.each(CARDS)('%s', (_, card) => {
  test('a reading that is put into the fields of its card is the same reading still', () => {
    const fields = fieldsOfCard(card);
    fc.assert(
      fc.property(record(fields), (reading) => {
        const { written: again } = writtenReadings(card, draftOf(card, reading, 'readings.json'), {});
        for (const [key, field] of Object.entries(fields))
          expect(read(again[key], field), key).toEqual(read(reading[key], field));
      }),
      { numRuns: 40 },
    );
  });
});

test('a bare number of a file is in SI units, one that is typed in those beside the field', () => {
  const { sampleRate } = fieldsOfCard(cardOf('decay'));
  if (sampleRate.type !== 'quantity') throw new Error('a sample rate is a quantity');
  expect(draftOf(cardOf('decay'), { sampleRate: 48000 }, 'ringing.json').fields.sampleRate).toBe('48 kHz');
  const typed = { fields: { sampleRate: '48' }, rows: [], files: {} };
  expect(writtenReadings(cardOf('decay'), typed, {}).written.sampleRate).toBe(`48 ${unitOf(sampleRate)}`);
});

test('what is typed of one station is not that of another; what is typed of a part is the same for all', () => {
  const ofStation = { ...cardOf('value', ['station.fieldStrength']), part: 'station' } as const;
  const keys = (card: OfferedMeasurement) => new Set(['Far Hill', 'Near Dale'].map((name) => draftKey(card, name)));
  expect(keys(ofStation).size).toBe(2);
  expect(keys(cardOf('audibility')).size).toBe(2);
  expect(keys(cardOf('decay')).size).toBe(1);
});

test('a file that says which station was heard goes into the card of its kind, for that station', () => {
  const [audibility, ofPhones] = [
    { ...cardOf('audibility'), part: 'load' },
    { ...cardOf('phones-resistance'), part: 'load' },
  ] as const;
  const cardOfFile = (written: object, station: string) =>
    cardFor([ofPhones, audibility], { ...written }, [], ofPhones, station);
  const heard = { kind: 'audibility', station: 'Far Hill' };
  expect(cardOfFile(heard, 'Far Hill')).toBe(audibility);
  expect(cardOfFile(heard, 'Near Dale')).toBeUndefined();
  expect(cardOfFile({ ...heard, kind: 'phones-resistance' }, 'Far Hill')).toBeUndefined();
});
