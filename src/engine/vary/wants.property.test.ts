import fc from 'fast-check';
import { expect, it } from 'vitest';
import { follow, wantingSet } from '../../../test/support/wanting-sets.ts';

const MOST_STEPS = 5;
/** Rounding of what is written. */
const HAIR = 1e-6;

it('the first suggestion, followed, makes no want worse, silences no station that is wanted, touches nothing kept, and within 5 steps nothing is left that gains 1 dB', () => {
  fc.assert(
    fc.property(wantingSet, (set) => {
      const { leastGains, silenced, outOfOrder, left, touched } = follow(set, MOST_STEPS, 'tap');
      for (const gain of leastGains) expect(gain).toBeGreaterThanOrEqual(-0.1 - HAIR);
      expect([silenced, outOfOrder]).toEqual([0, 0]);
      expect(left).toBeLessThan(1);
      for (const kept of (set.keep as string[] | undefined) ?? [])
        for (const place of touched) expect(`${place}.`.startsWith(`${kept}.`)).toBe(false);
    }),
    { numRuns: 30, endOnFailure: true },
  );
});
