import type { Complex } from '../../numerics/complex.ts';
import type { Response, ResponseTerm } from './network.ts';

/** Most modes followed at once, those that fade out while others fade in included. */
export const MOST_MODES = 24;
/** A mode this far from the frame, rad/s, or that dies within an eighth of a step, is followed without memory. */
const FAR_MODE = 2 * Math.PI * 500e3;
const GONE = 8;

/** Numbers of one mode next to one another in `Bank.modes`, complex each: one place in memory for all a step needs. */
export const MODE = {
  /** E. */
  e: 0,
  /** Weights of the current at the start and the end of a step. */
  w0: 2,
  w1: 4,
  /** Of the source. */
  n0: 6,
  n1: 8,
  /** To the junction. */
  c: 10,
  size: 12,
} as const;
const { e: E, w0: W0, w1: W1, n0: N0, n1: N1, c: C, size: SIZE } = MODE;

interface Planes {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

interface Values {
  re: number;
  im: number;
  gain: number;
  source: Complex;
  junction: Complex;
  outputs: readonly Complex[];
}
/** Where a mode glides from and to. */
interface Slot {
  from: Values;
  to: Values;
}

const zero: Complex = { re: 0, im: 0 };
const silent = (v: Values): Values => ({ ...v, junction: zero, outputs: v.outputs.map(() => zero) });
const isHeard = ({ to }: Slot): boolean =>
  to.junction.re !== 0 || to.junction.im !== 0 || to.outputs.some((o) => o.re !== 0 || o.im !== 0);
const between = (a: Complex, b: Complex, t: number): Complex => ({
  re: a.re + t * (b.re - a.re),
  im: a.im + t * (b.im - a.im),
});

/** A mode as it is taken over into another network, with its state. */
interface Kept {
  readonly slot: Slot;
  readonly zr: number;
  readonly zi: number;
}

/**
 * The modes near a frame as a filter that steps by h: z₁ = E·z₀ + W0·(β·s₀ + I₀) + W1·(β·s₁ + I₁), exact when source s
 * and current I run straight within a step; the others as a level and a slope. Values glide between two networks.
 */
export class Bank {
  count = 0;
  readonly modes: Float64Array = new Float64Array(MOST_MODES * SIZE);
  readonly zr: Float64Array = new Float64Array(MOST_MODES);
  readonly zi: Float64Array = new Float64Array(MOST_MODES);
  /** Output × mode, `MOST_MODES` apart. */
  readonly or: Float64Array;
  readonly oi: Float64Array;
  /** Without memory: at the start and the end of a step, by source and by current; junction first, then outputs. */
  readonly s0: Planes;
  readonly s1: Planes;
  readonly i0: Planes;
  readonly i1: Planes;
  /** Voltage taken from the junction by a unit of current at the end of a step. */
  kr = 0;
  ki = 0;

  private readonly outputs: number;
  private readonly h: number;
  private readonly audio: boolean;
  private slots: Slot[] = [];
  private foldFrom: Float64Array;
  private foldTo: Float64Array;

  /** @param outputs how many outputs every response has. @param audio fold by the audio rule rather than the radio one. */
  constructor(outputs: number, h: number, audio: boolean) {
    this.outputs = outputs;
    this.h = h;
    this.audio = audio;
    this.or = new Float64Array(MOST_MODES * outputs);
    this.oi = new Float64Array(MOST_MODES * outputs);
    const planes = (): Planes => ({ re: new Float64Array(outputs + 1), im: new Float64Array(outputs + 1) });
    this.s0 = planes();
    this.s1 = planes();
    this.i0 = planes();
    this.i1 = planes();
    this.foldFrom = new Float64Array((outputs + 1) * 8);
    this.foldTo = new Float64Array((outputs + 1) * 8);
  }

  /** Begin to glide to a network, from what `share` 1 of the last was. */
  aim(response: Response, frame: number): void {
    const { near, fold } = split(response, frame, this.h, this.audio, this.outputs);
    const isFirst = this.slots.length === 0 && this.foldTo.every((v) => v === 0);
    const next = this.passOn(near).slice(0, MOST_MODES);
    this.slots = next.map(({ slot }) => slot);
    next.forEach(({ zr, zi }, k) => {
      this.zr[k] = zr;
      this.zi[k] = zi;
    });
    this.foldFrom = isFirst ? fold : this.foldTo;
    this.foldTo = fold;
    this.count = next.length;
  }

