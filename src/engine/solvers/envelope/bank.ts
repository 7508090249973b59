import type { Complex } from '../../numerics/complex.ts';
import type { Response, Term } from './network.ts';

/** Most modes followed at once, those that fade out while others fade in included. */
export const MOST_MODES = 24;
/** A mode this far from the frame, rad/s, or that dies within an eighth of a step, is followed without memory. */
const FAR_MODE = 2 * Math.PI * 500e3;
const GONE = 8;

/**
 * The modes near a frame as a filter that steps by h: z₁ = E·z₀ + W0·(β·s₀ + I₀) + W1·(β·s₁ + I₁), exact when source s
 * and current I run straight within a step; the others as a level and a slope. Values glide between two networks.
 */
export interface Bank {
  count: number;
  readonly er: Float64Array;
  readonly ei: Float64Array;
  /** Weights of the current at the start and the end of a step. */
  readonly w0r: Float64Array;
  readonly w0i: Float64Array;
  readonly w1r: Float64Array;
  readonly w1i: Float64Array;
  /** Of the source. */
  readonly n0r: Float64Array;
  readonly n0i: Float64Array;
  readonly n1r: Float64Array;
  readonly n1i: Float64Array;
  readonly cr: Float64Array;
  readonly ci: Float64Array;
  readonly zr: Float64Array;
  readonly zi: Float64Array;
  /** Output × mode, `MOST_MODES` apart. */
  readonly or: Float64Array;
  readonly oi: Float64Array;
  /** Without memory: at the start and the end of a step, by source and by current; junction first, then outputs. */
  readonly s0: Planes;
  readonly s1: Planes;
  readonly i0: Planes;
  readonly i1: Planes;
  /** Voltage taken from the junction by a unit of current at the end of a step. */
  kr: number;
  ki: number;
  /** Glide towards a network; `share` 1 is there. The frame is at angular frequency `frame`. */
  set(share: number, frame: number): void;
  /** Put every mode where a current that has flowed long holds it; with what the last `set` gave. */
  rest(current: number): void;
  /** Begin to glide to a network, from what `share` 1 of the last was. */
  aim(response: Response, frame: number): void;
}
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
interface Slot {
  from: Values;
  to: Values;
}

const zero: Complex = { re: 0, im: 0 };
const silent = (v: Values): Values => ({ ...v, junction: zero, outputs: v.outputs.map(() => zero) });
const between = (a: Complex, b: Complex, t: number): Complex => ({
  re: a.re + t * (b.re - a.re),
  im: a.im + t * (b.im - a.im),
});

