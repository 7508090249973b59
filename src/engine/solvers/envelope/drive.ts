/** Samples at the sound's rate. */
export type Sound = Float32Array | Float64Array;

/** A turning carrier: its phasor at the last step, and a step's turn. */
export interface Turning {
  re: number;
  im: number;
  turnRe: number;
  turnIm: number;
}

/**
 * Add to the drive a carrier times a real envelope, `ratio` steps to a sample, from sample `from` to `to`. Between
 * samples runs Catmull and Rom's cubic through the last four, by differences: two samples late. The gain runs straight
 * from `gain` by `slope` a step. `past` holds the three samples before, at `at`, and is brought up to date.
 */
export function addCarrier(
  envelope: Sound,
  from: number,
  to: number,
  ratio: number,
  past: Float64Array,
  at: number,
  carrier: Turning,
  gain: number,
  slope: number,
  outRe: Float64Array,
  outIm: Float64Array,
): void {
  const { turnRe, turnIm } = carrier;
  let x = carrier.re;
  let z = carrier.im;
  let g = gain;
  let n = from * ratio;
  if (ratio === 1) {
    for (let f = from; f < to; f++) {
      const t = x * turnRe - z * turnIm;
      z = x * turnIm + z * turnRe;
      x = t;
      g += slope;
      const e = g * envelope[f];
      outRe[n] += e * x;
      outIm[n] += e * z;
      n++;
    }
  } else {
    let a = past[at];
    let b = past[at + 1];
    let c = past[at + 2];
    const s = 1 / ratio;
    let e = 0;
    let d1 = 0;
    let d2 = 0;
    let d3 = 0;
    let remainder = 0;
    // One loop, not one within another: a number carried out of an inner loop would be put on the heap.
    for (let f = from; n < to * ratio; n++) {
      if (remainder === 0) {
        remainder = ratio;
        const d = envelope[f++];
        // p(t) = b + k1·t + k2·t² + k3·t³ at t = s, 2s … 1
        const k1 = (c - a) * 0.5 * s;
        const k2 = (a - 2.5 * b + 2 * c - 0.5 * d) * s * s;
        const k3 = (1.5 * (b - c) + 0.5 * (d - a)) * s * s * s;
        e = b;
        d1 = k1 + k2 + k3;
        d2 = 2 * k2 + 6 * k3;
        d3 = 6 * k3;
        a = b;
        b = c;
        c = d;
      }
      remainder--;
      e += d1;
      d1 += d2;
      d2 += d3;
      const t = x * turnRe - z * turnIm;
      z = x * turnIm + z * turnRe;
      x = t;
      g += slope;
      const y = g * e;
      outRe[n] += y * x;
      outIm[n] += y * z;
    }
    past[at] = a;
    past[at + 1] = b;
    past[at + 2] = c;
  }
  carrier.re = x;
  carrier.im = z;
}

/**
 * The same cubic at every step, or every `stride`th (counted from the block's start), written to `out`.
 * @param envelope undefined for silence.
 */
export function stretch(
  envelope: Sound | undefined,
  frames: number,
  ratio: number,
  stride: number,
  past: Float64Array,
  at: number,
  out: Float64Array,
): void {
  let a = past[at];
  let b = past[at + 1];
  let c = past[at + 2];
  const s = 1 / ratio;
  for (let f = 0; f < frames; f++) {
    const d = envelope === undefined ? 0 : envelope[f];
    const base = f * ratio;
    if (ratio === 1) {
      out[base] = d;
      continue;
    }
    const k1 = (c - a) * 0.5;
    const k2 = a - 2.5 * b + 2 * c - 0.5 * d;
    const k3 = 1.5 * (b - c) + 0.5 * (d - a);
    const late = base % stride;
    for (let j = late === 0 ? 0 : stride - late; j < ratio; j += stride) {
      const t = (j + 1) * s;
      out[base + j] = b + t * (k1 + t * (k2 + t * k3));
    }
    a = b;
    b = c;
    c = d;
  }
  past[at] = a;
  past[at + 1] = b;
  past[at + 2] = c;
}
