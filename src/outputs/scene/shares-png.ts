import { zlibSync } from 'fflate';
import { toBase64Url } from '../../engine/set/base64-url.ts';
import type { SharesItem } from './scene.ts';

/** Cyclic redundancy check of PNG: the polynomial of ISO 3309, bits reversed. */
const CRC = Uint32Array.from({ length: 256 }, (_, byte) => {
  let c = byte;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function chunk(name: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  for (let i = 0; i < 4; i++) bytes[4 + i] = name.charCodeAt(i);
  bytes.set(data, 8);
  let c = 0xffffffff;
  for (let i = 4; i < 8 + data.length; i++) c = CRC[(c ^ bytes[i]) & 255] ^ (c >>> 8);
  view.setUint32(8 + data.length, c ^ 0xffffffff);
  return bytes;
}

/**
 * Shares of pixels as a PNG of one colour, a byte to a pixel: 256 entries of that colour, each with its share as what is
 * seen of it (PNG, third edition, 11.2.2 and 11.3.1.1).
 * @param colour as #rrggbb. @throws RangeError for a colour that is not known yet, such as one of the page's names.
 */
function sharesPng({ columns, rows, shares }: SharesItem, colour: string): Uint8Array {
  const match = /^#([0-9a-f]{6})$/i.exec(colour);
  if (!match) throw new RangeError(`shares of pixels need a plain colour such as #8a4316, not ${colour}`);
  const value = Number.parseInt(match[1], 16);
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, columns);
  view.setUint32(4, rows);
  header.set([8, 3], 8);
  const lines = new Uint8Array((columns + 1) * rows);
  for (let row = 0; row < rows; row++)
    lines.set(shares.subarray(row * columns, (row + 1) * columns), row * (columns + 1) + 1);
  const colours = Uint8Array.from({ length: 768 }, (_, i) => (value >> (16 - 8 * (i % 3))) & 255);
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('PLTE', colours),
    chunk(
      'tRNS',
      Uint8Array.from({ length: 256 }, (_, i) => i),
    ),
    chunk('IDAT', zlibSync(lines, { level: 1 })),
    chunk('IEND', new Uint8Array(0)),
  ];
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** The same as a data address, whole with its padding. */
export function sharesAddress(item: SharesItem, colour: string): string {
  const letters = toBase64Url(sharesPng(item, colour)).replaceAll('-', '+').replaceAll('_', '/');
  return `data:image/png;base64,${letters}${'='.repeat((4 - (letters.length % 4)) % 4)}`;
}
