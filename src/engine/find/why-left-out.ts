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
  /** Of the box's list, its place; of an arrangement, its kind. */
  readonly trait: string;
  /** How far one found set is ahead of it in every want, dB; none is where this is not above 0. */
  readonly behind: number;
  /** The place of that set among the found. */
  readonly ahead: number;
  /** The place of a found set that is as good in everything and takes no more effort; left out where there is none. */
  readonly matchedBy?: number;
}

/** What a set is told from another by, besides its turns. */
const TRAITS: { readonly [O in LeftOut['of']]: (choice: Pick<SetChoice, 'front' | 'back'>) => readonly string[] } = {
  detector: ({ back }) => [String(back.detector)],
  load: ({ back }) => [String(back.load)],
  arrangement: ({ front }) => [front.arrangement],
  // Both coils of a pair are wound on something.
  former: ({ front }) => [front.winding, ...(front.second ? [front.second] : [])].map(({ former }) => String(former)),
};

/**
 * Whether a set has a part of the box, or an arrangement.
 * @param choice of its parts
 * @param of what is asked about
 * @param trait the part's place in its list of the box, or the kind of arrangement
 * @returns true also for the former of a second coil
 */
export const hasTrait = (choice: Pick<SetChoice, 'front' | 'back'>, of: LeftOut['of'], trait: string): boolean =>
  TRAITS[of](choice).includes(trait);

const TRAIT_NAMES = Object.keys(TRAITS) as LeftOut['of'][];

/** With each detector, load, arrangement and former the best there is, so that one can say why it is not among the found. */
export function bestWithEach<T extends Candidate>(
  list: readonly T[],
  fronts: readonly FrontEnd[],
  backs: readonly BackEnd[],
): T[] {
  const best = new Map<string, T>();
  for (const one of list)
    for (const of of TRAIT_NAMES)
      for (const trait of TRAITS[of]({ front: fronts[one.front], back: backs[one.back] })) {
        const key = `${of} ${trait}`;
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
    const isShown = new Set(shown.flatMap((one) => TRAITS[of](choiceOf(one))));
    const best = new Map<string, Judged>();
    for (const one of judged) {
      for (const trait of TRAITS[of](choiceOf(one))) {
        if (isShown.has(trait)) continue;
        const known = best.get(trait);
        if (!known || scoreSum(one) > scoreSum(known)) best.set(trait, one);
      }
    }
    return [...best].map(([trait, one]) => {
      const leads = shown.map(({ scores }) => Math.min(...one.figures.map((_, k) => scores[k] - one.scores[k])));
      const behind = Math.max(...leads);
      const matchedBy = shown.findIndex(({ scores }) => isAsGood(scores, one.scores, -SAME));
      return {
        of,
        trait,
        choice: choiceOf(one),
        figures: one.figures,
        behind,
        ahead: leads.indexOf(behind),
        ...(matchedBy < 0 ? {} : { matchedBy }),
      };
    });
  });
}
