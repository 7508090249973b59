import { monotoneCurve } from '../../../numerics/monotone.ts';

/**
 * Langmuir's two functions of a planar diode whose electrons leave the cathode with a Maxwellian spread: the reduced
 * distance ξ from the potential minimum at reduced potential η above it, on the anode's and on the cathode's side.
 *   (dη/dξ)² = exp(η)·erfc(√η) - 1 + 2√(η/π)   anode side
 *   (dη/dξ)² = exp(η)·(1 + erf(√η)) - 1 - 2√(η/π)   cathode side
 * Source: I. Langmuir, Phys. Rev. 21 (1923) 419.
 */

/** exp(t²)·erfc(t) for t ≥ 0. Source: DLMF 7.6.1 below 2, continued fraction 7.9.1 above. */
export function scaledErfc(t: number): number {
  if (t < 2) {
    // erf(t)·exp(t²) = 2/√π · Σ 2^k t^(2k+1)/(2k+1)!!, all terms positive.
    let term = t;
    let sum = t;
    for (let k = 1; term > 1e-17 * sum; k++) {
      term *= (2 * t * t) / (2 * k + 1);
      sum += term;
    }
    return Math.exp(t * t) - (2 / Math.sqrt(Math.PI)) * sum;
  }
  let f = 0;
  for (let k = 60; k >= 1; k--) f = k / 2 / (t + f);
  return 1 / (Math.sqrt(Math.PI) * (t + f));
}

// dξ/dt with t = √η, smooth down to 0 where it is 2. Below t² = 1e-3 by series: the closed form cancels.
const slope = (h: number, t: number) => (2 * t) / Math.sqrt(h);
const small = (t: number, sign: number) => t * t + (sign * 4 * t ** 3) / (3 * Math.sqrt(Math.PI)) + t ** 4 / 2;
const anodeSlope = (t: number) =>
  t === 0 ? 2 : slope(t * t > 1e-3 ? scaledErfc(t) - 1 + (2 * t) / Math.sqrt(Math.PI) : small(t, -1), t);
const cathodeSlope = (t: number) =>
  t === 0
    ? 2
    : slope(t * t > 1e-3 ? 2 * Math.exp(t * t) - scaledErfc(t) - 1 - (2 * t) / Math.sqrt(Math.PI) : small(t, 1), t);

// Gauss-Legendre, 4 points (DLMF 3.5.T2).
const NODES = [-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526];
const WEIGHTS = [0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538];
function integral(f: (t: number) => number, from: number, to: number): number {
  const half = (to - from) / 2;
  let sum = 0;
  for (let k = 0; k < 4; k++) sum += WEIGHTS[k] * f(from + half * (1 + NODES[k]));
  return sum * half;
}

function table(f: (t: number) => number, ts: readonly number[]): number[] {
  const xi = [0];
  for (let i = 1; i < ts.length; i++) xi.push(xi[i - 1] + integral(f, ts[i - 1], ts[i]));
  return xi;
}

export interface LangmuirFunctions {
  /** ξ on the cathode's side, of η; approaches 2.554. */
  readonly cathodeDistance: (eta: number) => number;
  /** η on the anode's side, of ξ. */
  readonly anodePotential: (xi: number) => number;
}

let cached: LangmuirFunctions | undefined;

/** Both functions, tabulated at the first call (a few milliseconds) and kept. Good to about 1e-5. */
export function langmuirFunctions(): LangmuirFunctions {
  if (cached) return cached;
  const far = Array.from({ length: 801 }, (_, i) => 150 * (i / 800) ** 2);
  // √η against ξ bends gently: straight at the start, as ξ^(2/3) at the end.
  const anode = monotoneCurve(table(anodeSlope, far), far);
  const near = Array.from({ length: 401 }, (_, i) => 6.5 * (i / 400));
  const cathode = monotoneCurve(near, table(cathodeSlope, near));
  cached = {
    cathodeDistance: (eta) => cathode.at(Math.sqrt(eta)),
    anodePotential: (xi) => anode.at(xi) ** 2,
  };
  return cached;
}
