/** One frame of a GIF, put together with those before it: red, green and blue of each pixel, and how long it is shown. */
export interface GifFrame {
  readonly data: Uint8Array;
  /** s */
  readonly seconds: number;
}

/** Frames of an animated GIF whose frames are all of the whole picture and stay when the next one comes (GIF89a, 18 to 23). */
export function readGif(bytes: Uint8Array): {
  readonly width: number;
  readonly height: number;
  readonly frames: GifFrame[];
} {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [width, height] = [view.getUint16(6, true), view.getUint16(8, true)];
  const tableSize = 2 << (bytes[10] & 7);
  const table = bytes.subarray(13, 13 + 3 * tableSize);
  let at = 13 + 3 * tableSize;
  let seconds = 0;
  let clear = -1;
  const now = new Uint8Array(3 * width * height);
  const frames: GifFrame[] = [];
  const blocks = (): Uint8Array => {
    const parts: number[] = [];
    while (bytes[at] !== 0) {
      parts.push(...bytes.subarray(at + 1, at + 1 + bytes[at]));
      at += bytes[at] + 1;
    }
    at++;
    return Uint8Array.from(parts);
  };
  while (bytes[at] !== 0x3b) {
    if (bytes[at] === 0x21 && bytes[at + 1] === 0xf9) {
      seconds = view.getUint16(at + 4, true) / 100;
      clear = bytes[at + 3] & 1 ? bytes[at + 6] : -1;
      at += 8;
    } else if (bytes[at] === 0x21) {
      at += 2;
      blocks();
    } else {
      if (bytes[at] !== 0x2c || (bytes[at + 9] & 0x80) !== 0) throw new Error('a block that is not expected');
      const bits = bytes[at + 10];
      at += 11;
      unpacked(blocks(), bits, width * height).forEach((index, i) => {
        if (index !== clear) now.set(table.subarray(3 * index, 3 * index + 3), 3 * i);
      });
      frames.push({ data: now.slice(), seconds });
    }
  }
  return { width, height, frames };
}

/** The indices of a frame (GIF89a, appendix F). */
function unpacked(packed: Uint8Array, bits: number, count: number): number[] {
  const [restart, end] = [1 << bits, (1 << bits) + 1];
  const out: number[] = [];
  let words: number[][] = [];
  let size = bits + 1;
  let before: number[] | undefined;
  let [buffer, held] = [0, 0];
  for (const byte of packed) {
    buffer |= byte << held;
    held += 8;
    while (held >= size) {
      const code = buffer & ((1 << size) - 1);
      buffer >>= size;
      held -= size;
      if (code === end || out.length >= count) return out;
      if (code === restart) {
        words = Array.from({ length: end + 1 }, (_, i) => [i]);
        size = bits + 1;
        before = undefined;
        continue;
      }
      const word: number[] = words[code] ?? [...before!, before![0]];
      out.push(...word);
      if (before && words.length < 4096) words.push([...before, word[0]]);
      if (words.length === 1 << size && size < 12) size++;
      before = word;
    }
  }
  return out;
}
