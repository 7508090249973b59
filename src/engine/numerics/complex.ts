/** A complex number. Time factor exp(+jωt) everywhere: an inductor is +jωL. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
const ZERO: Complex = { re: 0, im: 0 };
export const ONE: Complex = { re: 1, im: 0 };

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const subtract = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const scale = (a: Complex, k: number): Complex => ({ re: a.re * k, im: a.im * k });
/** |re + j·im|. Not by Math.hypot, which is ten times slower and only differs beyond 1e±150. */
export const hypotenuse = (re: number, im: number): number => Math.sqrt(re * re + im * im);
export const magnitude = (a: Complex): number => hypotenuse(a.re, a.im);
export const phase = (a: Complex): number => Math.atan2(a.im, a.re);
export const polar = (r: number, angle: number): Complex => ({ re: r * Math.cos(angle), im: r * Math.sin(angle) });

/** a / b by Smith's scaling, safe where |b|² would overflow. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const r = b.im / b.re;
    const d = b.re + b.im * r;
    return { re: (a.re + a.im * r) / d, im: (a.im - a.re * r) / d };
  }
  const r = b.re / b.im;
  const d = b.re * r + b.im;
  return { re: (a.re * r + a.im) / d, im: (a.im * r - a.re) / d };
}
export const reciprocal = (a: Complex): Complex => divide(ONE, a);

/** Principal square root, real part ≥ 0. */
export function squareRoot(a: Complex): Complex {
  const m = magnitude(a);
  if (m === 0) return ZERO;
  const t = Math.sqrt(2 * (m + Math.abs(a.re)));
  return a.re >= 0 ? { re: t / 2, im: a.im / t } : { re: Math.abs(a.im) / t, im: (a.im < 0 ? -t : t) / 2 };
}
