import type { Seconds } from '../../../engine/units/quantities.ts';
import { emptyRange, type Range, type Trace } from '../model/range.ts';

/** Samples in one block of the first level, and blocks in one of the second. */
const BLOCK = 32;

/** A wave kept sample by sample, with the extremes of its blocks and of blocks of blocks, so that any stretch is read fast. */
export interface KeptWave {
  readonly samples: Float32Array;
  /** Least and greatest in turn. */
  readonly blocks: Float32Array;
  readonly wide: Float32Array;
  readonly least: number;
  readonly greatest: number;
}

export function keptWave(samples: Float32Array): KeptWave {
  const blocks = extremes(
    samples.length,
    (i) => samples[i],
    (i) => samples[i],
  );
  const wide = extremes(
    blocks.length / 2,
    (i) => blocks[2 * i],
    (i) => blocks[2 * i + 1],
  );
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < wide.length; i += 2) {
    least = Math.min(least, wide[i]);
    greatest = Math.max(greatest, wide[i + 1]);
  }
  return { samples, blocks, wide, least, greatest };
}

function extremes(n: number, low: (i: number) => number, high: (i: number) => number): Float32Array {
  const out = new Float32Array(2 * Math.ceil(n / BLOCK));
  for (let b = 0; b * BLOCK < n; b++) {
    let min = Number.POSITIVE_INFINITY;
    let max = Number.NEGATIVE_INFINITY;
    const end = Math.min(n, (b + 1) * BLOCK);
    for (let i = b * BLOCK; i < end; i++) {
      if (low(i) < min) min = low(i);
      if (high(i) > max) max = high(i);
    }
    out[2 * b] = min;
    out[2 * b + 1] = max;
  }
  return out;
}

/** Value between samples, along a straight line; the ends hold. @param x in samples. */
function valueAt({ samples }: KeptWave, x: number): number {
  const last = samples.length - 1;
  const i = Math.min(last, Math.max(0, Math.floor(x)));
  const j = Math.min(last, i + 1);
  const t = Math.min(1, Math.max(0, x - i));
  return samples[i] + (samples[j] - samples[i]) * t;
}

/** Least and greatest from sample `a` to sample `b` (not whole numbers), into `out`. Allocates nothing. */
function extentOf(wave: KeptWave, a: number, b: number, out: Range): void {
  const { samples, blocks, wide } = wave;
  const left = valueAt(wave, a);
  const right = valueAt(wave, b);
  let low = Math.min(left, right);
  let high = Math.max(left, right);
  let i = Math.max(0, Math.ceil(a));
  const end = Math.min(samples.length, Math.floor(b) + 1);
  while (i < end) {
    if (i % (BLOCK * BLOCK) === 0 && i + BLOCK * BLOCK <= end) {
      const k = 2 * (i / (BLOCK * BLOCK));
      if (wide[k] < low) low = wide[k];
      if (wide[k + 1] > high) high = wide[k + 1];
      i += BLOCK * BLOCK;
    } else if (i % BLOCK === 0 && i + BLOCK <= end) {
      const k = 2 * (i / BLOCK);
      if (blocks[k] < low) low = blocks[k];
      if (blocks[k + 1] > high) high = blocks[k + 1];
      i += BLOCK;
    } else {
      const v = samples[i++];
      if (v < low) low = v;
      if (v > high) high = v;
    }
  }
  out.min = low;
  out.max = high;
}

/** A kept wave as a function of time. @param interval between samples, s; time counts from the first. */
export const traceOf = (wave: KeptWave, interval: Seconds): Trace => ({
  at: (t) => valueAt(wave, t / interval),
  extent: (a, b, out) => extentOf(wave, a / interval, b / interval, out),
});

/**
 * True least and greatest of each of `count` columns from sample `from` to `to`, neighbours meeting: what is drawn leaves
 * no peak out, however far out one looks.
 */
export function columnsOf(
  wave: KeptWave,
  from: number,
  to: number,
  count: number,
  min: Float64Array,
  max: Float64Array,
): void {
  const step = (to - from) / count;
  for (let c = 0; c < count; c++) {
    extentOf(wave, from + c * step, from + (c + 1) * step, range);
    min[c] = range.min;
    max[c] = range.max;
  }
}

const range = emptyRange();
