import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paretoBest } from './pareto.ts';

const scores = fc.array(fc.oneof(fc.integer({ min: 0, max: 4 }), fc.constant(Number.NEGATIVE_INFINITY)), {
  minLength: 3,
  maxLength: 3,
});
const dominates = (a: readonly number[], b: readonly number[]) =>
  a[0] >= b[0] && a[1] >= b[1] && a[2] >= b[2] && (a[0] > b[0] || a[1] > b[1] || a[2] > b[2]);

describe('the Pareto-best of a list', () => {
  it('are all that none dominates, highest first', () => {
    fc.assert(
      fc.property(fc.array(scores, { maxLength: 30 }), (list) => {
        const all = list.map((one, place) => ({ scores: one, place }));
        const best = paretoBest(all);
        const undominated = all.filter((one) => !all.some((other) => dominates(other.scores, one.scores)));
        expect(new Set(best)).toEqual(new Set(undominated));
        for (let k = 1; k < best.length; k++) expect(best[k].scores[0]).toBeLessThanOrEqual(best[k - 1].scores[0]);
      }),
    );
  });

  it('of one score is the highest, each of its equals in the order of the list', () => {
    const list = [1, 3, 2, 3].map((score, place) => ({ scores: [score], place }));
    expect(paretoBest(list).map(({ place }) => place)).toEqual([1, 3]);
  });
});
