import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { typefaceFiles } from './typeface.ts';

let ready: Promise<Uint8Array[]> | undefined;

/** The rasteriser and the typeface, loaded once. */
function loaded(): Promise<Uint8Array[]> {
  ready ??= (async () => {
    const at = createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm');
    await initWasm(readFileSync(at));
    const { regular, bold, italic } = typefaceFiles();
    return [regular, bold, italic];
  })();
  return ready;
}

/** Pixels of a drawing, row by row from the top, four bytes each: red, green, blue, opacity. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

/** Draws SVGs as pixels. */
export interface Rasteriser {
  /** @param width px; default the drawing's own. */
  png(svg: string, width?: number): Uint8Array;
  pixels(svg: string): Pixels;
}

/** The rasteriser with the tool's typeface and no other: text looks the same on every machine. */
export async function rasteriser(): Promise<Rasteriser> {
  const fontBuffers = await loaded();
  const drawn = <T>(svg: string, width: number | undefined, take: (image: ReturnType<Drawing['render']>) => T): T => {
    const drawing = new Resvg(svg, {
      font: { fontBuffers, defaultFontFamily: 'Source Sans 3' },
      ...(width === undefined ? {} : { fitTo: { mode: 'width', value: width } }),
    });
    // Memory of the rasteriser is not collected by itself.
    const image = drawing.render();
    try {
      return take(image);
    } finally {
      image.free();
      drawing.free();
    }
  };
  return {
    png: (svg, width) => drawn(svg, width, (image) => image.asPng()),
    pixels: (svg) => drawn(svg, undefined, ({ width, height, pixels }) => ({ width, height, bytes: pixels })),
  };
}

type Drawing = InstanceType<typeof Resvg>;
