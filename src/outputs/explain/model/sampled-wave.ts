import type { Range, Trace } from './range.ts';

/** Samples to one block of the pyramid. */
const BLOCK = 8;

/** A sampled wave as plain data: its samples, and the pyramid of their extremes. */
export interface SampledParts {
  readonly samples: Float64Array | Float32Array;
  readonly period: number;
  readonly lows: readonly Float64Array[];
  readonly highs: readonly Float64Array[];
  /** Value before and after, of what happens once; left out, it is repeated for ever. */
  readonly rest?: number;
}

/**
 * A wave known by equally spaced samples of one period, repeated for ever: cubic between samples, and the true least
 * and greatest value over any stretch in a few steps, from a pyramid of extremes.
 * The top of a crest between two samples is found by the parabola through the three samples about it; with 24 samples
 * or more to the fastest cycle it is right within 2e-5 of the amplitude.
 */
export class SampledWave implements Trace, SampledParts {
  readonly samples: Float64Array | Float32Array;
  readonly period: number;
  readonly step: number;
  readonly min: number;
  readonly max: number;
  readonly lows: Float64Array[] = [];
  readonly highs: Float64Array[] = [];
  readonly rest?: number;

  /**
   * @param samples one period, the first at time 0. @param period s.
   * @param options its pyramid, where that was built before; its value before and after, of what happens once.
   */
  constructor(
    samples: Float64Array | Float32Array,
    period: number,
    options: Partial<Pick<SampledParts, 'lows' | 'highs' | 'rest'>> = {},
  ) {
    if (!(samples.length >= 4)) throw new RangeError(`a sampled wave needs at least 4 samples, got ${samples.length}`);
    if (!(period > 0)) throw new RangeError(`a period must be above 0 s, got ${period}`);
    this.samples = samples;
    this.period = period;
    this.step = period / samples.length;
    this.rest = options.rest;
    const { lows, highs } = options;
    if (lows && highs) {
      this.lows = [...lows];
      this.highs = [...highs];
      this.min = lows.at(-1)![0];
      this.max = highs.at(-1)![0];
      return;
    }
    const n = samples.length;
    const blocks = Math.ceil(n / BLOCK);
    let low = new Float64Array(blocks);
    let high = new Float64Array(blocks);
    for (let k = 0; k < blocks; k++) {
      let min = Number.POSITIVE_INFINITY;
      let max = Number.NEGATIVE_INFINITY;
      for (let i = k * BLOCK; i < Math.min(n, (k + 1) * BLOCK); i++) {
        const before = samples[i === 0 ? n - 1 : i - 1];
        const here = samples[i];
        const after = samples[i === n - 1 ? 0 : i + 1];
        const top = vertex(before, here, after);
        if (top > max) max = top;
        if (top < min) min = top;
        if (here > max) max = here;
        if (here < min) min = here;
      }
      low[k] = min;
      high[k] = max;
    }
    for (;;) {
      this.lows.push(low);
      this.highs.push(high);
      if (low.length === 1) break;
      const half = Math.ceil(low.length / 2);
      const nextLow = new Float64Array(half);
      const nextHigh = new Float64Array(half);
      for (let k = 0; k < half; k++) {
        const other = Math.min(2 * k + 1, low.length - 1);
        nextLow[k] = Math.min(low[2 * k], low[other]);
        nextHigh[k] = Math.max(high[2 * k], high[other]);
      }
      low = nextLow;
      high = nextHigh;
    }
    this.min = low[0];
    this.max = high[0];
  }

  at(t: number): number {
    if (this.rest !== undefined && !(t >= 0 && t < this.period)) return this.rest;
    const n = this.samples.length;
    const x = t / this.step;
    return this.cubic(x - Math.floor(x / n) * n);
  }

  extent(a: number, b: number, out: Range): void {
    const { rest, period } = this;
    if (rest === undefined || (a >= 0 && b < period)) {
      this.within(a, b, out);
      return;
    }
    const from = Math.max(a, 0);
    const to = Math.min(b, period * (1 - 1e-12));
    if (to > from) this.within(from, to, out);
    else {
      out.min = rest;
      out.max = rest;
    }
    if (rest < out.min) out.min = rest;
    if (rest > out.max) out.max = rest;
  }

  /** Of a stretch, repeated for ever. */
  private within(a: number, b: number, out: Range): void {
    const n = this.samples.length;
    let x0 = a / this.step;
    let x1 = b / this.step;
    if (!(x1 - x0 < n)) {
      out.min = this.min;
      out.max = this.max;
      return;
    }
    const turns = Math.floor(x0 / n) * n;
    x0 -= turns;
    x1 -= turns;
    const start = this.cubic(x0);
    const end = this.cubic(x1);
    out.min = Math.min(start, end);
    out.max = Math.max(start, end);
    const first = Math.ceil(x0);
    const last = Math.floor(x1);
    if (last - first < 3 * BLOCK) {
      for (let i = first - 1; i <= last + 1; i++) this.sampleInto(i, x0, x1, out);
      return;
    }
    const firstBlock = Math.ceil(first / BLOCK) + 1;
    const lastBlock = Math.floor(last / BLOCK) - 1;
    for (let i = first - 1; i < Math.min(firstBlock * BLOCK, last); i++) this.sampleInto(i, x0, x1, out);
    for (let i = Math.max(lastBlock * BLOCK, first); i <= last + 1; i++) this.sampleInto(i, x0, x1, out);
    if (lastBlock > firstBlock) this.blocksInto(firstBlock, lastBlock, out);
  }

