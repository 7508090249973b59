import type { ContentKind } from '../outputs/words/index.ts';

/** More of a file than this is not looked at. */
export const BYTES_INSPECTED = 1 << 20;

const latin = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));

/** What a file holds, by its content and not by its name. @param bytes the beginning of the file, `BYTES_LOOKED_AT` of it or all. */
export function contentKind(bytes: Uint8Array): ContentKind {
  if (bytes.length === 0) return 'nothing';
  const head = latin(bytes, 0, 12);
  if (/^(RIFF|RF64)....WAVE/s.test(head)) return 'wav';
  if (head.startsWith('%PDF-')) return 'pdf';
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (/^GIF8[79]a/.test(head)) return 'gif';
  if (head.startsWith('ftyp', 4)) return 'mp4';
  if (head.startsWith('\x1a\x45\xdf\xa3')) return 'webm';
  const text = decoded(bytes);
  if (text === undefined) return 'other';
  if (/^\s*[{[]/.test(text)) return /"faintwave-set\//.test(text) ? 'description' : 'json';
  if (/^\s*(<\?xml[^>]*>\s*)?(<!--[\s\S]*?-->\s*)*<svg[\s>]/i.test(text)) return 'svg';
  if (text.startsWith('WEBVTT')) return 'vtt';
  return isTable(text) ? 'csv' : 'text';
}

/** As UTF-8 text; undefined for what is none. A character cut off at the end of what was looked at does not matter. */
function decoded(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
  } catch {
    return undefined;
  }
}

/** Two lines or more, each with the same number of separators outside quotation marks. */
function isTable(text: string): boolean {
  const lines = text.split(/\r?\n/, 4).filter((line) => line !== '');
  if (lines.length < 2) return false;
  return [',', ';', '\t'].some((separator) => {
    const counts = lines.slice(0, 3).map((line) => line.replace(/"[^"]*"/g, '').split(separator).length);
    return counts[0] > 1 && counts[0] === counts[1];
  });
}
