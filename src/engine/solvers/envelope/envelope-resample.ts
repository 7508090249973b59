/** Taps on each side of the middle, per step of the ratio. */
const REACH = 10;

/**
 * Bring samples down by a whole ratio through a low-pass filter (Blackman-windowed sinc), block after block. Flat to
 * 0.3 of the new rate within 0.03 dB; a delay of `REACH` new samples. Ratio 1 passes them on as they are.
 */
export class Decimator {
  readonly ratio: number;
  private readonly taps: Float64Array;
  private readonly history: Float64Array;
  constructor(ratio: number, largestBlock: number) {
    this.ratio = ratio;
    const reach = REACH * ratio;
    this.taps = new Float64Array(ratio === 1 ? 1 : 2 * reach + 1);
    let sum = 0;
    for (let i = 0; i < this.taps.length; i++) {
      const x = (i - reach) / ratio;
      const w = 0.42 + 0.5 * Math.cos((Math.PI * x) / REACH) + 0.08 * Math.cos((2 * Math.PI * x) / REACH);
      const y = Math.PI * x * 0.94;
      this.taps[i] = ratio === 1 ? 1 : w * (y === 0 ? 1 : Math.sin(y) / y);
      sum += this.taps[i];
    }
    for (let i = 0; i < this.taps.length; i++) this.taps[i] /= sum;
    this.history = new Float64Array(this.taps.length - 1 + largestBlock);
  }
  /** `count` new samples, a multiple of the ratio. @returns values written to `out`. */
  run(samples: Float64Array, count: number, out: Float32Array | Float64Array): number {
    const { taps, history, ratio } = this;
    const overlap = taps.length - 1;
    for (let i = 0; i < count; i++) history[overlap + i] = samples[i];
    const frames = count / ratio;
    for (let f = 0; f < frames; f++) {
      const start = (f + 1) * ratio - 1;
      let y = 0;
      for (let i = 0; i < taps.length; i++) y += taps[i] * history[start + i];
      out[f] = y;
    }
    history.copyWithin(0, count, count + overlap);
    return frames;
  }
}
