/** Zero crossings of the sinc on each side. */
const REACH = 12;
const PHASES = 256;

/**
 * The same sound at another rate: windowed sinc (Blackman), cut off at 0.9 of the lower half-rate.
 * @throws RangeError for rates that cannot be.
 */
export function resample(samples: Float32Array, from: number, to: number): Float32Array {
  if (!(from > 0 && to > 0)) throw new RangeError(`cannot go from ${from} to ${to} samples a second`);
  if (from === to) return samples;
  const out = new Float32Array(Math.floor((samples.length * to) / from));
  const kernel = sincKernel(Math.min(1, to / from));
  for (let i = 0; i < out.length; i++) out[i] = kernel(samples, (i * from) / to);
  return out;
}

/** Value between samples at a place counted in samples; `cut` is the new half-rate over the old. */
export function sincKernel(cut: number): (samples: Float32Array, at: number) => number {
  const width = 0.94 * cut;
  const reach = Math.ceil(REACH / cut);
  const table = new Float64Array((reach + 1) * PHASES + 2);
  for (let i = 0; i < table.length; i++) {
    const x = i / PHASES;
    if (x >= reach) break;
    const y = Math.PI * width * x;
    const window = 0.42 + 0.5 * Math.cos((Math.PI * x) / reach) + 0.08 * Math.cos((2 * Math.PI * x) / reach);
    table[i] = width * window * (y === 0 ? 1 : Math.sin(y) / y);
  }
  return (samples, at) => {
    const first = Math.max(0, Math.ceil(at - reach));
    const last = Math.min(samples.length - 1, Math.floor(at + reach));
    let sum = 0;
    for (let n = first; n <= last; n++) {
      const place = Math.abs(at - n) * PHASES;
      const j = place | 0;
      sum += samples[n] * (table[j] + (place - j) * (table[j + 1] - table[j]));
    }
    return sum;
  };
}
