import { fourierTransform } from '../../../../engine/index.ts';

/** Power by frequency of a complex wave: radix-2 transform with a Blackman window, dB of the amplitude, lowest first. */
export class Spectrum {
  readonly size: number;
  private readonly re: Float64Array;
  private readonly im: Float64Array;
  private readonly window: Float64Array;
  constructor(size: number) {
    this.size = size;
    this.re = new Float64Array(size);
    this.im = new Float64Array(size);
    this.window = Float64Array.from({ length: size }, (_, i) => {
      const a = (2 * Math.PI * i) / size;
      return (0.42 - 0.5 * Math.cos(a) + 0.08 * Math.cos(2 * a)) / (0.42 * size);
    });
  }
  levels(waveRe: Float64Array, waveIm: Float64Array, out: Float32Array): void {
    const { size: n, re, im, window } = this;
    for (let i = 0; i < n; i++) {
      re[i] = waveRe[i] * window[i];
      im[i] = waveIm[i] * window[i];
    }
    fourierTransform(re, im);
    for (let i = 0; i < n; i++) {
      const k = (i + n / 2) % n;
      out[i] = 20 * Math.log10(Math.max(Math.hypot(re[k], im[k]), 1e-12));
    }
  }
}
