import * as v from 'valibot';
import { closest } from '../fields/fields.ts';
import { isRecord, type SchemaNode, unknownKeys } from '../fields/introspect.ts';
import { brief, type Problem, problemSentence, tooDeep } from '../fields/problem.ts';
import { buildProblems } from './buildable.ts';
import { crossChecks } from './cross-checks.ts';
import { description, type SetDescription, type WrittenDescription } from './description.ts';

export type ReadResult =
  | {
      readonly ok: true;
      /** As written, unknown keys and all. */
      readonly written: WrittenDescription;
      /** As SI numbers with defaults filled in. */
      readonly set: SetDescription;
      /** Not wrong, but worth a look: unknown keys. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** No set needs more; a larger file is something else. */
export const LARGEST_FILE = 2_000_000;

/** Read the text of a description file. Never throws; every problem is returned at once. */
export function readText(text: string): ReadResult {
  const refuse = (expected: string, received: string, hint: string): ReadResult => ({
    ok: false,
    problems: [{ path: '', expected, received, hint }],
  });
  if (text.length > LARGEST_FILE)
    return refuse(
      'a description of at most 2 MB',
      `${(text.length / 1e6).toFixed(1)} MB`,
      'this is not a set; choose another file',
    );
  if (text.trim() === '') return refuse('a description', 'an empty file', 'start from one of the examples');
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refuse('JSON', brief(text.trim()), whereItBreaks(text, error as Error));
  }
  return readValue(value);
}

/** Read a parsed description. */
export function readValue(value: unknown): ReadResult {
  if (!isRecord(value))
    return {
      ok: false,
      problems: [
        {
          path: '',
          expected: 'a description: { "format": … }',
          received: tooDeep(value) ? 'something nested very deep' : brief(value),
          hint: 'start from one of the examples',
        },
      ],
    };
  if (tooDeep(value))
    return {
      ok: false,
      problems: [
        {
          path: '',
          expected: 'a description',
          received: 'lists or objects nested very deep',
          hint: 'this is not a set',
        },
      ],
    };
  const upgraded = upgrade(value);
  const unknown = unknownKeys(description as unknown as SchemaNode, upgraded);
  const result = v.safeParse(description, upgraded);
  if (!result.success) {
    const problems = result.issues.map((issue) => asProblem(issue, unknown));
    return { ok: false, problems };
  }
  const crossed = crossChecks(result.output);
  const problems = crossed.length > 0 ? crossed : buildProblems(result.output);
  if (problems.length > 0) return { ok: false, problems };
  const notes = unknown.map(({ path, key, known }) => {
    const near = closest(key, known);
    return `${path} is not known here and is kept as it is${near ? `; did you mean "${near}"?` : ''}`;
  });
  return { ok: true, written: upgraded as WrittenDescription, set: result.output, notes };
}

/** Old versions are brought up to date here, and nowhere else. Version 1 is the first. */
function upgrade(value: Record<string, unknown>): Record<string, unknown> {
  return value;
}

function asProblem(issue: v.BaseIssue<unknown>, unknown: readonly { path: string; key: string }[]): Problem {
  const path = pathOf(issue);
  const match =
    /^expected ([\s\S]*?)(?:, received ([\s\S]*?))?(?:[:;] ((?:did|write|begin|add|this|nothing|the unit|"|[A-Z]{3}|is)[\s\S]*))?$/.exec(
      issue.message,
    );
  const expected = match?.[1] ?? describeExpected(issue);
  const received = match?.[2] ?? brief(issue.input);
  let hint = match?.[3] ?? '';
  if (issue.input === undefined) {
    const key = path.split('.').pop()!;
    const parent = path.slice(0, Math.max(0, path.length - key.length - 1));
    const misspelt = unknown.find((u) => u.path === (parent ? `${parent}.${u.key}` : u.key) && closest(u.key, [key]));
    hint = misspelt ? `"${misspelt.key}" is written there; did you mean "${key}"?` : hint || 'it is missing';
  }
  return { path, expected, received, hint };
}

const describeExpected = (issue: v.BaseIssue<unknown>): string => {
  const plain: Record<string, string> = {
    Object: 'an object { … }',
    Array: 'a list [ … ]',
    string: 'text',
    number: 'a number',
  };
  const expected = issue.expected ?? issue.message;
  const key = expected.replace(/^"(.*)"$/, '$1');
  return plain[expected] ?? (key !== expected ? `the key ${expected}` : expected);
};

function pathOf(issue: v.BaseIssue<unknown>): string {
  let path = '';
  for (const item of issue.path ?? []) {
    path += typeof item.key === 'number' ? `[${item.key}]` : `${path ? '.' : ''}${String(item.key)}`;
  }
  return path;
}

function whereItBreaks(text: string, error: Error): string {
  const position = positionOf(text, error.message);
  if (!Number.isFinite(position))
    return /end of/i.test(error.message) ? 'the file is cut short' : 'it cannot be read as JSON';
  if (position >= text.trimEnd().length) return 'the file is cut short: a closing } or ] is missing at its end';
  const before = text.slice(0, position).split('\n');
  return `it breaks at line ${before.length}, column ${before[before.length - 1].length + 1}`;
}

/** Where the parser stopped: given as a number, or as the text about it, by where and how new it runs. */
function positionOf(text: string, message: string): number {
  const told = /position (\d+)/.exec(message)?.[1];
  if (told !== undefined) return Number(told);
  const [, token = '', cut = '', about = ''] =
    /^Unexpected token '([\s\S]+?)', (\.\.\.)?"([\s\S]*?)"(?:\.\.\.)? is not valid JSON$/.exec(message) ?? [];
  const at = about === '' ? -1 : text.indexOf(about);
  return at < 0 ? Number.NaN : at + Math.max(0, about.indexOf(token, cut ? 10 : 0));
}

export { type Problem, problemSentence };
