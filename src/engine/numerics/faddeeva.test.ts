import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airyPrimeZero, airyZero } from './airy-zeros.ts';
import { faddeeva } from './faddeeva.ts';

const near = (a: { re: number; im: number }, b: { re: number; im: number }, relative: number) =>
  expect(Math.hypot(a.re - b.re, a.im - b.im)).toBeLessThanOrEqual(relative * Math.hypot(b.re, b.im));

describe('Faddeeva function', () => {
  // Computed with scipy.special.wofz 1.x (S. G. Johnson's Faddeeva package), an independent implementation.
  it.each([
    [0, 0, 1, 0],
    [1, 1, 0.3047442052569126, 0.2082189382028316],
    [6.139960247678931, 0, 4.241151183016084e-17, 0.09315890052089176],
    [-0.4, 1e-6, 0.8521429855098045, -0.40615204463284416],
    [7.749157710901208, 0.0030685664225706586, 0.00002958249876799933, 0.07342859183061898],
  ])('w(%d + %dj)', (re, im, wr, wi) => {
    near(faddeeva({ re, im }), { re: wr, im: wi }, 1e-13);
  });

  it('is the scaled error function on the imaginary axis and Gaussian plus Dawson on the real one', () => {
    // erfc(1) = 0.15729920705028513 (DLMF table 7.23 gives 0.1572992), w(j) = e·erfc(1).
    expect(faddeeva({ re: 0, im: 1 }).re).toBeCloseTo(Math.E * 0.15729920705028513, 14);
    expect(faddeeva({ re: 2, im: 0 }).re).toBeCloseTo(Math.exp(-4), 14);
  });

  it('obeys its symmetries and w′ = −2zw + 2j/√π everywhere near the axes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: -2, max: 9, noNaN: true }),
        (re, im) => {
          const w = faddeeva({ re, im });
          const mirrored = faddeeva({ re: -re, im });
          near({ re: mirrored.re, im: -mirrored.im }, w, 1e-12);
          const h = 1e-4;
          const up = faddeeva({ re: re + h, im });
          const down = faddeeva({ re: re - h, im });
          const slope = { re: (up.re - down.re) / (2 * h), im: (up.im - down.im) / (2 * h) };
          const law = {
            re: -2 * (re * w.re - im * w.im),
            im: -2 * (re * w.im + im * w.re) + 2 / Math.sqrt(Math.PI),
          };
          const scale = 1 + Math.hypot(w.re, w.im) * (1 + re * re + im * im) ** 1.5;
          expect(Math.hypot(slope.re - law.re, slope.im - law.im)).toBeLessThan(1e-6 * scale);
        },
      ),
    );
  });
});

describe('zeros of the Airy functions', () => {
  it('agrees with DLMF table 9.9.1 and joins its expansion smoothly', () => {
    expect(airyZero(1)).toBeCloseTo(2.3381074105, 10);
    expect(airyPrimeZero(1)).toBeCloseTo(1.0187929716, 10);
    // scipy.special.ai_zeros(60)
    expect(airyZero(11)).toBeCloseTo(13.691489035210719, 10);
    expect(airyPrimeZero(11)).toBeCloseTo(13.262218961665212, 10);
  });
});
