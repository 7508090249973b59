import type { Candidate } from './candidate.ts';
import type { BackEnd, FrontEnd, SetChoice } from './choices.ts';
import { isAsGood, scoreSum } from './ranking.ts';
import type { Judged } from './tasks.ts';

/** A set that is no further behind is as good, dB. */
const SAME = 0.05;

/** The best that was received with a part, or an arrangement, that no found set has. */
export interface LeftOut {
  readonly of: 'detector' | 'load' | 'arrangement' | 'former';
  readonly choice: SetChoice;
  readonly figures: Judged['figures'];
  /** How far it is behind the best found set in what it loses least in, dB. */
  readonly behind: number;
  /** A found set is as good in everything, and takes no more effort. */
  readonly isMatched: boolean;
}

/** What a set is told from another by, besides its turns. */
const TRAITS: { readonly [O in LeftOut['of']]: (choice: Pick<SetChoice, 'front' | 'back'>) => string } = {
  detector: ({ back }) => String(back.detector),
  load: ({ back }) => String(back.load),
  arrangement: ({ front }) => front.arrangement,
  former: ({ front }) => String(front.winding.former),
};
const TRAIT_NAMES = Object.keys(TRAITS) as LeftOut['of'][];

/** With each detector, load, arrangement and former the best there is, so that one can say why it is not among the found. */
export function bestWithEach<T extends Candidate>(
  list: readonly T[],
  fronts: readonly FrontEnd[],
  backs: readonly BackEnd[],
): T[] {
  const best = new Map<string, T>();
  for (const one of list)
    for (const of of TRAIT_NAMES) {
      const key = `${of} ${TRAITS[of]({ front: fronts[one.front], back: backs[one.back] })}`;
      const known = best.get(key);
      if (!known || scoreSum(one) > scoreSum(known)) best.set(key, one);
    }
  return [...new Set(best.values())];
}

/** What no shown set has, each with the best set that has it. */
export function leftOutOf(
  judged: readonly Judged[],
  shown: readonly Judged[],
  choiceOf: (one: Candidate) => SetChoice,
): LeftOut[] {
  if (shown.length === 0) return [];
  return TRAIT_NAMES.flatMap((of) => {
    const isShown = new Set(shown.map((one) => TRAITS[of](choiceOf(one))));
    const best = new Map<string, Judged>();
    for (const one of judged) {
      const trait = TRAITS[of](choiceOf(one));
      if (isShown.has(trait)) continue;
      const known = best.get(trait);
      if (!known || scoreSum(one) > scoreSum(known)) best.set(trait, one);
    }
    return [...best.values()].map((one) => ({
      of,
      choice: choiceOf(one),
      figures: one.figures,
      behind: Math.min(...one.figures.map((_, k) => Math.max(...shown.map(({ scores }) => scores[k])) - one.scores[k])),
      isMatched: shown.some(({ scores }) => isAsGood(scores, one.scores, -SAME)),
    }));
  });
}
