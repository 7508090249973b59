import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodingOf } from './encoding.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, isBig: boolean) => {
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), !isBig);
  return bytes;
};

describe('encodings', () => {
  it('takes UTF-8 exactly where a strict decoder does', () => {
    const strict = (bytes: Uint8Array) => {
      try {
        new TextDecoder('utf-8', { fatal: true }).decode(bytes);
        return true;
      } catch {
        return false;
      }
    };
    const bytes = fc.array(
      fc.constantFrom(0x41, 0x7f, 0x80, 0x9f, 0xa0, 0xbf, 0xc1, 0xc2, 0xe0, 0xed, 0xef, 0xf0, 0xf4, 0xf5, 0xff),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(bytes, (list) => {
        const given = Uint8Array.from([0x7b, ...list]);
        expect(encodingOf(given).encoding === 'utf-8').toBe(strict(given));
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => encodingOf(utf8(`{${text}`)).encoding === 'utf-8'),
    );
  });

  it('reads UTF-16 by its mark, and says what it looks like without', () => {
    const text = '\ufeff{ "name": "Møller" }';
    for (const [isBig, encoding] of [
      [false, 'utf-16le'],
      [true, 'utf-16be'],
    ] as const) {
      expect(encodingOf(utf16(text, isBig))).toEqual({ encoding });
      expect(new TextDecoder(encoding).decode(utf16(text, isBig))).toBe(text.slice(1));
      expect(encodingOf(utf16(text.slice(1), isBig))).toMatchObject({
        problem: { given: { code: 'utf-16-without-mark' } },
      });
    }
  });

  it('names the line of a letter of Windows-1252 or Latin-1, and how to save it', () => {
    const latin = Uint8Array.from([...utf8('name,kHz\nM'), 0xf8, ...utf8('ller,612\n')]);
    expect(encodingOf(latin)).toEqual({
      problem: {
        path: '',
        expected: { code: 'utf-8' },
        given: { code: 'eight-bit-text', byte: 0xf8, line: 2 },
        hint: { code: 'save-as-utf-8' },
      },
    });
    expect(encodingOf(new Uint8Array())).toEqual({ encoding: 'utf-8' });
  });
});
