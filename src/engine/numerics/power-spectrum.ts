import { fourierTransform } from './fourier.ts';

/**
 * Mean power by frequency of real samples: Hann windows that overlap by half (Welch, IEEE Transactions on Audio and
 * Electroacoustics 15, 1967), each by a radix-2 transform.
 * @param samples at least one window of them; a last part of a window is left out
 * @param size of a window, a power of 2
 * @returns mean square of the samples in each of size/2 + 1 bins from 0 to half the sample rate; they add up to that of the
 *   whole wave, a constant left out
 * @throws RangeError where there are too few samples, or the size is no power of 2
 */
export function powerSpectrum(samples: ArrayLike<number>, size: number): Float64Array {
  if (!(size >= 4) || (size & (size - 1)) !== 0) throw new RangeError(`a window must be a power of 2, got ${size}`);
  if (samples.length < size) throw new RangeError(`a window of ${size} needs as many samples, got ${samples.length}`);
  const window = Float64Array.from({ length: size }, (_, i) => Math.sin((Math.PI * i) / size) ** 2);
  const whole = window.reduce((sum, w) => sum + w * w, 0) * size;
  const half = size / 2;
  const power = new Float64Array(half + 1);
  let mean = 0;
  for (let i = 0; i < samples.length; i++) mean += samples[i] / samples.length;
  const [re, im] = [new Float64Array(size), new Float64Array(size)];
  let windows = 0;
  for (let from = 0; from + size <= samples.length; from += half) {
    for (let i = 0; i < size; i++) re[i] = window[i] * (samples[from + i] - mean);
    im.fill(0);
    fourierTransform(re, im);
    for (let k = 0; k <= half; k++) {
      const both = k === 0 || k === half ? 1 : 2;
      power[k] += (both * (re[k] * re[k] + im[k] * im[k])) / whole;
    }
    windows++;
  }
  return power.map((sum) => sum / windows);
}
