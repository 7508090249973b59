import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Candidate } from './candidate.ts';
import type { SetChoice } from './choices.ts';
import type { Judged } from './tasks.ts';
import { hasTrait, leftOutOf } from './why-left-out.ts';

/** Sets with loudness, clearance (dB) and less effort; told apart by their detector alone. */
const judged = (detector: number, scores: readonly number[]) =>
  ({ front: 0, back: detector, scores, figures: [{}, {}], parts: 1 }) as unknown as Judged;
const choiceOf = ({ back }: Candidate) =>
  ({ front: { arrangement: 'direct', winding: { former: 0 } }, back: { detector: back, load: 0 } }) as SetChoice;

const scoresOfSet = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }), fc.constant(-4));

it.each([
  ['is matched by one as good that takes no more effort', [20, 10, -5], 0],
  ['is not by one that is worse in something', [20, 30, -5], undefined],
  ['nor by one that takes more effort', [20, 10, -3], undefined],
] as const)('a detector that is in no found set %s', (_, scores, matchedBy) => {
  const shown = [judged(0, [20, 12, -4]), judged(0, [5, 40, -4])];
  const [out, ...rest] = leftOutOf([...shown, judged(1, scores)], shown, choiceOf);
  expect([out.of, out.trait, out.matchedBy, rest]).toEqual(['detector', '1', matchedBy, []]);
});

it('what is behind in everything is behind one set that is named', () => {
  fc.assert(
    fc.property(fc.array(scoresOfSet, { minLength: 1, maxLength: 5 }), scoresOfSet, (all, scores) => {
      const shown = all.map((one) => judged(0, one));
      const [{ behind, ahead }] = leftOutOf([...shown, judged(1, scores)], shown, choiceOf);
      const leadOf = ([loud, clear]: readonly number[]) => Math.min(loud - scores[0], clear - scores[1]);
      expect(leadOf(all[ahead])).toBe(behind);
      for (const one of all) expect(leadOf(one)).toBeLessThanOrEqual(behind);
    }),
  );
});

it('a tube that carries the second coil of a found set is not left out', () => {
  const pair = ({ back }: Candidate) =>
    ({
      front: { arrangement: 'coupled', winding: { former: back }, second: { former: 1 - back } },
      back: { detector: 0, load: 0 },
    }) as SetChoice;
  const [shown, other] = [judged(0, [20, 12, -4]), judged(1, [10, 12, -4])];
  expect(leftOutOf([shown, other], [shown], pair)).toEqual([]);
  expect(['0', '1', '2'].map((trait) => hasTrait(pair(shown), 'former', trait))).toEqual([true, true, false]);
});
