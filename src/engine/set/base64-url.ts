const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES = new Map([...LETTERS].map((letter, value) => [letter, value]));

/** Bytes in letters that an address may have, without padding (RFC 4648, section 5). */
export function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const three = (bytes[i] << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const count = Math.min(4, Math.ceil(((bytes.length - i) * 8) / 6));
    for (let k = 0; k < count; k++) text += LETTERS[(three >> (18 - 6 * k)) & 63];
  }
  return text;
}

/** The bytes of such letters, or undefined where one of them is none. */
export function fromBase64Url(text: string): Uint8Array | undefined {
  const bytes = new Uint8Array(Math.floor((text.length * 6) / 8));
  let bits = 0;
  let buffer = 0;
  let at = 0;
  for (const letter of text) {
    const value = VALUES.get(letter);
    if (value === undefined) return undefined;
    buffer = ((buffer << 6) | value) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (buffer >> bits) & 0xff;
  }
  return bytes;
}
