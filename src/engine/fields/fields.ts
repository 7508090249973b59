import * as v from 'valibot';
import { brief } from '../units/brief.ts';
import { type Refusal, refusalOf, refuse } from '../units/refusal.ts';
import { safeLines, safeText } from '../units/safe-text.ts';
import { type Bounds, quantity } from '../units/schema.ts';
import { LIMITS } from './limits.ts';

/**
 * The fields a description is made of. Every field carries its label, and quantities their usual range, so that the
 * page's editors, the published schema and the messages all come from this one place.
 */
export const length = (label: string, bounds: Bounds = {}) =>
  quantity('length', { ...LIMITS.length, ...bounds, label });
export const capacitance = (label: string, bounds: Bounds = {}) =>
  quantity('capacitance', { ...LIMITS.capacitance, min: 0, ...bounds, label });
export const inductance = (label: string, bounds: Bounds = {}) =>
  quantity('inductance', { ...LIMITS.inductance, ...bounds, label });
export const resistance = (label: string, bounds: Bounds = {}) =>
  quantity('resistance', { ...LIMITS.resistance, min: 0, ...bounds, label });
export const frequency = (label: string, bounds: Bounds = {}) =>
  quantity('frequency', { ...LIMITS.frequency, ...bounds, label });
export const voltage = (label: string, bounds: Bounds = {}) =>
  quantity('voltage', { ...LIMITS.voltage, ...bounds, label });
export const angle = (label: string, bounds: Bounds = {}) => quantity('angle', { ...LIMITS.angle, ...bounds, label });
export const ratio = (label: string, bounds: Bounds = {}) => quantity('ratio', { ...LIMITS.ratio, ...bounds, label });

/** An object whose unknown keys are kept. A list is none, though the language takes it for one. */
export function object<const E extends v.ObjectEntries>(entries: E, hint?: string) {
  const message = refuse<v.BaseIssue<unknown>>(({ input, path }) => {
    const key = path?.at(-1)?.key;
    // A missing key is refused as its own field would refuse nothing.
    if (input === undefined && typeof key === 'string' && Object.hasOwn(entries, key)) return missing(entries[key]);
    return { expected: 'an object { … }', hint };
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

function missing(field: v.GenericSchema | v.GenericSchemaAsync): Refusal {
  const read = v.safeParse(field as v.GenericSchema, undefined);
  const expected = read.success ? undefined : refusalOf(read.issues[0])?.expected;
  return { expected: expected ?? 'a value', received: brief(undefined) };
}

/** A plain number, such as a permittivity. */
export const number = (label: string, min: number, max: number, about = '', typical?: readonly [number, number]) =>
  v.pipe(
    v.number(refuse(`a number from ${min} to ${max}`)),
    v.check((x) => x >= min && x <= max, refuse(`a number from ${min} to ${max}`)),
    v.metadata({ label, about, number: true, bounds: { min, max, typical } }),
  );

/** A whole number, such as turns. */
export const whole = (label: string, min: number, max: number, about = '', typical?: readonly [number, number]) =>
  v.pipe(
    v.number(refuse(`a whole number from ${min} to ${max}`)),
    v.check((x) => Number.isInteger(x) && x >= min && x <= max, refuse(`a whole number from ${min} to ${max}`)),
    v.metadata({ label, about, number: true, whole: true, bounds: { min, max, typical } }),
  );

/** Turns may be fractional: a tap at 12 1/2 turns is ordinary. */
export const turns = (label: string, about = '', typical: readonly [number, number] = [5, 200]) =>
  number(label, 0.25, 5000, about, typical);

/** One of a few words. */
export const choice = <const T extends readonly string[]>(label: string, options: T, about = '') =>
  v.pipe(
    v.picklist(
      options,
      refuse((issue) => ({
        expected: `one of ${listed(options)}`,
        received: brief(issue.input),
        hint: near(issue.input, options),
      })),
    ),
    v.metadata({ label, about, choice: true }),
  );

/** Longer texts may have several lines. */
const LONGEST_LINE = 500;

export const words = (label: string, about = '', max = 200) =>
  v.pipe(
    v.string(refuse('text')),
    v.maxLength(max, refuse(`at most ${max} characters`)),
    // The file keeps what was written; what is read can do nothing but be read.
    v.transform(max > LONGEST_LINE ? safeLines : safeText),
    v.metadata({ label, about, text: true }),
  );

/** Characters of a file kept in a description. */
export const LONGEST_TEXT = 500_000;

/** A small file's text, line ends and all. */
export const lines = (label: string, about = '', max = LONGEST_TEXT) =>
  v.pipe(
    v.string(refuse('text')),
    v.maxLength(max, refuse(`at most ${max} characters`)),
    v.metadata({ label, about, text: true, lines: true }),
  );

export const yes = (label: string, about = '') =>
  v.pipe(v.boolean(refuse('true or false')), v.metadata({ label, about, yes: true }));

/** An optional field whose default is shown in the editor and filled in by the reader. */
export const withDefault = <S extends v.GenericSchema>(schema: S, fallback: v.InferInput<S>) =>
  v.optional(schema, fallback as never);

const listed = (options: readonly string[]): string => options.map((o) => `"${o}"`).join(', ');

const near = (input: unknown, options: readonly string[]): string | undefined => {
  const close = typeof input === 'string' ? closest(input, options) : undefined;
  return close && `did you mean "${close}"?`;
};

/** For a variant: names the choices, and the one that was probably meant, instead of the library's internal notation. */
export function variantMessage(key: string) {
  return refuse(({ expected, received, input }: v.BaseIssue<unknown>): Refusal => {
    if (expected === 'Object') return { expected: `an object with "${key}"`, received: brief(input) };
    const options = [...(expected ?? '').matchAll(/"([^"]*)"/g)].map(([, option]) => option);
    const written = typeof input === 'object' && input !== null ? (input as Record<string, unknown>)[key] : input;
    return { expected: `"${key}" to be one of ${listed(options)}`, received, hint: near(written, options) };
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
