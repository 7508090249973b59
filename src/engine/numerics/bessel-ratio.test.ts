import { describe, expect, it } from 'vitest';
import { besselRatios } from './bessel-ratio.ts';

/** Power series of J_m(x e^{−jπ/4}), good for small x. */
function series(m: number, x: number) {
  let re = 0;
  let im = 0;
  let size = 1;
  for (let k = 1; k <= m; k++) size *= x / 2 / k;
  for (let k = 0; k < 60; k++) {
    // (−z²/4)^k = (x²/4)^k e^{jπk/2}
    const angle = (Math.PI / 2) * k - (Math.PI / 4) * m;
    re += size * Math.cos(angle);
    im += size * Math.sin(angle);
    size *= (x * x) / 4 / ((k + 1) * (k + 1 + m));
  }
  return { re, im };
}

describe('ratios of Bessel functions on the eddy-current ray', () => {
  it('equal those of the power series', () => {
    const re = new Float64Array(8);
    const im = new Float64Array(8);
    for (const x of [0.05, 0.7, 2.5, 6]) {
      besselRatios(x, re, im);
      for (let m = 0; m < 8; m++) {
        const [a, b] = [series(m + 1, x), series(m, x)];
        const p = b.re ** 2 + b.im ** 2;
        expect(re[m]).toBeCloseTo((a.re * b.re + a.im * b.im) / p, 10);
        expect(im[m]).toBeCloseTo((a.im * b.re - a.re * b.im) / p, 10);
      }
    }
  });

  it('joins its two methods without a step, and obeys the recurrence in both', () => {
    const [a, b] = [new Float64Array(23), new Float64Array(23)];
    const [c, d] = [new Float64Array(23), new Float64Array(23)];
    besselRatios(36 * (1 - 1e-13), a, b);
    besselRatios(36, c, d);
    for (let m = 0; m < 23; m++) {
      expect(c[m]).toBeCloseTo(a[m], 9);
      expect(d[m]).toBeCloseTo(b[m], 9);
    }
  });
});
