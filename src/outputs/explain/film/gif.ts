import { GIFEncoder, nearestColorIndex, quantize, type Rgb } from 'gifenc/dist/gifenc.esm.js';
import type { Seconds } from '../../../engine/units/quantities.ts';
import type { Palette } from '../../scene/palette.ts';

/** Entries of a table of colours; the last stands for what has not changed since the frame before. */
const COLOURS = 256;
const UNCHANGED = COLOURS - 1;
const SAMPLES = 8;
/** A GIF counts time in hundredths of a second. */
const TICK: Seconds = 0.01;

/** A colour as six digits; the page may have others. */
const PLAIN = /^#[0-9a-f]{6}$/i;

/** Time between frames of a GIF so many frames a second fast, as near as it can be told. */
export const gifDelay = (rate: number): Seconds => Math.max(2, Math.round(1 / rate / TICK)) * TICK;

/** Frames spread over a film of so many, from which its colours are taken. */
export const gifSamples = (frames: number): readonly number[] => [
  ...new Set(Array.from({ length: SAMPLES }, (_, i) => Math.floor(((frames - 1) * i) / (SAMPLES - 1)))),
];

/**
 * One table of colours for all frames, so that nothing flickers.
 * @param own the drawing's, kept as they are. @param samples frames of the film, four bytes a pixel.
 */
export function gifColours(own: Palette, samples: readonly Uint8Array[]): Rgb[] {
  const plain = Object.values(own).filter((colour) => PLAIN.test(colour));
  const kept = [...new Set(plain)].map((colour): Rgb => {
    const value = Number.parseInt(colour.slice(1), 16);
    return [value >> 16, (value >> 8) & 255, value & 255];
  });
  const all = new Uint8Array(samples.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const sample of samples) {
    all.set(sample, at);
    at += sample.length;
  }
  return [...kept, ...quantize(all, UNCHANGED - kept.length)];
}

/** An animated picture, written frame by frame; it begins again at its end, for ever. */
export class GifWriter {
  private readonly gif = GIFEncoder();
  private readonly indices = new Map<number, number>();
  private readonly width: number;
  private readonly height: number;
  private readonly delay: Seconds;
  private readonly colours: readonly Rgb[];
  private last: Uint8Array | undefined;
  private waiting: { readonly pixels: Uint8Array; readonly isFirst: boolean; frames: number } | undefined;

  /** @param delay between frames, from `gifDelay`. @param colours from `gifColours`. */
  constructor(size: { readonly width: number; readonly height: number }, delay: Seconds, colours: readonly Rgb[]) {
    this.width = size.width;
    this.height = size.height;
    this.delay = delay;
    this.colours = colours;
  }

  /** The next frame. @param pixels four bytes each, row by row. */
  add(pixels: Uint8Array): void {
    const n = this.width * this.height;
    const now = new Uint8Array(n);
    for (let i = 0; i < n; i++) now[i] = this.indexOf(pixels[4 * i], pixels[4 * i + 1], pixels[4 * i + 2]);
    const { last } = this;
    const changed = last ? now.map((index, i) => (index === last[i] ? UNCHANGED : index)) : now;
    this.last = now;
    if (this.waiting && changed.every((index) => index === UNCHANGED)) {
      this.waiting.frames++;
      return;
    }
    this.flush();
    this.waiting = { pixels: changed, isFirst: last === undefined, frames: 1 };
  }

  /** @returns bytes of the file. */
  finish(): Uint8Array {
    this.flush();
    this.gif.finish();
    return this.gif.bytes();
  }

  private flush(): void {
    const { waiting, width, height } = this;
    if (!waiting) return;
    const table = [...this.colours];
    while (table.length < COLOURS) table.push([0, 0, 0]);
    this.gif.writeFrame(waiting.pixels, width, height, {
      ...(waiting.isFirst ? { palette: table, repeat: 0 } : { transparent: true, transparentIndex: UNCHANGED }),
      delay: Math.round(waiting.frames * this.delay * 1000),
      dispose: 1,
    });
    this.waiting = undefined;
  }

  private indexOf(red: number, green: number, blue: number): number {
    const key = (red << 16) | (green << 8) | blue;
    let index = this.indices.get(key);
    if (index === undefined) {
      index = nearestColorIndex(this.colours, [red, green, blue]);
      this.indices.set(key, index);
    }
    return index;
  }
}