  /** Every mode that is heard is taken for the nearest of the new ones, or fades out. */
  private passOn(near: readonly ResponseTerm[]): Kept[] {
    const free = new Set<Kept>();
    this.slots.forEach((slot, k) => {
      if (isHeard(slot)) free.add({ slot, zr: this.zr[k], zi: this.zi[k] });
    });
    const next = near.map((term): Kept => {
      let best: Kept | undefined;
      let distance = Number.POSITIVE_INFINITY;
      for (const candidate of free) {
        const { to } = candidate.slot;
        const d = Math.hypot(to.re - term.re, to.im - term.im);
        if (!(d < distance && to.gain === term.gain)) continue;
        distance = d;
        best = candidate;
      }
      // A mode that moves by more than its own width and 60 kHz is another one.
      if (!best || !(distance < Math.max(4e5, 2 * Math.abs(term.re))))
        return { slot: { from: this.slots.length === 0 ? term : silent(term), to: term }, zr: 0, zi: 0 };
      free.delete(best);
      return { ...best, slot: { from: best.slot.to, to: term } };
    });
    const fading = [...free].map(({ slot: { to }, zr, zi }) => ({ slot: { from: to, to: silent(to) }, zr, zi }));
    return [...next, ...fading];
  }

  /** Put every mode where a current that has flowed long holds it; with what the last `set` gave. */
  rest(current: number): void {
    const { modes } = this;
    for (let k = 0, m = 0; k < this.count; k++, m += SIZE) {
      // (W0 + W1)/(1 − E): all of a step's drive, over and over
      const dr = 1 - modes[m + E];
      const di = -modes[m + E + 1];
      const d = Math.max(dr * dr + di * di, 1e-30);
      const wr = (modes[m + W0] + modes[m + W1]) * current;
      const wi = (modes[m + W0 + 1] + modes[m + W1 + 1]) * current;
      this.zr[k] = (wr * dr + wi * di) / d;
      this.zi[k] = (wi * dr - wr * di) / d;
    }
  }

  /** Glide towards the network aimed at; `share` 1 is there. The frame is at angular frequency `frame`. */
  set(share: number, frame: number): void {
    this.kr = 0;
    this.ki = 0;
    for (let k = 0; k < this.count; k++) this.setMode(k, share, frame);
    this.setFolded(share);
    this.kr -= this.i1.re[0];
    this.ki -= this.i1.im[0];
  }

  private setMode(k: number, share: number, frame: number): void {
    const { modes, outputs } = this;
    const { from, to } = this.slots[k];
    const m = k * SIZE;
    const lr = from.re + share * (to.re - from.re);
    const li = from.im + share * (to.im - from.im) - frame;
    stepWeights(modes, m, lr, li, this.h);
    const source = between(from.source, to.source, share);
    const { gain } = to;
    for (const [n, w] of [
      [N0, W0],
      [N1, W1],
    ]) {
      const [wr, wi] = [modes[m + w], modes[m + w + 1]];
      modes[m + n] = wr * source.re - wi * source.im;
      modes[m + n + 1] = wr * source.im + wi * source.re;
      modes[m + w] = wr * gain;
      modes[m + w + 1] = wi * gain;
    }
    const c = between(from.junction, to.junction, share);
    modes[m + C] = c.re;
    modes[m + C + 1] = c.im;
    const [wr, wi] = [modes[m + W1], modes[m + W1 + 1]];
    this.kr -= c.re * wr - c.im * wi;
    this.ki -= c.re * wi + c.im * wr;
    for (let o = 0; o < outputs; o++) {
      const v = between(from.outputs[o], to.outputs[o], share);
      this.or[o * MOST_MODES + k] = v.re;
      this.oi[o * MOST_MODES + k] = v.im;
    }
  }

