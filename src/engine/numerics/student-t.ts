import { normalQuantile } from './normal.ts';

/** From here on the series about the normal distribution is exact to 1e-12. */
const MANY = 400;

/**
 * Share of Student's t distribution outside ±t.
 * @param t any number; its sign does not matter. @param degrees whole number of degrees of freedom, at least 1.
 * Source: Abramowitz and Stegun 26.7.3 and 26.7.4.
 */
export function studentTails(t: number, degrees: number): number {
  if (!(degrees >= 1)) throw new RangeError(`expected at least one degree of freedom, got ${degrees}`);
  const angle = Math.atan(Math.abs(t) / Math.sqrt(degrees));
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  const odd = degrees % 2 === 1;
  let term = odd ? c : 1;
  let sum = 0;
  for (let k = odd ? 1 : 0; k < degrees - 1; k += 2) {
    sum += term;
    term *= (c * c * (k + 1)) / (k + 2);
  }
  return Math.max(0, 1 - (odd ? (2 / Math.PI) * (angle + s * sum) : s * sum));
}

/**
 * The t below which a share p of Student's distribution lies, to 1e-10.
 * @param degrees whole number of degrees of freedom, at least 1. @throws RangeError unless 0 < p < 1.
 * Source: the series of Abramowitz and Stegun 26.7.5 about the normal quantile, made exact by Newton's method.
 */
export function studentQuantile(p: number, degrees: number): number {
  if (!(degrees >= 1)) throw new RangeError(`expected at least one degree of freedom, got ${degrees}`);
  if (p < 0.5) return -studentQuantile(1 - p, degrees);
  const z = normalQuantile(p);
  const v = degrees;
  if (v === 1) return Math.tan(Math.PI * (p - 0.5));
  if (v === 2) return (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
  const series =
    z +
    (z ** 3 + z) / (4 * v) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * v ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * v ** 3) +
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / (92160 * v ** 4);
  if (v > MANY) return series;
  // The density at t = 0: a ratio of gamma functions.
  let peak = v % 2 === 1 ? 1 / Math.PI : 0.5;
  for (let k = v % 2 === 1 ? 1 : 2; k < v; k += 2) peak *= (k + 1) / k;
  peak /= Math.sqrt(v);
  let t = series;
  for (let i = 0; i < 6; i++) {
    const density = peak * (1 + (t * t) / v) ** (-(v + 1) / 2);
    t -= (1 - studentTails(t, v) / 2 - p) / density;
  }
  return t;
}
