import { faddeeva } from './faddeeva.ts';

/** Share of a standard normal distribution below x. */
export function normalShare(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const tail = 0.5 * Math.exp(-z * z) * faddeeva({ re: 0, im: z }).re;
  return x > 0 ? 1 - tail : tail;
}

/**
 * The point below which a share p of a standard normal distribution lies, to about 1e-9: the first estimate of Hastings,
 * Approximations for Digital Computers (1955), sheet 67, made exact by Newton's method.
 * @throws RangeError unless 0 < p < 1.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a share must be between 0 and 1, got ${p}`);
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let x = (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let i = 0; i < 3; i++) {
    const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    const step = (normalShare(x) - p) / density;
    x -= step / (1 + (x * step) / 2);
  }
  return x;
}
