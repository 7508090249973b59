/** Shares of red and blue in brightness (ITU-R BT.709, item 3.2). */
const RED = 0.2126;
const BLUE = 0.0722;
const GREEN = 1 - RED - BLUE;
/** What eight bits hold: brightness from 16 to 235, differences of colour 112 either side of 128 (items 4.5 and 4.6). */
const BRIGHTNESS = 219 / 255;
const DIFFERENCE = 224 / 255;

/** Bytes of a picture in this form. @param width, height even. */
export const limitedRangeSize = (width: number, height: number): number => (width * height * 3) / 2;

/**
 * A picture as high-definition video has it, in limited range: brightness of every pixel, then the differences of blue and of
 * red, each averaged over two by two pixels ("I420"). A browser left to itself encodes the full range of a canvas, which
 * many players and video editors take for limited: dark parts turn black, and bright ones white.
 * @param rgba four bytes a pixel. @param into `limitedRangeSize` bytes.
 */
export function limitedRange(rgba: Uint8ClampedArray, width: number, height: number, into: Uint8Array): void {
  const n = width * height;
  const half = width / 2;
  for (let y = 0; y < height; y += 2) {
    for (let x = 0; x < width; x += 2) {
      let [r, g, b] = [0, 0, 0];
      for (let k = 0; k < 4; k++) {
        const at = (y + (k >> 1)) * width + x + (k & 1);
        const [red, green, blue] = [rgba[4 * at], rgba[4 * at + 1], rgba[4 * at + 2]];
        into[at] = 16.5 + BRIGHTNESS * (RED * red + GREEN * green + BLUE * blue);
        r += red;
        g += green;
        b += blue;
      }
      const light = RED * r + GREEN * g + BLUE * b;
      const at = n + (y / 2) * half + x / 2;
      into[at] = 128.5 + (DIFFERENCE * (b - light)) / (4 * 2 * (1 - BLUE));
      into[at + n / 4] = 128.5 + (DIFFERENCE * (r - light)) / (4 * 2 * (1 - RED));
    }
  }
}
