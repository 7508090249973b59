import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveInPlace, solveLinear } from './linear-solve.ts';

describe('real linear equations', () => {
  it('solves what it was made from', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        (n, stream) => {
          const next = () => stream.next().value as number;
          // Diagonally heavy, so that every draw has an answer; rows then shuffled end for end to need pivoting.
          const rows = Array.from({ length: n }, (_, i) =>
            Array.from({ length: n }, (_, j) => next() + (i === j ? 2 * n : 0)),
          ).reverse();
          const x = Array.from({ length: n }, next);
          const b = rows.map((row) => row.reduce((sum, a, j) => sum + a * x[j], 0));
          const found = solveLinear(new Float64Array(rows.flat()), new Float64Array(b));
          for (let i = 0; i < n; i++) expect(found[i]).toBeCloseTo(x[i], 10);
        },
      ),
    );
  });

  it('takes several right sides at once and refuses the singular and the ill-fitting', () => {
    const first = new Float64Array([1, 0]);
    const second = new Float64Array([0, 1]);
    solveInPlace(new Float64Array([0, 2, 4, 0]), first, second);
    expect([...first, ...second]).toEqual([0, 0.5, 0.25, 0]);
    expect(() => solveLinear(new Float64Array([1, 2, 2, 4]), new Float64Array(2))).toThrow(RangeError);
    expect(() => solveLinear(new Float64Array(4), new Float64Array(3))).toThrow(RangeError);
    expect(() => solveLinear(new Float64Array([Number.NaN]), new Float64Array(1))).toThrow(RangeError);
  });
});
