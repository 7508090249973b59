import { type ReadResult, readText, readValue } from '../../engine/index.ts';
import { textOfFile } from '../state/text-of-file.ts';

/** A description as text, as a file, or as a value already parsed. */
export type ReadingQuestion = { readonly text: string } | { readonly file: Blob } | { readonly value: unknown };

/** Longer texts (characters, bytes) are read by a worker: reading 1,000 stations takes more than 100 ms. */
export const SHORT_TEXT = 30_000;

export async function readDescription(question: ReadingQuestion): Promise<ReadResult> {
  if ('value' in question) return readValue(question.value);
  if ('text' in question) return readText(question.text);
  const found = await textOfFile(question.file);
  if (found.text !== undefined) return readText(found.text);
  return { ok: false, problems: [found.problem] };
}
