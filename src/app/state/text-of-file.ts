import { encodingOf } from '../../engine/index.ts';

interface Refusal {
  readonly text?: undefined;
  readonly expected: string;
  readonly received: string;
  readonly hint: string;
}

/** A file's text, or why there is none. */
type FileText = { readonly text: string } | Refusal;

export const refusalSentence = ({ expected, received, hint }: Refusal): string =>
  `expected ${expected}${received ? `, received ${received}` : ''} (${hint})`;

/** Text of a file in UTF-8, or in UTF-16 with a byte-order mark; other encodings are refused with what they look like. */
export async function textOfFile(file: Blob): Promise<FileText> {
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return { expected: 'a file that can be read', received: '', hint: 'it may have been moved' };
  }
  const found = encodingOf(bytes);
  if (found.encoding === undefined) return found;
  return { text: new TextDecoder(found.encoding).decode(bytes) };
}
