import { airyPrimeZero, airyZero } from '../../numerics/airy-zeros.ts';
import { type Complex, magnitude, reciprocal } from '../../numerics/complex.ts';
import type { Decibels, Metres } from '../../units/quantities.ts';
import type { Surface } from './surface.ts';

/** Steps of the fourth-order rule that carries a root from its limit to the actual ground. */
const STEPS = 48;
/** The sum stops when a term falls below this part of it. */
const TOLERANCE = 1e-7;
const MOST_TERMS = 4000;

/**
 * A root t of the mode equation W'(t) = q W(t), W(t) = Ai(t e^{−2πj/3}).
 * No Airy function is needed: dt/dq = 1/(t − q²) from the s-th zero of Ai' (perfect ground, q = 0), or with u = 1/q
 * dt/du = 1/(1 − u²t) from the s-th zero of Ai (u = 0), whichever limit is nearer. Both limits lie on arg t = −60°.
 * Checked against reference/propagation-checks.json, "roots-1".
 */
export function modeRoot(s: number, q: Complex): Complex {
  const fromQ = q.re * q.re + q.im * q.im < airyZero(s);
  const size = fromQ ? airyPrimeZero(s) : airyZero(s);
  const end = fromQ ? q : reciprocal(q);
  const hr = end.re / STEPS;
  const hi = end.im / STEPS;
  let tr = size / 2;
  let ti = -size * Math.sqrt(0.75);
  // The slope times the step, at parameter (vr, vi) and root (xr, xi); kept in plain numbers, this runs often.
  let sr = 0;
  let si = 0;
  const slope = (vr: number, vi: number, xr: number, xi: number) => {
    const wr = vr * vr - vi * vi;
    const wi = 2 * vr * vi;
    const dr = fromQ ? xr - wr : 1 - (wr * xr - wi * xi);
    const di = fromQ ? xi - wi : -(wr * xi + wi * xr);
    const m = 1 / (dr * dr + di * di);
    sr = (hr * dr + hi * di) * m;
    si = (hi * dr - hr * di) * m;
  };
  for (let n = 0; n < STEPS; n++) {
    const vr = n * hr;
    const vi = n * hi;
    slope(vr, vi, tr, ti);
    const ar = sr;
    const ai = si;
    slope(vr + hr / 2, vi + hi / 2, tr + ar / 2, ti + ai / 2);
    const br = sr;
    const bi = si;
    slope(vr + hr / 2, vi + hi / 2, tr + br / 2, ti + bi / 2);
    const cr = sr;
    const ci = si;
    slope(vr + hr, vi + hi, tr + cr, ti + ci);
    tr += (ar + 2 * (br + cr) + sr) / 6;
    ti += (ai + 2 * (bi + ci) + si) / 6;
  }
  return { re: tr, im: ti };
}

/**
 * Attenuation by the residue series V = √(πx) e^{−jπ/4} Σ exp(−jxt)/(t − q²), x = νθ.
 * @returns a function of distance giving 20·log10|V|; it keeps the roots it has found.
 * Source: van der Pol and Bremmer (1937-39) in Wait's notation.
 */
export function residueSeries(earth: Surface): (distance: Metres) => Decibels {
  const q2re = earth.q.re * earth.q.re - earth.q.im * earth.q.im;
  const q2im = 2 * earth.q.re * earth.q.im;
  // Per root: t and 1/(t − q²), four numbers.
  const roots: number[] = [];
  const root = (n: number): void => {
    const t = modeRoot(n + 1, earth.q);
    const g = reciprocal({ re: t.re - q2re, im: t.im - q2im });
    roots.push(t.re, t.im, g.re, g.im);
  };
  return (distance) => {
    const x = (earth.nu * distance) / earth.a;
    if (roots.length === 0) root(0);
    const slowest = roots[1];
    let re = 0;
    let im = 0;
    for (let n = 0; n < MOST_TERMS; n++) {
      if (roots.length === 4 * n) root(n);
      // The first root's decay is taken out, so that nothing underflows on the far side of the earth.
      const decay = Math.exp(x * (roots[4 * n + 1] - slowest));
      const turn = -x * roots[4 * n];
      const er = decay * Math.cos(turn);
      const ei = decay * Math.sin(turn);
      const gr = roots[4 * n + 2];
      const gi = roots[4 * n + 3];
      re += er * gr - ei * gi;
      im += er * gi + ei * gr;
      if (decay * magnitude({ re: gr, im: gi }) < TOLERANCE * magnitude({ re, im })) break;
    }
    return 20 * Math.log10(Math.sqrt(Math.PI * x) * magnitude({ re, im })) + 20 * Math.LOG10E * x * slowest;
  };
}
