/** A filter of any response, run block after block. */
export class Fir {
  private readonly taps: Float64Array;
  private readonly history: Float64Array;
  private readonly sums: Float64Array;
  /** @param taps how long; @param gainAt size of the response at a frequency. The delay is half the length. */
  constructor(rate: number, gainAt: (frequency: number) => number, largestBlock: number, taps = 576) {
    const half = taps / 2;
    const gains = Float64Array.from({ length: half + 1 }, (_, k) =>
      gainAt(Math.max((k * rate) / taps, rate / taps / 4)),
    );
    this.taps = new Float64Array(taps);
    for (let i = 0; i < taps; i++) {
      const x = i - half;
      let sum = gains[0] / 2 + (gains[half] / 2) * Math.cos(Math.PI * x);
      for (let k = 1; k < half; k++) sum += gains[k] * Math.cos((2 * Math.PI * k * x) / taps);
      // Tapered over the outer half only: a resonance of the phones must not be smeared.
      const edge = Math.max(0, Math.abs(x) / half - 0.5) * 2;
      this.taps[i] = ((2 * sum) / taps) * (0.5 + 0.5 * Math.cos(Math.PI * edge));
    }
    this.history = new Float64Array(taps - 1 + largestBlock);
    this.sums = new Float64Array(largestBlock);
  }
  /** `from` and `to` may be the same. */
  run(from: Float32Array | Float64Array, to: Float32Array | Float64Array, frames: number): void {
    const { taps, history, sums } = this;
    const kept = taps.length - 1;
    for (let i = 0; i < frames; i++) history[kept + i] = from[i];
    // Symmetric about the middle: half the products.
    const half = taps.length / 2;
    for (let i = 0; i < frames; i++) sums[i] = taps[half] * history[half + i];
    // Tap by tap: a sum carried out of an inner loop would be put on the heap at every sample.
    for (let k = 1; k < half; k++) {
      const tap = taps[half + k];
      const before = half - k;
      const after = half + k;
      for (let i = 0; i < frames; i++) sums[i] += tap * (history[before + i] + history[after + i]);
    }
    for (let i = 0; i < frames; i++) to[i] = sums[i];
    history.copyWithin(0, frames, frames + kept);
  }
}
