// E24: IEC 60063, looked up (reference/capacitors.json). Fitting a band: the resonance formula itself.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/capacitors.json' with { type: 'json' };
import { fitBand } from './fit.ts';
import { E24, preferredValue } from './preferred.ts';

describe('preferred values', () => {
  it('are IEC 60063', () => {
    expect(E24).toEqual(reference.entries.find((e) => e.id === 'e24')!.values);
  });
  it('nearest is never further than the neighbours, and preferred values are their own', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e-6, noNaN: true }), (C) => {
        const p = preferredValue(C);
        expect(p.below).toBeLessThanOrEqual(C * (1 + 1e-8));
        expect(p.above).toBeGreaterThanOrEqual(C * (1 - 1e-8));
        expect(Math.abs(p.error)).toBeLessThan(0.075);
        expect(preferredValue(p.nearest).error).toBe(0);
      }),
    );
    expect(preferredValue(4.2e-9).nearest).toBe(4.3e-9);
    expect(preferredValue(430, 'E6').nearest).toBe(470);
    expect(() => preferredValue(0)).toThrow(RangeError);
  });
});

describe('trimmer and padder', () => {
  const f = (L: number, C: number) => 1 / (2 * Math.PI * Math.sqrt(L * C));
  it('whatever it calls possible covers the band to 0.1 %, and it never calls a possible one impossible', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60e-12, noNaN: true }),
        fc.double({ min: 100e-12, max: 2e-9, noNaN: true }),
        fc.double({ min: 5e-12, max: 30e-12, noNaN: true }),
        fc.double({ min: 150e-12, max: 600e-12, noNaN: true }),
        (trimmer, padder, min, max) => {
          // Make a band from a known trimmer and padder, then ask for it.
          const L = 200e-6;
          const stray = 10e-12;
          const C = (c: number) => stray + trimmer + (c * padder) / (c + padder);
          const fit = fitBand({ inductance: L, from: f(L, C(max)), to: f(L, C(min)), min, max, stray });
          expect(fit.possible).toBe(true);
          expect(fit.padder! / padder).toBeCloseTo(1, 4);
          expect(fit.trimmer).toBeCloseTo(trimmer, 15);
          expect(fit.covers[0] / f(L, C(max))).toBeCloseTo(1, 5);
          expect(fit.covers[1] / f(L, C(min))).toBeCloseTo(1, 5);
        },
      ),
    );
  });
  it('says cannot, why, and which coil would do better', () => {
    const small = fitBand({ inductance: 180e-6, from: 530e3, to: 1620e3, min: 15e-12, max: 200e-12, stray: 20e-12 });
    expect(small.possible).toBe(false);
    expect(small.cannot).toMatchObject({ why: 'span', span: 185e-12 });
    expect(small.cannot!.needed).toBeGreaterThan(185e-12);
    const large = fitBand({ inductance: 400e-6, from: 530e3, to: 1600e3, min: 15e-12, max: 500e-12, stray: 30e-12 });
    expect(large.possible).toBe(false);
    expect(large.cannot?.why).toBe('too-much');
    expect(large.betterInductance).toBeLessThan(400e-6);
  });
  it('common practice, no source: a trimmer brings the top of the band down, a padder brings the bottom up', () => {
    const wide = { inductance: 200e-6, min: 12e-12, max: 500e-12, stray: 10e-12 };
    const ends = [f(200e-6, 510e-12), f(200e-6, 22e-12)];
    const both = fitBand({ ...wide, from: ends[0] * 1.2, to: ends[1] * 0.8 });
    expect(both.possible).toBe(true);
    expect(both.trimmer).toBeGreaterThan(1e-12);
    expect(both.padder).toBeGreaterThan(1e-12);
    expect(() => fitBand({ ...wide, from: 2e6, to: 1e6 })).toThrow(RangeError);
  });
});