  private setFolded(share: number): void {
    const { h, foldFrom, foldTo } = this;
    const rows = [
      [this.s0, this.s1, 0],
      [this.i0, this.i1, 4],
    ] as const;
    for (let o = 0; o <= this.outputs; o++) {
      const v = (j: number) => foldFrom[8 * o + j] + share * (foldTo[8 * o + j] - foldFrom[8 * o + j]);
      // level·u₁ + slope·(u₁ − u₀)/h
      for (const [plane0, plane1, j] of rows) {
        plane1.re[o] = v(j) + v(j + 2) / h;
        plane1.im[o] = v(j + 1) + v(j + 3) / h;
        plane0.re[o] = -v(j + 2) / h;
        plane0.im[o] = -v(j + 3) / h;
      }
    }
  }
}

/** Terms to be followed, and the level and slope of the rest: per row source level, source slope, current level, slope. */
function split({ terms, direct, outputs: outs }: Response, frame: number, h: number, audio: boolean, outputs: number) {
  const fold = new Float64Array((outputs + 1) * 8);
  const near: ResponseTerm[] = [];
  const straight = (o: number, d: { source: Complex; current: number }) => {
    fold[8 * o] += d.source.re;
    fold[8 * o + 1] += d.source.im;
    fold[8 * o + 4] += d.current;
  };
  straight(0, direct);
  outs.forEach((d, o) => {
    straight(o + 1, d);
  });
  const weight = (t: ResponseTerm) => {
    const b = Math.max(t.gain, Math.hypot(t.source.re, t.source.im));
    return b * Math.max(Math.hypot(t.junction.re, t.junction.im), ...t.outputs.map((c) => Math.hypot(c.re, c.im)));
  };
  const most = Math.max(...terms.map(weight), 1e-300);
  const ranked = terms
    .filter((t) => weight(t) > 1e-13 * most)
    .map((t) => ({ t, off: t.im - frame }))
    .sort((a, b) => Math.abs(a.off) - Math.abs(b.off));
  for (const { t, off } of ranked) {
    const far = audio ? Math.abs(off) * h > Math.PI : Math.abs(off) > FAR_MODE;
    if (-t.re * h <= GONE && !far && near.length < MOST_MODES / 2) {
      near.push(t);
      continue;
    }
    // c/(s − μ) ≈ −c/μ − c·s/μ²
    const m2 = t.re * t.re + off * off;
    const ir = t.re / m2;
    const ii = -off / m2;
    [t.junction, ...t.outputs].forEach((c, o) => {
      const lr = -(c.re * ir - c.im * ii);
      const li = -(c.re * ii + c.im * ir);
      const sr = lr * ir - li * ii;
      const si = lr * ii + li * ir;
      fold[8 * o] += lr * t.source.re - li * t.source.im;
      fold[8 * o + 1] += lr * t.source.im + li * t.source.re;
      fold[8 * o + 2] += sr * t.source.re - si * t.source.im;
      fold[8 * o + 3] += sr * t.source.im + si * t.source.re;
      fold[8 * o + 4] += t.gain * lr;
      fold[8 * o + 5] += t.gain * li;
      fold[8 * o + 6] += t.gain * sr;
      fold[8 * o + 7] += t.gain * si;
    });
  }
  return { near, fold };
}

/** E = e^x, W0 = h·(φ1 − φ2), W1 = h·φ2 at x = λh, φ1 = (eˣ − 1)/x, φ2 = (eˣ − 1 − x)/x². */
function stepWeights(modes: Float64Array, m: number, lr: number, li: number, h: number): void {
  const xr = lr * h;
  const xi = li * h;
  const size = Math.exp(xr);
  const er = size * Math.cos(xi);
  const ei = size * Math.sin(xi);
  let p1r: number;
  let p1i: number;
  let p2r: number;
  let p2i: number;
  const x2 = xr * xr + xi * xi;
  if (x2 < 0.04) {
    // φ2 = ½ + x/6 + x²/24 + …, φ1 = 1 + x·φ2
    p2r = 1 / 40320;
    p2i = 0;
    for (const f of [1 / 5040, 1 / 720, 1 / 120, 1 / 24, 1 / 6, 1 / 2]) {
      const t = p2r * xr - p2i * xi + f;
      p2i = p2r * xi + p2i * xr;
      p2r = t;
    }
    p1r = 1 + p2r * xr - p2i * xi;
    p1i = p2r * xi + p2i * xr;
  } else {
    const ar = er - 1;
    p1r = (ar * xr + ei * xi) / x2;
    p1i = (ei * xr - ar * xi) / x2;
    const br = p1r - 1;
    p2r = (br * xr + p1i * xi) / x2;
    p2i = (p1i * xr - br * xi) / x2;
  }
  modes[m + E] = er;
  modes[m + E + 1] = ei;
  modes[m + W1] = h * p2r;
  modes[m + W1 + 1] = h * p2i;
  modes[m + W0] = h * (p1r - p2r);
  modes[m + W0 + 1] = h * (p1i - p2i);
}
