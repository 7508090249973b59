import { encodingOf, type Problem } from '../../engine/index.ts';

interface Refusal {
  readonly text?: undefined;
  readonly problem: Problem;
}

/** A file's text, or why there is none. */
type FileText = { readonly text: string } | Refusal;

/** Text of a file in UTF-8, or in UTF-16 with a byte-order mark; other encodings are refused with what they look like. */
export async function textOfFile(file: Blob): Promise<FileText> {
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return { problem: { path: '', expected: { code: 'readable-file' }, hint: { code: 'may-have-moved' } } };
  }
  const found = encodingOf(bytes);
  if (found.encoding === undefined) return found;
  return { text: new TextDecoder(found.encoding).decode(bytes) };
}
