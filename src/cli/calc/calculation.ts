import * as v from 'valibot';
import {
  bare,
  givenValue,
  metadataOf,
  QUANTITY_KINDS,
  type QuantityKind,
  refusalOf,
  type SchemaNode,
  tooDeep,
  type Warning,
} from '../../engine/index.ts';
import { type CalculationName, expectedText, givenText, hintText, warningTexts } from '../../outputs/words/index.ts';

/** One WHAT of `faintwave calc`: how its input is read and what it answers. */
export interface Calculation {
  readonly name: CalculationName;
  /** An input that works, printed by `--help` and run by a test. */
  readonly example: unknown;
  /** Never throws for bad input: its problems come back. */
  readonly run: (input: unknown) => CalculationResult;
}

/** `message` says what was expected and what was given. */
export interface Problem {
  readonly path: string;
  readonly message: string;
}

export type CalculationResult =
  | { readonly ok: true; readonly answer: Record<string, unknown> & { warnings: readonly string[] } }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A figure of the answer: `{ value, unit }`, SI, full precision. */
export const figure = (value: number, kind: QuantityKind, range?: Range) => ({
  value,
  unit: QUANTITY_KINDS[kind].unit,
  ...(range && { range }),
});
/** 90 %: of ten real ones nine lie within. SI, as the value. */
export type Range = readonly [low: number, high: number];
export const figureIn = (value: number, unit: string) => ({ value, unit });

/** Build a calculation from a schema and a function of its output. */
export function calculation<S extends v.GenericSchema>(
  definition: Omit<Calculation, 'run'> & {
    schema: S;
    answer: (input: v.InferOutput<S>) => Record<string, unknown> & { warnings: readonly (Warning | string)[] };
  },
): Calculation {
  const { schema, answer, ...rest } = definition;
  return {
    ...rest,
    run(input) {
      if (tooDeep(input))
        return {
          ok: false,
          problems: [{ path: '(top)', message: 'expected a plain object, got one nested very deep' }],
        };
      const read = v.safeParse(schema, input);
      if (!read.success) {
        return {
          ok: false,
          problems: read.issues.map((issue) => ({
            path: v.getDotPath(issue) ?? '(top)',
            message: inWords(issue, schema),
          })),
        };
      }
      try {
        const found = answer(read.output);
        const warnings = [...warningTexts(found.warnings), ...leftOut(input, read.output), ...unbounded(found)];
        return { ok: true, answer: { ...found, warnings } };
      } catch (error) {
        return { ok: false, problems: [refused(input, error)] };
      }
    },
  };
}

/** What the engine says of values that are right one by one and lead nowhere together. Anything else is a fault: thrown on. */
export function refused(input: unknown, error: unknown): Problem {
  if (!(error instanceof RangeError)) throw error;
  return {
    path: '(top)',
    message: `expected values that can be worked out together, got ${givenText(givenValue(input))}: ${error.message}`,
  };
}

/** A sentence for every key that the schema does not know: it may be a slip of the pen. A plain 0 asks for nothing. */
function leftOut(input: unknown, read: unknown, path = ''): string[] {
  if (typeof input !== 'object' || typeof read !== 'object' || input === null || read === null) return [];
  return Object.entries(input).flatMap(([key, value]) => {
    const name = Array.isArray(input) ? `${path}[${key}]` : `${path && `${path}.`}${key.slice(0, 40)}`;
    if (Object.hasOwn(read, key)) return leftOut(value, (read as Record<string, unknown>)[key], name);
    return value === 0 || value === undefined ? [] : [`“${name}” is not used here and was left out.`];
  });
}

/** A sentence for figures that came out without an end or without a value. */
function unbounded({
  warnings,
  ...figures
}: Record<string, unknown> & { warnings: readonly (Warning | string)[] }): string[] {
  if (warnings.length > 0) return [];
  const endless = Object.entries(figures).flatMap(([name, found]) => {
    const value = (found as { value?: unknown } | null)?.value ?? found;
    return typeof value === 'number' && !Number.isFinite(value) ? [name] : [];
  });
  return endless.length === 0 ? [] : [`What was given leaves no finite figure for ${endless.join(', ')}.`];
}

/** The schema library's own names of what it expects. */
const KINDS: Readonly<Record<string, string>> = {
  Object: 'an object { … }',
  Array: 'a list [ … ]',
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
};

/** "expected …, got …", whatever the issue says by itself. */
function inWords(issue: v.BaseIssue<unknown>, schema: v.GenericSchema): string {
  const received = givenText(givenValue(issue.input));
  const refusal = refusalOf(issue);
  if (refusal) {
    const { expected, given = givenValue(issue.input), hint } = refusal;
    const text = `expected ${expectedText(expected)}, got ${givenText(given)}`;
    return hint ? `${text}: ${hintText(hint)}` : text;
  }
  const { expected, message } = issue;
  if (message.startsWith('expected '))
    return /got /.test(message)
      ? message.replace('got undefined', 'got nothing').replace(/(got .{80}).{200,}$/s, '$1…')
      : `${message}, got ${received}`;
  if (/^Invalid (?:key|type|value|length|content|format)/.test(message) && expected !== null) {
    // A key that is missing is "expected" by its own name.
    if (/^Invalid key/.test(message))
      return issue.input === undefined || issue.received === 'undefined'
        ? `expected ${wanted(schema, issue)}, got nothing: it is missing`
        : `expected no such key as ${received}`;
    const what = expected
      .replace(/[()]/g, '')
      .split(' | ')
      .map((word) => KINDS[word] ?? word)
      .join(' or ');
    return `expected ${what}, got ${received}`;
  }
  // What the engine says of sizes that do not go together.
  return `expected sizes that go together, got ${received}: ${message}`;
}

/** What a missing key should have held, as its schema has it. */
function wanted(schema: v.GenericSchema, issue: v.BaseIssue<unknown>): string {
  let node: SchemaNode | undefined = schema as unknown as SchemaNode;
  for (const item of issue.path ?? []) {
    const at: SchemaNode = bare(node!);
    const own = (option: unknown): SchemaNode | undefined => bare(option as SchemaNode).entries?.[String(item.key)];
    node = at.item ?? own(at) ?? at.options?.map(own).find((entry) => entry !== undefined);
    if (!node) return 'a value';
  }
  const { quantity } = metadataOf(node);
  if (quantity) return expectedText({ code: 'quantity', kind: quantity });
  const { type, options } = bare(node);
  if (type === 'picklist') return `one of ${options!.map((o) => `"${o}"`).join(', ')}`;
  return { number: 'a number', string: 'text', boolean: 'true or false', array: 'a list [ … ]' }[type] ?? 'a value';
}
