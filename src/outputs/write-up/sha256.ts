import { once } from '../../engine/numerics/lazily.ts';

/** First 32 bits of the fractional parts of the n-th roots of the first primes (FIPS 180-4, section 4.2.2 and 5.3.3). */
function fractions(root: number, count: number): Uint32Array {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) {
    if (Array.from({ length: n - 2 }, (_, i) => i + 2).every((d) => n % d !== 0)) found.push(n ** (1 / root));
  }
  return Uint32Array.from(found, (x) => Math.floor((x - Math.floor(x)) * 2 ** 32));
}

const tables = once(() => ({ begin: fractions(2, 8), rounds: fractions(3, 64) }));
const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/**
 * The SHA-256 digest of bytes (FIPS 180-4), for a content security policy: a browser's own digest is not there in a page
 * opened from a disk, and Node's not in a page.
 * @returns 32 bytes
 */
export function sha256(bytes: Uint8Array): Uint8Array {
  const padded = new Uint8Array(64 * Math.ceil((bytes.length + 9) / 64));
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setBigUint64(padded.length - 8, BigInt(bytes.length) * 8n);
  const { begin, rounds } = tables();
  const state = begin.slice();
  const w = new Uint32Array(64);
  for (let at = 0; at < padded.length; at += 64) {
    for (let i = 0; i < 16; i++) w[i] = view.getUint32(at + 4 * i);
    for (let i = 16; i < 64; i++) {
      const s0 = turned(w[i - 15], 7) ^ turned(w[i - 15], 18) ^ (w[i - 15] >>> 3);
      const s1 = turned(w[i - 2], 17) ^ turned(w[i - 2], 19) ^ (w[i - 2] >>> 10);
      w[i] = w[i - 16] + s0 + w[i - 7] + s1;
    }
    let [a, b, c, d, e, f, g, h] = state;
    for (let i = 0; i < 64; i++) {
      const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
      const t1 = (h + s1 + ((e & f) ^ (~e & g)) + rounds[i] + w[i]) | 0;
      const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
      const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
    }
    for (const [i, x] of [a, b, c, d, e, f, g, h].entries()) state[i] += x;
  }
  const digest = new Uint8Array(32);
  const out = new DataView(digest.buffer);
  for (const [i, x] of state.entries()) out.setUint32(4 * i, x);
  return digest;
}
