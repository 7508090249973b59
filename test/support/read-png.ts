import { inflateSync } from 'node:zlib';

/** Pixels of a PNG of eight bits a channel, red, green, blue and opacity, without interlacing (PNG, 7 and 9). */
export function readPng(file: Uint8Array): {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
} {
  const bytes = Buffer.from(file);
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  if (bytes.toString('latin1', 1, 4) !== 'PNG' || bytes[24] !== 8 || bytes[25] !== 6 || bytes[28] !== 0)
    throw new Error('another sort of PNG');
  const packed: Buffer[] = [];
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at))
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT')
      packed.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  const lines = inflateSync(Buffer.concat(packed));
  const data = new Uint8Array(4 * width * height);
  const row = 4 * width;
  for (let y = 0; y < height; y++) {
    const filter = lines[y * (row + 1)];
    for (let i = 0; i < row; i++) {
      const left = i < 4 ? 0 : data[y * row + i - 4];
      const up = y === 0 ? 0 : data[(y - 1) * row + i];
      const corner = i < 4 || y === 0 ? 0 : data[(y - 1) * row + i - 4];
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter];
      data[y * row + i] = lines[y * (row + 1) + 1 + i] + guess;
    }
  }
  return { width, height, data };
}

function paeth(left: number, up: number, corner: number): number {
  const [a, b, c] = [left, up, corner].map((v) => Math.abs(left + up - corner - v));
  return a <= b && a <= c ? left : b <= c ? up : corner;
}
