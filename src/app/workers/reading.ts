import { readText } from '../../engine/index.ts';
import { type Reading, readWithStandIns } from '../description/stand-ins.ts';
import { textOfFile } from '../state/text-of-file.ts';

/** A description as text, as a file, or as a value already parsed, with what was good of it before. */
export type ReadingQuestion =
  | { readonly text: string }
  | { readonly file: Blob }
  | { readonly value: unknown; readonly lastGood?: unknown };

/** Longer texts (characters, bytes) are read by a worker: reading 1,000 stations takes more than 100 ms. */
export const SHORT_TEXT = 30_000;

/** A description's text, with stand-ins for fields that are refused; `written` is undefined where the text as a whole is. */
export function readDescriptionText(text: string): Reading {
  const result = readText(text);
  if (result.ok) return readWithStandIns(result.written, undefined, result);
  if (result.problems.some(({ path }) => path === '')) return { written: undefined, result };
  return readWithStandIns(JSON.parse(text.replace(/^\uFEFF/, '')), undefined, result);
}

export async function readDescription(question: ReadingQuestion): Promise<Reading> {
  if ('value' in question) return readWithStandIns(question.value, question.lastGood);
  if ('text' in question) return readDescriptionText(question.text);
  const found = await textOfFile(question.file);
  if (found.text !== undefined) return readDescriptionText(found.text);
  return { written: undefined, result: { ok: false, problems: [found.problem] } };
}
