import type { Given, Problem } from '../fields/problem.ts';

/** How the bytes of a text file are to be decoded, or why they cannot be. */
export type Encoding =
  | { readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' }
  | {
      readonly encoding?: undefined;
      /** Where it looks like something else: what, and what to do. */
      readonly problem: Problem;
    };

/** Bytes looked at for the zeros that UTF-16 has. */
const SAMPLE = 2000;

/**
 * Character encoding of a text file: UTF-8, or UTF-16 where its byte-order mark says so. Anything else is refused with
 * what it looks like, never decoded by guesswork.
 * @param bytes the first bytes of the file, or all of it
 * @returns the encoding, or what the file seems to be
 */
export function encodingOf(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { encoding: 'utf-16le' };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { encoding: 'utf-16be' };
  const refuse = (given: Given): Encoding => ({
    problem: { path: '', expected: { code: 'utf-8' }, given, hint: { code: 'save-as-utf-8' } },
  });
  const length = Math.min(bytes.length, SAMPLE);
  const zeros = [0, 0];
  for (let i = 0; i < length; i++) if (bytes[i] === 0) zeros[i % 2]++;
  if (Math.max(...zeros) > 0.2 * length && Math.min(...zeros) < 0.05 * length)
    return refuse({ code: 'utf-16-without-mark' });
  const at = firstWrong(bytes);
  if (at < 0) return { encoding: 'utf-8' };
  let line = 1;
  for (let i = 0; i < at; i++) if (bytes[i] === 0x0a) line++;
  return refuse({ code: 'eight-bit-text', byte: bytes[at], line });
}

/** Where bytes cease to be UTF-8 (RFC 3629, section 4), or −1. */
function firstWrong(bytes: Uint8Array): number {
  for (let i = 0; i < bytes.length; ) {
    const first = bytes[i];
    const more = first < 0x80 ? 0 : first < 0xc2 ? -1 : first < 0xe0 ? 1 : first < 0xf0 ? 2 : first < 0xf5 ? 3 : -1;
    if (more < 0) return i;
    for (let k = 1; k <= more; k++) {
      const next = bytes[i + k];
      const low = k > 1 ? 0x80 : first === 0xe0 ? 0xa0 : first === 0xf0 ? 0x90 : 0x80;
      const high = k > 1 ? 0xbf : first === 0xed ? 0x9f : first === 0xf4 ? 0x8f : 0xbf;
      if (!(next >= low && next <= high)) return i;
    }
    i += 1 + more;
  }
  return -1;
}
