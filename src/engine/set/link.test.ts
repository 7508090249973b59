import { readdirSync, readFileSync } from 'node:fs';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitrarySet } from '../../../test/support/arbitrary-set.ts';
import { fromBase64Url, toBase64Url } from './base64-url.ts';
import { linkOf, textOfLink } from './link.ts';
import { LARGEST_FILE, readText, readValue } from './read.ts';

const folder = new URL('../../../examples/', import.meta.url);
const EXAMPLES = readdirSync(folder).filter((file) => file.endsWith('.json'));
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
const setOf = (text: string) => {
  const read = readText(text);
  if (!read.ok) throw new Error('the example is not read');
  return read;
};
const linkOfBytes = (bytes: Uint8Array): string => `set1=${Buffer.from(bytes).toString('base64url')}`;
const problemOf = (link: string) => {
  const read = textOfLink(link);
  return 'problem' in read ? read.problem : undefined;
};

describe('a link', () => {
  it.each(EXAMPLES)('holds the whole of %s, as other programs unpack it too', (file) => {
    const { set, written } = setOf(textOf(file));
    const link = linkOf(set, written, { exactPosition: true });
    expect(link).toMatch(/^set1=[\w-]+$/);
    expect(textOfLink(link)).toEqual({ text: JSON.stringify(written) });
    const packed = Buffer.from(link.slice('set1='.length), 'base64url');
    expect(inflateRawSync(packed).toString('utf8')).toBe(JSON.stringify(written));
    expect(link.length).toBeLessThan(4000);
  });

  it('is read where another program packed it', () => {
    const text = textOf('slider-set.json');
    expect(textOfLink(linkOfBytes(deflateRawSync(text)))).toEqual({ text });
  });

  it('tells the position to 0.1° unless told otherwise, and nothing else is changed', () => {
    const text = textOf('coast-by-night.json');
    const exact = { latitude: '58.1537°', longitude: '8° 2′ 31″ E' };
    const file = JSON.parse(text) as { place: { position: unknown } };
    file.place.position = exact;
    const { set, written } = setOf(JSON.stringify(file));
    const told = textOfLink(linkOf(set, written));
    const coarse = { latitude: '58.2°', longitude: '8°' };
    expect('text' in told && JSON.parse(told.text)).toEqual({ ...file, place: { ...file.place, position: coarse } });
    expect(textOfLink(linkOf(set, written, { exactPosition: true }))).toEqual({ text: JSON.stringify(file) });
  });

  it('says nothing of a position where the set says nothing', () => {
    const file = JSON.parse(textOf('medium-wave-galena.json')) as { place: { position?: unknown } };
    delete file.place.position;
    const { set, written } = setOf(JSON.stringify(file));
    expect(set.place.position).toBeUndefined();
    expect(linkOf(set, written)).toBe(linkOf(set, written, { exactPosition: true }));
  });

  it('keeps unknown keys and names in any letters', () => {
    fc.assert(
      fc.property(arbitrarySet(0), fc.string({ unit: 'binary', maxLength: 40 }), (file, note) => {
        const read = readValue({ ...file, 'x-note': note });
        fc.pre(read.ok);
        if (!read.ok) return;
        const told = textOfLink(linkOf(read.set, read.written, { exactPosition: true }));
        // Half of a surrogate pair is no text; JSON escapes it, so that it comes back as well.
        expect('text' in told && JSON.parse(told.text)).toEqual(JSON.parse(JSON.stringify(read.written)));
      }),
      { numRuns: 8 },
    );
  });

  it('that was cut anywhere is refused', () => {
    const { set, written } = setOf(textOf('slider-set.json'));
    const link = linkOf(set, written);
    for (let length = 0; length < link.length - 1; length += 7)
      expect(problemOf(link.slice(0, length)), `cut to ${length}`).toMatchObject({ expected: { code: 'set-link' } });
  });

  it('with changed letters is refused or is some text, never an error', () => {
    const { set, written } = setOf(textOf('slider-set.json'));
    const link = linkOf(set, written);
    fc.assert(
      fc.property(fc.nat(link.length - 1), fc.string({ maxLength: 3 }), (at, letters) => {
        const read = textOfLink(link.slice(0, at) + letters + link.slice(at + letters.length));
        expect('text' in read ? typeof read.text : read.problem.expected.code).toMatch(/string|set-link|file.at-most/);
      }),
    );
  });

  it('of a newer form is told from a broken one', () => {
    expect(problemOf('set2=abc')?.hint).toEqual({ code: 'link-of-newer-form' });
    expect(problemOf('set1=!')?.hint).toEqual({ code: 'copy-whole-link' });
    expect(problemOf('glossary')?.hint).toEqual({ code: 'copy-whole-link' });
  });

  it('that unpacks to more than any description is stopped before it does', () => {
    const bomb = linkOfBytes(deflateRawSync(Buffer.alloc(20_000_000, ' '), { level: 9 }));
    expect(bomb.length).toBeLessThan(30_000);
    expect(problemOf(bomb)).toMatchObject({ expected: { code: 'file.at-most', megabytes: LARGEST_FILE / 1e6 } });
    expect(problemOf(`set1=${'A'.repeat(10_000_000)}`)).toMatchObject({ expected: { code: 'file.at-most' } });
  });
});

describe('letters for an address', () => {
  it('are those of RFC 4648, section 10, with the two letters of its section 5', () => {
    const vectors = { '': '', f: 'Zg', fo: 'Zm8', foo: 'Zm9v', foob: 'Zm9vYg', fooba: 'Zm9vYmE', foobar: 'Zm9vYmFy' };
    for (const [plain, letters] of Object.entries(vectors)) {
      expect(toBase64Url(Buffer.from(plain))).toBe(letters);
      expect(Buffer.from(fromBase64Url(letters) ?? []).toString()).toBe(plain);
    }
    expect(toBase64Url(Uint8Array.of(0xff, 0xef, 0xbe))).toBe('_---');
  });

  it('give back any bytes, and are what Node writes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
        expect(toBase64Url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64Url(toBase64Url(bytes))).toEqual(bytes);
      }),
    );
  });
});
