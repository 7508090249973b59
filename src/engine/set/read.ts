import * as v from 'valibot';
import { closest } from '../fields/fields.ts';
import { isRecord, type SchemaNode, unknownKeys, withinLengths } from '../fields/introspect.ts';
import { type Expected, type Given, type Hint, type Problem, tooDeep } from '../fields/problem.ts';
import { refusalOf } from '../fields/refusal.ts';
import { withSoilOfPlace } from '../kinds/earths/soil-of-place.ts';
import { FEW, fewOfEach } from '../numerics/few-of-each.ts';
import type { Coded } from '../units/coded.ts';
import { givenValue } from '../units/refusal.ts';
import { safeText } from '../units/safe-text.ts';
import { assumedIn, placeOf } from './assumed.ts';
import { buildProblems } from './buildable.ts';
import { measuredPath } from './correlations.ts';
import { crossChecks } from './cross-checks.ts';
import { description, type SetDescription, type WrittenDescription } from './description.ts';
import { wantProblems } from './want-problems.ts';
import { valueAtPath } from './write.ts';

/** What is worth a look in a description that is right. */
export type ReadNote = Coded<{
  /** A key that is kept, though nothing reads it; perhaps `near` was meant. */
  readonly 'unknown-key': { readonly path: string; readonly near?: string };
  readonly 'more-unknown-keys': { readonly count: number };
  /** An entry of `assumed` that names nothing in the description. */
  readonly 'assumed-nowhere': { readonly path: string };
  /** An entry of `correlations` whose figure is not measured in the description, or is both of its figures: it counts for nothing. */
  readonly 'correlation-nowhere': { readonly path: string };
}>;

/** A set and what it was read from, or every problem there is. */
export type ReadResult =
  | {
      readonly ok: true;
      /** As written, unknown keys and all. */
      readonly written: WrittenDescription;
      /** As SI numbers with defaults filled in. */
      readonly set: SetDescription;
      /** Not wrong, but worth a look. */
      readonly notes: readonly ReadNote[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** No set needs more; a larger file is something else. */
export const LARGEST_FILE = 2_000_000;

/**
 * What is wrong with a file larger than any description.
 * @param size bytes or characters
 * @returns one problem
 */
export const tooLarge = (size: number): Problem => ({
  path: '',
  expected: { code: 'file.at-most', megabytes: LARGEST_FILE / 1e6 },
  given: { code: 'megabytes', size: size / 1e6 },
  hint: { code: 'other-file' },
});

type Refused = Extract<ReadResult, { readonly ok: false }>;

const refused = (expected: Expected, given: Given, hint: Hint): Refused => ({
  ok: false,
  problems: [{ path: '', expected, given, hint }],
});

/**
 * Read the text of a description file. Never throws; every problem is returned at once.
 * @param text of a file, up to 2 MB
 * @returns the set in SI units with notes, or all problems with place, what was expected, what was given and a way out
 */
export function readText(text: string): ReadResult {
  const parsed = parsedText(text, A_SET);
  return parsed.ok ? readValue(parsed.value) : parsed;
}

/** What a file should have been, where it is something else altogether. */
export interface FileSort {
  readonly expected: Expected;
  readonly hint: Hint;
}
const A_SET: FileSort = { expected: { code: 'description' }, hint: { code: 'start-from-example' } };

/** A file's text as JSON, or why it is none. @param sort what it should have been. */
export function parsedText(text: string, sort: FileSort): { readonly ok: true; readonly value: unknown } | Refused {
  if (text.length > LARGEST_FILE) return { ok: false, problems: [tooLarge(text.length)] };
  if (text.trim() === '') return refused(sort.expected, { code: 'empty-file' }, sort.hint);
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')) };
  } catch (error) {
    return refused({ code: 'json' }, givenValue(text.trim()), whereItBreaks(text, error as Error));
  }
}

/** What a schema makes of a value, with what is worth a look, or all problems. */
export type ReadBySchema<Output> =
  | {
      readonly ok: true;
      readonly written: Record<string, unknown>;
      readonly output: Output;
      readonly notes: readonly ReadNote[];
    }
  | Refused;

/** Read a parsed value by the schema of a whole file. @param sort what it should have been. */
export function readBySchema<S extends v.GenericSchema>(
  schema: S,
  value: unknown,
  sort: FileSort,
): ReadBySchema<v.InferOutput<S>> {
  if (!isRecord(value))
    return refused(sort.expected, tooDeep(value) ? { code: 'nested-too-deep' } : givenValue(value), sort.hint);
  if (tooDeep(value)) return refused(sort.expected, { code: 'nested-too-deep' }, { code: 'no-set' });
  const upgraded = upgrade(value);
  const node = schema as unknown as SchemaNode;
  const { value: bounded, cut } = withinLengths(node, upgraded);
  const unknown = unknownKeys(node, bounded).filter(({ path }) => path !== '$schema');
  const result = v.safeParse(schema, bounded);
  if (cut.length > 0 || !result.success)
    return { ok: false, problems: fewProblems(cut, result.success ? [] : result.issues, unknown) };
  return { ok: true, written: upgraded, output: result.output, notes: notesOf(unknown) };
}

/**
 * Read a parsed description.
 * @param value JSON as parsed
 * @returns the set in SI units with notes, or all problems, as `readText`
 */
export function readValue(value: unknown): ReadResult {
  const result = readBySchema(description, value, A_SET);
  if (!result.ok) return result;
  const { output: read, written, notes } = result;
  const set: SetDescription = { ...read, earth: withSoilOfPlace(read.earth, read.place.ground) };
  const crossed = [...crossChecks(set), ...wantProblems(set, description as unknown as SchemaNode)];
  const problems = crossed.length > 0 ? crossed : buildProblems(set);
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    written: written as WrittenDescription,
    set,
    notes: [...notes, ...assumedNowhere(written), ...correlationNowhere(set)],
  };
}

