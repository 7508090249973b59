import * as v from 'valibot';
import { closest } from '../fields/fields.ts';
import { isRecord, type SchemaNode, unknownKeys, withinLengths } from '../fields/introspect.ts';
import { brief, type Problem, problemSentence, tooDeep } from '../fields/problem.ts';
import { FEW, fewOfEach } from '../numerics/few-of-each.ts';
import { refusalOf } from '../units/refusal.ts';
import { safeText } from '../units/safe-text.ts';
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
  const schema = description as unknown as SchemaNode;
  const { value: bounded, cut } = withinLengths(schema, upgraded);
  const unknown = unknownKeys(schema, bounded).filter(({ path }) => path !== '$schema');
  const result = v.safeParse(description, bounded);
  if (cut.length > 0 || !result.success)
    return { ok: false, problems: fewProblems(cut, result.success ? [] : result.issues, unknown) };
  const crossed = crossChecks(result.output);
  const problems = crossed.length > 0 ? crossed : buildProblems(result.output);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, written: upgraded as WrittenDescription, set: result.output, notes: notesOf(unknown) };
}

type Unknown = ReturnType<typeof unknownKeys>;

/** The first few unknown keys by name, with what was probably meant, and how many others there are. */
function notesOf(unknown: Unknown): string[] {
  const notes = unknown.slice(0, FEW).map(({ path, key, known }) => {
    const near = closest(key, known);
    return `${safeText(path)} is not known here and is kept as it is${near ? `; did you mean "${near}"?` : ''}`;
  });
  if (unknown.length > FEW) notes.push(`${unknown.length - FEW} more keys are not known here and are kept as they are`);
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
      expected: `at most ${most} of them`,
      received: String(length),
      hint: 'leave the others out',
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
  return few.all().map(({ item, more }) => {
    if (more === 0) return item;
    const others = `and ${more} more of the same kind`;
    return { ...item, hint: item.hint ? `${item.hint}; ${others}` : others, more };
  });
}

/** Old versions are brought up to date here, and nowhere else. Version 1 is the first. */
function upgrade(value: Record<string, unknown>): Record<string, unknown> {
  return value;
}

function asProblem(issue: v.BaseIssue<unknown>, path: string, slips: ReadonlyMap<string, readonly string[]>): Problem {
  const { expected, received = brief(issue.input), hint = '' } = refusalOf(issue) ?? { expected: plainExpected(issue) };
  if (issue.input !== undefined) return { path, expected, received, hint };
  const key = path.split('.').pop()!;
  const parent = path.slice(0, Math.max(0, path.length - key.length - 1));
  const misspelt = slips.get(parent)?.find((slip) => closest(slip, [key]));
  const slip = misspelt && `"${safeText(misspelt)}" is written there; did you mean "${key}"?`;
  return { path, expected, received, hint: slip ?? (hint || 'it is missing') };
}

/** Of the few schemas without a refusal of their own, such as a tuple or a literal. */
const plainExpected = ({ expected }: v.BaseIssue<unknown>): string =>
  (expected === 'Array' ? 'a list [ … ]' : expected) ?? 'another value';

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
