import * as v from 'valibot';
import {
  bare,
  givenValue,
  metadataOf,
  QUANTITY_KINDS,
  type QuantityKind,
  refusalIn,
  type SchemaNode,
  tooDeep,
  type Warning,
} from '../../engine/index.ts';
import {
  type CalcProblem,
  type CalculationName,
  calcNotes,
  calcProblemText,
  type JsonType,
  warningTexts,
} from '../../outputs/words/index.ts';
import { refusalFor } from './shape.ts';

/** One WHAT of `faintwave calc`: how its input is read and what it answers. */
export interface Calculation {
  readonly name: CalculationName;
  /** An input that works, printed by `--help` and run by a test. */
  readonly example: unknown;
  /** Never throws for bad input: its problems come back. */
  readonly run: (input: unknown) => CalculationResult;
}

/** `message` says what was expected and what was given. */
export interface InputProblem {
  readonly path: string;
  readonly message: string;
}

export type CalculationResult =
  | { readonly ok: true; readonly answer: Record<string, unknown> & { warnings: readonly string[] } }
  | { readonly ok: false; readonly problems: readonly InputProblem[] };

/** A figure of the answer: `{ value, unit }`, SI, full precision. */
export const figure = (value: number, kind: QuantityKind, range?: FigureRange) => ({
  value,
  unit: QUANTITY_KINDS[kind].unit,
  ...(range && { range }),
});
/** 90 %: of ten real ones nine lie within. SI, as the value. */
export type FigureRange = readonly [low: number, high: number];
export const figureIn = (value: number, unit: string, range?: FigureRange) => ({
  value,
  unit,
  ...(range && { range }),
});

/** A range ×/÷ a factor. */
export const factorRange = (value: number, factor: number): FigureRange =>
  value < 0 ? [value * factor, value / factor] : [value / factor, value * factor];

/** Range of a level in decibels from that of its field strength. */
export const levelRange = (level: number, value: number, [low, high]: FigureRange): FigureRange => [
  level + 20 * Math.log10(low / value),
  level + 20 * Math.log10(high / value),
];

const TOO_DEEP: CalcProblem = { expected: { code: 'plain-object' }, given: { code: 'nested-too-deep' } };

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
          problems: [{ path: '(top)', message: calcProblemText(TOO_DEEP) }],
        };
      const read = v.safeParse(schema, input);
      if (!read.success) {
        return {
          ok: false,
          problems: read.issues.map((issue) => ({
            path: v.getDotPath(issue) ?? '(top)',
            message: calcProblemText(problemOf(issue, schema)),
          })),
        };
      }
      try {
        const result = answer(read.output);
        const warnings = [...warningTexts(result.warnings), ...leftOut(input, read.output), ...unbounded(result)];
        return { ok: true, answer: { ...result, warnings } };
      } catch (error) {
        return { ok: false, problems: [refused(input, error)] };
      }
    },
  };
}

/** What the engine says of values that are right one by one and lead nowhere together. Anything else is a fault: thrown on. */
export const refused = (input: unknown, error: unknown): InputProblem => ({
  path: '(top)',
  message: calcProblemText({ ...refusalFor('values-together', error), given: givenValue(input) }),
});

/** A sentence for every key that the schema does not know: it may be a slip of the pen. A plain 0 asks for nothing. */
function leftOut(input: unknown, read: unknown, path = ''): string[] {
  if (typeof input !== 'object' || typeof read !== 'object' || input === null || read === null) return [];
  return Object.entries(input).flatMap(([key, value]) => {
    const name = Array.isArray(input) ? `${path}[${key}]` : `${path && `${path}.`}${key.slice(0, 40)}`;
    if (Object.hasOwn(read, key)) return leftOut(value, (read as Record<string, unknown>)[key], name);
    return value === 0 || value === undefined ? [] : [calcNotes.leftOut(name)];
  });
}

/** A sentence for figures that came out without an end or without a value. */
function unbounded({
  warnings,
  ...figures
}: Record<string, unknown> & { warnings: readonly (Warning | string)[] }): string[] {
  if (warnings.length > 0) return [];
  const endless = Object.entries(figures).flatMap(([name, entry]) => {
    const value = (entry as { value?: unknown } | null)?.value ?? entry;
    return typeof value === 'number' && !Number.isFinite(value) ? [name] : [];
  });
  return endless.length === 0 ? [] : [calcNotes.endless(endless)];
}

const JSON_TYPES: readonly JsonType[] = ['object', 'array', 'string', 'number', 'boolean'];
const jsonType = (type: string): JsonType | undefined => JSON_TYPES.find((one) => one === type);

/** What is wrong, as codes: those a schema gives, or what the schema library says of types and keys by itself. */
function problemOf(issue: v.BaseIssue<unknown>, schema: v.GenericSchema): CalcProblem {
  const given = givenValue(issue.input);
  const refusal = refusalIn(issue) as Partial<CalcProblem> | undefined;
  if (refusal) return { given, ...refusal } as CalcProblem;
  const type = jsonType(issue.type);
  // An object that lacks a key names the key as what it expects.
  if (type === 'object' && issue.expected !== 'Object')
    return { expected: expectationOf(schema, issue), given, hint: { code: 'missing' } };
  return { expected: type ? { code: 'json-type', types: [type] } : { code: 'value' }, given };
}

/** What a missing key should have held, as its schema has it. */
function expectationOf(schema: v.GenericSchema, issue: v.BaseIssue<unknown>): CalcProblem['expected'] {
  let node: SchemaNode | undefined = schema as unknown as SchemaNode;
  for (const item of issue.path ?? []) {
    const at: SchemaNode = bare(node!);
    const own = (option: unknown): SchemaNode | undefined => bare(option as SchemaNode).entries?.[String(item.key)];
    node = at.item ?? own(at) ?? at.options?.map(own).find((entry) => entry !== undefined);
    if (!node) return { code: 'value' };
  }
  const { quantity } = metadataOf(node);
  if (quantity) return { code: 'quantity', kind: quantity };
  const { type, options } = bare(node);
  if (type === 'picklist') return { code: 'one-of', options: options!.map(String) };
  const json = jsonType(type);
  return json && json !== 'object' ? { code: 'json-type', types: [json] } : { code: 'value' };
}
