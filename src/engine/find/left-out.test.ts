import { expect, it } from 'vitest';
import type { Candidate } from './candidate.ts';
import type { SetChoice } from './choices.ts';
import type { Judged } from './tasks.ts';
import { leftOutOf } from './why-left-out.ts';

/** Sets with loudness, clearance (dB) and less effort; told apart by their detector alone. */
const judged = (detector: number, scores: readonly number[]) =>
  ({ front: 0, back: detector, scores, figures: [{}, {}], parts: 1 }) as unknown as Judged;
const choiceOf = ({ back }: Candidate) =>
  ({ front: { arrangement: 'direct', winding: { former: 0 } }, back: { detector: back, load: 0 } }) as SetChoice;

it.each([
  ['is matched by one as good that takes no more effort', [20, 10, -5], true],
  ['is not by one that is worse in something', [20, 30, -5], false],
  ['nor by one that takes more effort', [20, 10, -3], false],
] as const)('a detector that is in no found set %s', (_, scores, isMatched) => {
  const shown = [judged(0, [20, 12, -4]), judged(0, [5, 40, -4])];
  const out = leftOutOf([...shown, judged(1, scores)], shown, choiceOf);
  expect(out).toMatchObject([{ of: 'detector', isMatched }]);
});