const assumedNowhere = (written: unknown): ReadNote[] =>
  assumedIn(written)
    .filter((text) => valueAtPath(written, placeOf(text)) === undefined)
    .slice(0, FEW)
    .map((text) => ({ code: 'assumed-nowhere', path: safeText(text) }));

const correlationNowhere = ({ correlations = [], ...set }: SetDescription): ReadNote[] =>
  correlations
    .flatMap(({ first, second }) => {
      if (first === second) return [first];
      return [first, second].filter((text) => valueAtPath(set, measuredPath(text)) === undefined);
    })
    .slice(0, FEW)
    .map((text) => ({ code: 'correlation-nowhere', path: safeText(text) }));

type Unknown = ReturnType<typeof unknownKeys>;

/** The first few unknown keys by name, with what was probably meant, and how many others there are. */
function notesOf(unknown: Unknown): ReadNote[] {
  const notes = unknown.slice(0, FEW).map(
    ({ path, key, known }): ReadNote => ({
      code: 'unknown-key',
      path: safeText(path),
      near: closest(key, known),
    }),
  );
  if (unknown.length > FEW) notes.push({ code: 'more-unknown-keys', count: unknown.length - FEW });
  return notes;
}

/** Unknown keys of one object that are looked at for a slip. */
const MOST_SLIPS = 50;

/** Problems of lists that were cut and of the rest, the first few of each kind; the last of them says how many others. */
function fewProblems(
  cut: ReturnType<typeof withinLengths>['cut'],
  issues: readonly v.BaseIssue<unknown>[],
  unknown: Unknown,
): Problem[] {
  const few = fewOfEach<Problem>();
  for (const { path, length, most } of cut)
    few.add('length', () => ({
      path,
      expected: { code: 'items.at-most', count: most },
      given: givenValue(length),
      hint: { code: 'leave-others-out' },
    }));
  const slips = new Map<string, string[]>();
  for (const { path, key } of unknown) {
    const parent = path.slice(0, Math.max(0, path.length - key.length - 1));
    const keys = slips.get(parent) ?? [];
    if (keys.length < MOST_SLIPS) keys.push(key);
    slips.set(parent, keys);
  }
  for (const issue of issues) {
    const path = pathOf(issue);
    const kind = `${path.replace(/\[\d+\]/g, '[]')} ${issue.type} ${issue.input === undefined ? 'missing' : (issue.expected ?? '')}`;
    few.add(kind, () => asProblem(issue, path, slips));
  }
  return few.all().map(({ item, more }) => (more === 0 ? item : { ...item, more }));
}

/**
 * What a schema refuses, the first few of each kind.
 * @param issues of one value, as the schema gives them
 * @returns problems with paths inside that value
 */
export const issueProblems = (issues: readonly v.BaseIssue<unknown>[]): Problem[] => fewProblems([], issues, []);

/** Old versions are brought up to date here, and nowhere else. Version 1 is the first. */
function upgrade(value: Record<string, unknown>): Record<string, unknown> {
  return value;
}

function asProblem(issue: v.BaseIssue<unknown>, path: string, slips: ReadonlyMap<string, readonly string[]>): Problem {
  const { expected, given = givenValue(issue.input), hint } = refusalOf(issue) ?? { expected: plainExpected(issue) };
  if (issue.input !== undefined) return { path, expected, given, hint };
  const key = path.split('.').pop()!;
  const parent = path.slice(0, Math.max(0, path.length - key.length - 1));
  const misspelt = slips.get(parent)?.find((slip) => closest(slip, [key]));
  const slip = misspelt === undefined ? undefined : ({ code: 'misspelt', written: safeText(misspelt), key } as const);
  return { path, expected, given, hint: slip ?? hint ?? { code: 'missing' } };
}

/** Of the few schemas without a refusal of their own, such as a tuple or a literal. */
const plainExpected = ({ expected }: v.BaseIssue<unknown>): Expected => {
  if (expected === 'Array') return { code: 'any-list' };
  const [, value] = /^"(.*)"$/.exec(expected ?? '') ?? [];
  return value === undefined ? { code: 'another-value' } : { code: 'literal', value };
};

function pathOf(issue: v.BaseIssue<unknown>): string {
  let path = '';
  for (const item of issue.path ?? []) {
    path += typeof item.key === 'number' ? `[${item.key}]` : `${path ? '.' : ''}${String(item.key)}`;
  }
  return path;
}

function whereItBreaks(text: string, error: Error): Hint {
  const position = positionOf(text, error.message);
  if (!Number.isFinite(position)) return { code: /end of/i.test(error.message) ? 'cut-short' : 'not-json' };
  if (position >= text.trimEnd().length) return { code: 'closing-bracket' };
  const before = text.slice(0, position).split('\n');
  return { code: 'breaks-at', line: before.length, column: before[before.length - 1].length + 1 };
}

/** Where the parser stopped: given as a number, or as the text about it, by where and how new it runs. */
function positionOf(text: string, message: string): number {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position !== undefined) return Number(position);
  const [, token = '', cut = '', about = ''] =
    /^Unexpected token '([\s\S]+?)', (\.\.\.)?"([\s\S]*?)"(?:\.\.\.)? is not valid JSON$/.exec(message) ?? [];
  const at = about === '' ? -1 : text.indexOf(about);
  return at < 0 ? Number.NaN : at + Math.max(0, about.indexOf(token, cut ? 10 : 0));
}

export type { Problem };
