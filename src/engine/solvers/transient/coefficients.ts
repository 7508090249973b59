import type { Complex } from '../../numerics/complex.ts';
import { modesOf } from '../modes/modes.ts';
import type { OutputRow, StateSpace } from '../modes/state-space.ts';

/**
 * One step of the pre-warped trapezoid for every mode z, in a scale where a detector current i adds i itself:
 * z₁ = m·z₀ + β·(u₀ + u₁) + γ·(i₀ + i₁). The rule is exact at the carrier for any step,
 * but for the by-passed carrier on what audio modes hold, which at 32 steps a cycle is 0.3 % less.
 */
export interface StepCoefficients {
  readonly real: number;
  readonly count: number;
  readonly m: Planes;
  /** mode × emf */
  readonly beta: Planes;
  /** mode × detector */
  readonly gamma: Planes;
  /** 1/(−λ) times the drive, for the steady state under constant inputs: mode × emf, mode × detector. */
  readonly restBeta: Planes;
  readonly restGamma: Planes;
  /** Output as Σ Re(c·z) (pairs counted twice already) + emfs + detectors. */
  row(row: OutputRow): StepRow;
}
export interface Planes {
  readonly re: Float64Array;
  readonly im: Float64Array;
}
export interface StepRow {
  readonly c: Planes;
  readonly emfs: Float64Array;
  readonly detectors: Float64Array;
}

/** A mode that dies within this many half-steps is followed without memory. */
const STIFF = 30;
/** A mode this many times slower than the carrier belongs to audio. */
const SLOW = 20;

/** @param w0 carrier, rad/s. @param h step, s. */
export function stepCoefficients(system: StateSpace, w0: number, h: number): StepCoefficients {
  const modes = modesOf(system, [w0, 2 * Math.PI * 1000]);
  const E = system.emfs.length;
  const D = system.detectors.length;
  // Trapezoid with h′ = (2/ω0)·tan(ω0·h/2). Slow modes keep the true h: the warp would run audio 0.3 % fast.
  const warped = Math.tan((w0 * h) / 2) / w0;
  const halfOf = (k: number) => (Math.hypot(modes.re[k], modes.im[k]) < w0 / SLOW ? h / 2 : warped);
  const dynamic: number[] = [];
  const stiff: number[] = [];
  for (let k = 0; k < modes.count; k++) (-modes.re[k] * warped > STIFF ? stiff : dynamic).push(k);
  const real = dynamic.filter((k) => k < modes.real).length;
  const count = dynamic.length;
  const planes = (n: number): Planes => ({ re: new Float64Array(n), im: new Float64Array(n) });
  const m = planes(count);
  const beta = planes(count * E);
  const gamma = planes(count * D);
  const restBeta = planes(count * E);
  const restGamma = planes(count * D);
  const unit: Complex[] = [];
  dynamic.forEach((k, i) => {
    const half = halfOf(k);
    const ur = modes.re[k] * half;
    const ui = modes.im[k] * half;
    const d = (1 - ur) ** 2 + ui * ui;
    m.re[i] = (1 - ur * ur - ui * ui) / d;
    m.im[i] = (2 * ui) / d;
    const wr = (half * (1 - ur)) / d; // half/(1 − μ)
    const wi = (half * ui) / d;
    // A mode that never settles is taken to do so in about ten days.
    const lr = Math.min(modes.re[k], -1e-6);
    const li = modes.im[k];
    const l2 = lr * lr + li * li;
    const store = (to: Planes, rest: Planes, at: number, br: number, bi: number) => {
      to.re[at] = br * wr - bi * wi;
      to.im[at] = br * wi + bi * wr;
      rest.re[at] = -(br * lr + bi * li) / l2;
      rest.im[at] = -(bi * lr - br * li) / l2;
    };
    for (let j = 0; j < E; j++) store(beta, restBeta, i * E + j, modes.emfs.re[k * E + j], modes.emfs.im[k * E + j]);
    for (let j = 0; j < D; j++)
      store(gamma, restGamma, i * D + j, modes.detectors.re[k * D + j], modes.detectors.im[k * D + j]);
  });
  const size = Float64Array.from(gamma.re, (g, i) => Math.hypot(g, gamma.im[i]));
  const most = size.reduce((a, b) => Math.max(a, b), 0);
  dynamic.forEach((_, i) => {
    // Scale by the drive of the detector that moves the mode most; one that none moves keeps its own.
    let best = -1;
    for (let j = 0; j < D; j++) {
      if (!(size[i * D + j] > 1e-14 * most)) gamma.re[i * D + j] = gamma.im[i * D + j] = 0;
      else if (best < 0 || size[i * D + j] > size[i * D + best]) best = j;
    }
    const s = best < 0 ? { re: 1, im: 0 } : { re: gamma.re[i * D + best], im: gamma.im[i * D + best] };
    unit.push(s);
    const s2 = s.re * s.re + s.im * s.im;
    for (const [list, width] of [
      [beta, E],
      [restBeta, E],
      [gamma, D],
      [restGamma, D],
    ] as const) {
      for (let j = i * width; j < (i + 1) * width; j++) {
        const { re, im } = list;
        [re[j], im[j]] = [(re[j] * s.re + im[j] * s.im) / s2, (im[j] * s.re - re[j] * s.im) / s2];
      }
    }
    if (best >= 0) {
      gamma.re[i * D + best] = 1;
      gamma.im[i * D + best] = 0;
    }
  });
  return {
    real,
    count,
    m,
    beta,
    gamma,
    restBeta,
    restGamma,
    row(row) {
      const all = modes.output(row);
      const c = planes(count);
      dynamic.forEach((k, i) => {
        const twice = k < modes.real ? 1 : 2;
        c.re[i] = twice * (all.re[k] * unit[i].re - all.im[k] * unit[i].im);
        c.im[i] = twice * (all.re[k] * unit[i].im + all.im[k] * unit[i].re);
      });
      const emfs = row.emfs.slice();
      const detectors = row.detectors.slice();
      for (const k of stiff) {
        // c·b/(−λ), both of a pair together
        const twice = k < modes.real ? 1 : 2;
        const l2 = modes.re[k] ** 2 + modes.im[k] ** 2;
        const qr = (-twice * (all.re[k] * modes.re[k] + all.im[k] * modes.im[k])) / l2;
        const qi = (-twice * (all.im[k] * modes.re[k] - all.re[k] * modes.im[k])) / l2;
        for (let j = 0; j < E; j++) emfs[j] += qr * modes.emfs.re[k * E + j] - qi * modes.emfs.im[k * E + j];
        for (let j = 0; j < D; j++)
          detectors[j] += qr * modes.detectors.re[k * D + j] - qi * modes.detectors.im[k * D + j];
      }
      return { c, emfs, detectors };
    },
  };
}
