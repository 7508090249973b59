import * as v from 'valibot';
import type { Coded } from '../units/coded.ts';
import type { QuantityKind } from '../units/parse.ts';
import { givenValue } from '../units/refusal.ts';
import { safeLines, safeText } from '../units/safe-text.ts';
import { type Bounds, quantity } from '../units/schema.ts';
import type { FieldId } from './field-ids.ts';
import { LIMITS } from './limits.ts';
import { type FieldHints, type ListOf, type Refusal, refusalOf, refuse } from './refusal.ts';

/**
 * The fields a description is made of. Every field carries its id, by which its label is found, and quantities their
 * usual range, so that the page's editors, the published schema and the messages all come from this one place.
 */
export const quantityField = (field: FieldId, kind: QuantityKind, bounds: Bounds = {}) =>
  quantity(kind, { ...bounds, field });

export const length = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'length', { ...LIMITS.length, ...bounds });
export const capacitance = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'capacitance', { ...LIMITS.capacitance, min: 0, ...bounds });
export const inductance = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'inductance', { ...LIMITS.inductance, ...bounds });
export const resistance = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'resistance', { ...LIMITS.resistance, min: 0, ...bounds });
export const frequency = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'frequency', { ...LIMITS.frequency, ...bounds });
export const voltage = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'voltage', { ...LIMITS.voltage, ...bounds });
export const angle = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'angle', { ...LIMITS.angle, ...bounds });
export const ratio = (field: FieldId, bounds: Bounds = {}) =>
  quantityField(field, 'ratio', { ...LIMITS.ratio, ...bounds });

/** A list of at least `min` and at most `max` items. */
export const list = <const S extends v.GenericSchema>(
  field: FieldId,
  of: ListOf,
  item: S,
  { min = 0, max }: { readonly min?: number; readonly max: number },
) =>
  v.pipe(
    v.array(item, refuse({ code: 'list', of })),
    v.minLength(min, refuse({ code: 'list.at-least', of, count: min })),
    v.maxLength(max, refuse({ code: 'list.at-most', of, count: max })),
    v.metadata({ field }),
  );

/** A part or a list as a field of another part. */
export const part = <const S extends v.GenericSchema>(field: FieldId, schema: S) =>
  v.pipe(schema, v.metadata({ field }));

/** An object whose unknown keys are kept. A list is none, though the language takes it for one. */
export function object<const E extends v.ObjectEntries>(entries: E, hint?: Coded<FieldHints>) {
  const message = refuse<v.BaseIssue<unknown>>(({ input, path }) => {
    const key = path?.at(-1)?.key;
    // A missing key is refused as its own field would refuse nothing.
    if (input === undefined && typeof key === 'string' && Object.hasOwn(entries, key))
      return refusalOfMissing(entries[key]);
    return { expected: { code: 'object' }, hint };
  });
  const schema = v.looseObject(entries, message);
  const run: (typeof schema)['~run'] = schema['~run'];
  return Object.assign(schema, {
    '~run': function (this: typeof schema, dataset, config) {
      if (!Array.isArray(dataset.value)) return run.call(this, dataset, config);
      v._addIssue(this, 'type', dataset, config);
      return dataset;
    } as typeof run,
  });
}

/** As the field itself would refuse nothing. */
export function refusalOfMissing(field: v.GenericSchema | v.GenericSchemaAsync): Refusal {
  const read = v.safeParse(field as v.GenericSchema, undefined);
  const expected = read.success ? undefined : refusalOf(read.issues[0])?.expected;
  return { expected: expected ?? { code: 'value' }, given: { code: 'nothing' } };
}

/** A plain number, such as a permittivity. */
export const number = (field: FieldId, min: number, max: number, typical?: readonly [number, number]) =>
  v.pipe(
    v.number(refuse({ code: 'number', min, max })),
    v.check((x) => x >= min && x <= max, refuse({ code: 'number', min, max })),
    v.metadata({ field, number: true, bounds: { min, max, typical } }),
  );

/** A whole number, such as turns. */
export const whole = (field: FieldId, min: number, max: number, typical?: readonly [number, number]) =>
  v.pipe(
    v.number(refuse({ code: 'whole-number', min, max })),
    v.check((x) => Number.isInteger(x) && x >= min && x <= max, refuse({ code: 'whole-number', min, max })),
    v.metadata({ field, number: true, whole: true, bounds: { min, max, typical } }),
  );

/** Turns may be fractional: a tap at 12 1/2 turns is ordinary. */
export const turns = (field: FieldId, typical: readonly [number, number] = [5, 200]) =>
  number(field, 0.25, 5000, typical);

/** One of a few words. */
export const choice = <const T extends readonly string[]>(field: FieldId, options: T) =>
  v.pipe(
    v.picklist(
      options,
      refuse((issue) => ({
        expected: { code: 'one-of', options },
        given: givenValue(issue.input),
        hint: near(issue.input, options),
      })),
    ),
    v.metadata({ field, choice: true }),
  );

/** Longer texts may have several lines. */
const LONGEST_LINE = 500;

export const words = (field: FieldId, max = 200) =>
  v.pipe(
    v.string(refuse({ code: 'text' })),
    v.maxLength(max, refuse({ code: 'text.at-most', characters: max })),
    // The file keeps what was written; what is read can do nothing but be read.
    v.transform(max > LONGEST_LINE ? safeLines : safeText),
    v.metadata({ field, text: true, paragraphs: max > LONGEST_LINE }),
  );

/** Characters of a file kept in a description. */
export const LONGEST_TEXT = 500_000;

/** A small file's text, line ends and all. */
export const lines = (field: FieldId, max = LONGEST_TEXT) =>
  v.pipe(
    v.string(refuse({ code: 'text' })),
    v.maxLength(max, refuse({ code: 'text.at-most', characters: max })),
    v.metadata({ field, text: true, lines: true }),
  );

export const yes = (field: FieldId) =>
  v.pipe(v.boolean(refuse({ code: 'true-or-false' })), v.metadata({ field, yes: true }));

/** An optional field whose default is shown in the editor and filled in by the reader. */
export const withDefault = <S extends v.GenericSchema>(schema: S, fallback: v.InferInput<S>) =>
  v.optional(schema, fallback as never);

const near = (input: unknown, options: readonly string[]): Coded<FieldHints> | undefined => {
  const close = typeof input === 'string' ? closest(input, options) : undefined;
  return close === undefined ? undefined : { code: 'did-you-mean', option: close };
};

/** For a variant: names the choices, and the one that was probably meant, instead of the library's internal notation. */
export function variantMessage(key: string) {
  return refuse(({ expected, input }: v.BaseIssue<unknown>): Refusal => {
    if (expected === 'Object') return { expected: { code: 'object-with', key }, given: givenValue(input) };
    const options = [...(expected ?? '').matchAll(/"([^"]*)"/g)].map(([, option]) => option);
    const written = typeof input === 'object' && input !== null ? (input as Record<string, unknown>)[key] : input;
    const given = written === undefined ? { code: 'nothing' as const } : givenValue(written);
    return { expected: { code: 'kind', key, options }, given, hint: near(written, options) };
  });
}

/** The option within two edits (one for short words), if any. */
export function closest(word: string, options: readonly string[]): string | undefined {
  const target = word.slice(0, 60).toLowerCase();
  let best: string | undefined;
  let bestDistance = target.length <= 3 ? 2 : 3;
  for (const option of options) {
    const distance = edits(target, option.toLowerCase());
    if (distance < bestDistance) [best, bestDistance] = [option, distance];
  }
  return best;
}

/** Levenshtein distance. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    }
    row = next;
  }
  return row[b.length];
}
