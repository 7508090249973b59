// Source of the tabulated values: scipy PchipInterpolator, reference/generators/capacitor_fringe.py.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../reference/capacitors.json' with { type: 'json' };
import { monotoneCurve } from './monotone.ts';

interface Curve {
  x: number[];
  y: number[];
  at: { x: number; y: number; slope: number }[];
}
const entry = (id: string) => reference.entries.find((e) => e.id === id)!.values as unknown as Curve;

describe('monotone curve', () => {
  for (const id of ['monotone_curve', 'monotone_curve_turning'])
    it(`agrees with scipy on ${id}`, () => {
      const { x, y, at } = entry(id);
      const curve = monotoneCurve(x, y);
      const size = Math.max(...y);
      for (const point of at) {
        expect(Math.abs(curve.at(point.x) - point.y)).toBeLessThan(1e-13 * size);
        expect(Math.abs(curve.slopeAt(point.x) - point.slope)).toBeLessThan(1e-12 * size);
      }
    });

  it('passes its points, never overshoots, and its inverse undoes it', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.double({ min: 0.001, max: 5, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (list, t) => {
        const xs: number[] = [];
        const ys: number[] = [];
        list.forEach(([dx, dy], i) => {
          xs.push((xs[i - 1] ?? 0) + dx);
          ys.push((ys[i - 1] ?? 0) + dy);
        });
        const curve = monotoneCurve(xs, ys);
        xs.forEach((x, i) => {
          expect(curve.at(x)).toBeCloseTo(ys[i], 10);
        });
        const x = curve.first + t * (curve.last - curve.first);
        const next = Math.min(curve.last, x + 1e-3);
        expect(curve.at(next)).toBeGreaterThanOrEqual(curve.at(x) - 1e-12);
        const i = Math.max(0, xs.findIndex((v) => v >= x) - 1);
        expect(curve.at(x)).toBeGreaterThanOrEqual(ys[i] - 1e-12);
        expect(curve.at(x)).toBeLessThanOrEqual(ys[i + 1] + 1e-12);
        expect(curve.at(curve.inverse(curve.at(x))!)).toBeCloseTo(curve.at(x), 10);
      }),
    );
  });

  // Found by the check above on 25 November 2026: a value one rounding beyond the last point had no inverse.
  it('stays within its points to the last bit', () => {
    const dx = [0.01, 0.01, 0.08333333333333334];
    const dy = [0.001, 1.4666219512965728, 0.532378048703428];
    const sum = (d: number[]) => d.map((_, i) => d.slice(0, i + 1).reduce((a, b) => a + b));
    const curve = monotoneCurve(sum(dx), sum(dy));
    const x = curve.first + 0.9999999999999996 * (curve.last - curve.first);
    expect(curve.inverse(curve.at(x))).toBeDefined();
  });

  it('refuses what is not a curve', () => {
    expect(() => monotoneCurve([1], [1])).toThrow(RangeError);
    expect(() => monotoneCurve([1, 1], [1, 2])).toThrow(RangeError);
    expect(() => monotoneCurve([1, 2], [Number.NaN, 2])).toThrow(RangeError);
  });
});
