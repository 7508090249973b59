import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanInverseDistance, mirrored, type Segment } from './segment-potential.ts';

const brute = (first: Segment, second: Segment, a: number, n = 400) => {
  const at = (s: Segment, t: number) => s.from.map((x, i) => x + t * (s.to[i] - x));
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const p = at(first, (i + 0.5) / n);
    for (let j = 0; j < n; j++) {
      const q = at(second, (j + 0.5) / n);
      sum += 1 / Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2], a);
    }
  }
  return sum / (n * n);
};

describe('mean inverse distance of two segments', () => {
  it('is the double integral, parallel, skew and meeting at a corner', () => {
    const base: Segment = { from: [0, 0, 1], to: [0, 0, 3] };
    const others: [Segment, number][] = [
      [{ from: [0.5, 0, 0], to: [0.5, 0, 1] }, 1e-5],
      [{ from: [0, 0, 4], to: [0, 0, 3.5] }, 1e-5],
      [{ from: [1, 1, 0], to: [2, -1, 4] }, 1e-5],
      [{ from: [0, 0, 3], to: [1, 0, 3] }, 3e-3],
      [mirrored(base), 1e-5],
    ];
    for (const [other, tolerance] of others) {
      const got = meanInverseDistance(base, other, 0.01);
      expect(Math.abs(got / brute(base, other, 0.01) - 1)).toBeLessThan(tolerance);
    }
  });

  it('of a wire with itself is 2(ln(2l/a) − 1)/l for a thin wire', () => {
    const wire: Segment = { from: [0, 0, 0], to: [7, 0, 0] };
    expect(meanInverseDistance(wire, wire, 1e-5)).toBeCloseTo((2 * (Math.log(14e5) - 1)) / 7, 5);
  });

  it('does not mind which comes first, nor which way either runs', () => {
    const coordinate = fc.double({ min: -5, max: 5, noNaN: true });
    const point = fc.tuple(coordinate, coordinate, coordinate);
    fc.assert(
      fc.property(point, point, point, point, (p, q, r, s) => {
        const long = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
        const other = Math.hypot(r[0] - s[0], r[1] - s[1], r[2] - s[2]);
        // Of two equally long ones the first is taken as the longer, and the quadrature's error then tells them apart.
        fc.pre(long > 0.1 && other > 0.1 && Math.abs(long - other) > 1e-6);
        const forward = meanInverseDistance({ from: p, to: q }, { from: r, to: s }, 0.001);
        const backward = meanInverseDistance({ from: s, to: r }, { from: q, to: p }, 0.001);
        expect(backward / forward).toBeCloseTo(1, 9);
      }),
    );
  });
});