/** @param outputs how many outputs every response has. @param audio fold by the audio rule rather than the radio one. */
export function makeBank(outputs: number, h: number, audio: boolean): Bank {
  const array = (n = MOST_MODES) => new Float64Array(n);
  const planes = (): Planes => ({ re: array(outputs + 1), im: array(outputs + 1) });
  let slots: Slot[] = [];
  let foldFrom = array((outputs + 1) * 8);
  let foldTo = array((outputs + 1) * 8);
  const bank: Bank = {
    count: 0,
    er: array(),
    ei: array(),
    w0r: array(),
    w0i: array(),
    w1r: array(),
    w1i: array(),
    n0r: array(),
    n0i: array(),
    n1r: array(),
    n1i: array(),
    cr: array(),
    ci: array(),
    zr: array(),
    zi: array(),
    or: array(MOST_MODES * outputs),
    oi: array(MOST_MODES * outputs),
    s0: planes(),
    s1: planes(),
    i0: planes(),
    i1: planes(),
    kr: 0,
    ki: 0,
    aim(response, frame) {
      // What faded out is let go, the rest keeps its state.
      const kept: { values: Values; zr: number; zi: number }[] = [];
      slots.forEach((s, k) => {
        const heard =
          s.to.junction.re !== 0 || s.to.junction.im !== 0 || s.to.outputs.some((o) => o.re !== 0 || o.im !== 0);
        if (heard) kept.push({ values: s.to, zr: bank.zr[k], zi: bank.zi[k] });
      });
      const { near, fold } = split(response, frame, h, audio, outputs);
      const next: Slot[] = [];
      const states: [number, number][] = [];
      const free = new Set(kept);
      for (const term of near) {
        let best: (typeof kept)[number] | undefined;
        let distance = Number.POSITIVE_INFINITY;
        for (const k of free) {
          const d = Math.hypot(k.values.re - term.re, k.values.im - term.im);
          if (d < distance && k.values.gain === term.gain) {
            distance = d;
            best = k;
          }
        }
        // A mode that moves by more than its own width and 60 kHz is another one.
        if (best && distance < Math.max(4e5, 2 * Math.abs(term.re))) {
          free.delete(best);
          next.push({ from: best.values, to: term });
          states.push([best.zr, best.zi]);
        } else {
          next.push({ from: slots.length === 0 ? term : silent(term), to: term });
          states.push([0, 0]);
        }
      }
      for (const k of free) {
        if (next.length >= MOST_MODES) break;
        next.push({ from: k.values, to: silent(k.values) });
        states.push([k.zr, k.zi]);
      }
      const first = slots.length === 0 && foldTo.every((v) => v === 0);
      slots = next.slice(0, MOST_MODES);
      states.slice(0, MOST_MODES).forEach(([x, y], k) => {
        bank.zr[k] = x;
        bank.zi[k] = y;
      });
      foldFrom = first ? fold : foldTo;
      foldTo = fold;
      bank.count = slots.length;
    },
    rest(current) {
      for (let k = 0; k < slots.length; k++) {
        // (W0 + W1)/(1 − E): all of a step's drive, over and over
        const dr = 1 - bank.er[k];
        const di = -bank.ei[k];
        const d = Math.max(dr * dr + di * di, 1e-30);
        const wr = (bank.w0r[k] + bank.w1r[k]) * current;
        const wi = (bank.w0i[k] + bank.w1i[k]) * current;
        bank.zr[k] = (wr * dr + wi * di) / d;
        bank.zi[k] = (wi * dr - wr * di) / d;
      }
    },
    set(share, frame) {
      let kr = 0;
      let ki = 0;
      for (let k = 0; k < slots.length; k++) {
        const { from, to } = slots[k];
        const lr = from.re + share * (to.re - from.re);
        const li = from.im + share * (to.im - from.im) - frame;
        stepWeights(bank, k, lr, li, h);
        const source = between(from.source, to.source, share);
        const gain = to.gain;
        bank.n0r[k] = bank.w0r[k] * source.re - bank.w0i[k] * source.im;
        bank.n0i[k] = bank.w0r[k] * source.im + bank.w0i[k] * source.re;
        bank.n1r[k] = bank.w1r[k] * source.re - bank.w1i[k] * source.im;
        bank.n1i[k] = bank.w1r[k] * source.im + bank.w1i[k] * source.re;
        bank.w0r[k] *= gain;
        bank.w0i[k] *= gain;
        bank.w1r[k] *= gain;
        bank.w1i[k] *= gain;
        const c = between(from.junction, to.junction, share);
        bank.cr[k] = c.re;
        bank.ci[k] = c.im;
        kr -= c.re * bank.w1r[k] - c.im * bank.w1i[k];
        ki -= c.re * bank.w1i[k] + c.im * bank.w1r[k];
        for (let o = 0; o < outputs; o++) {
          const v = between(from.outputs[o], to.outputs[o], share);
          bank.or[o * MOST_MODES + k] = v.re;
          bank.oi[o * MOST_MODES + k] = v.im;
        }
      }
      for (let o = 0; o <= outputs; o++) {
        const v = (j: number) => foldFrom[8 * o + j] + share * (foldTo[8 * o + j] - foldFrom[8 * o + j]);
        // level·u₁ + slope·(u₁ − u₀)/h
        for (const [plane0, plane1, j] of [
          [bank.s0, bank.s1, 0],
          [bank.i0, bank.i1, 4],
        ] as const) {
          plane1.re[o] = v(j) + v(j + 2) / h;
          plane1.im[o] = v(j + 1) + v(j + 3) / h;
          plane0.re[o] = -v(j + 2) / h;
          plane0.im[o] = -v(j + 3) / h;
        }
      }
      bank.kr = kr - bank.i1.re[0];
      bank.ki = ki - bank.i1.im[0];
    },
  };
  return bank;
}

/** Terms to be followed, and the level and slope of the rest: per row source level, source slope, current level, slope. */
function split({ terms, direct, outputs: outs }: Response, frame: number, h: number, audio: boolean, outputs: number) {
  const fold = new Float64Array((outputs + 1) * 8);
  const near: Term[] = [];
  const straight = (o: number, d: { source: Complex; current: number }) => {
    fold[8 * o] += d.source.re;
    fold[8 * o + 1] += d.source.im;
    fold[8 * o + 4] += d.current;
  };
  straight(0, direct);
  outs.forEach((d, o) => {
    straight(o + 1, d);
  });
  const weight = (t: Term) => {
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
function stepWeights(bank: Bank, k: number, lr: number, li: number, h: number): void {
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
  bank.er[k] = er;
  bank.ei[k] = ei;
  bank.w1r[k] = h * p2r;
  bank.w1i[k] = h * p2i;
  bank.w0r[k] = h * (p1r - p2r);
  bank.w0i[k] = h * (p1i - p2i);
}