  /** A sample, and the crest beside it, where they lie between x0 and x1. */
  private sampleInto(i: number, x0: number, x1: number, out: Range): void {
    const { samples } = this;
    const n = samples.length;
    const k = i < 0 ? i + n : i % n;
    const before = samples[k === 0 ? n - 1 : k - 1];
    const here = samples[k];
    const after = samples[k === n - 1 ? 0 : k + 1];
    if (i >= x0 && i <= x1) {
      if (here > out.max) out.max = here;
      if (here < out.min) out.min = here;
    }
    if ((here >= before && here > after) || (here <= before && here < after)) {
      const bend = before - 2 * here + after;
      const at = i + (before - after) / (2 * bend);
      if (at < x0 || at > x1) return;
      const top = here - ((before - after) * (before - after)) / (8 * bend);
      if (top > out.max) out.max = top;
      if (top < out.min) out.min = top;
    }
  }

  /** Blocks from p up to q, counted on beyond one period: from the pyramid. The ragged block at the seam counts whole. */
  private blocksInto(p: number, q: number, out: Range): void {
    const n = this.samples.length;
    const all = this.lows[0].length;
    if (n % BLOCK === 0) {
      if (q <= all) this.levelsInto(p, q, out);
      else if (p >= all) this.levelsInto(p - all, q - all, out);
      else {
        this.levelsInto(p, all, out);
        this.levelsInto(0, q - all, out);
      }
      return;
    }
    // Blocks do not fall on samples after the seam: take whole blocks inside each period, single samples between.
    const from = p * BLOCK;
    const to = q * BLOCK;
    for (const shift of [0, n]) {
      const begin = Math.max(from - shift, 0);
      const end = Math.min(to - shift, n);
      if (!(end > begin)) continue;
      const blockBegin = Math.ceil(begin / BLOCK);
      const blockEnd = end === n ? all : Math.floor(end / BLOCK);
      if (blockEnd > blockBegin) this.levelsInto(blockBegin, blockEnd, out);
      for (let i = begin; i < Math.min(blockBegin * BLOCK, end); i++) this.sampleInto(i, begin, end, out);
      for (let i = Math.max(blockEnd * BLOCK, begin); i < end; i++) this.sampleInto(i, begin, end, out);
    }
  }

  private levelsInto(p: number, q: number, out: Range): void {
    for (let level = 0; p < q; level++) {
      if (p & 1) this.take(level, p++, out);
      if (q & 1) this.take(level, --q, out);
      p >>= 1;
      q >>= 1;
    }
  }

  private take(level: number, k: number, out: Range): void {
    const low = this.lows[level][k];
    const high = this.highs[level][k];
    if (low < out.min) out.min = low;
    if (high > out.max) out.max = high;
  }

  /** Cubic through four samples (Catmull and Rom). @param x in samples, from 0. */
  private cubic(x: number): number {
    const { samples } = this;
    const n = samples.length;
    const i = Math.floor(x);
    const f = x - i;
    const k = i % n;
    const a = samples[k === 0 ? n - 1 : k - 1];
    const b = samples[k];
    const c = samples[k + 1 < n ? k + 1 : k + 1 - n];
    const d = samples[k + 2 < n ? k + 2 : k + 2 - n];
    return b + 0.5 * f * (c - a + f * (2 * a - 5 * b + 4 * c - d + f * (3 * (b - c) + d - a)));
  }
}

/** Height of the crest of the parabola through three equally spaced samples, or the middle one where there is none. */
function vertex(before: number, here: number, after: number): number {
  if (!((here >= before && here > after) || (here <= before && here < after))) return here;
  return here - ((before - after) * (before - after)) / (8 * (before - 2 * here + after));
}

/** Moving average over `width` samples of a period, the ends joined; the mean is kept exactly. */
export function movingAverage(samples: Float64Array, width: number): Float64Array {
  const n = samples.length;
  const w = Math.max(1, Math.min(n, Math.round(width)));
  const out = new Float64Array(n);
  const before = w >> 1;
  let sum = 0;
  let first = n - before;
  let next = w - before;
  for (let i = 0; i < w; i++) sum += samples[(first + i) % n];
  if (first === n) first = 0;
  if (next === n) next = 0;
  for (let i = 0; i < n; i++) {
    out[i] = sum / w;
    sum += samples[next] - samples[first];
    if (++next === n) next = 0;
    if (++first === n) first = 0;
  }
  return out;
}
