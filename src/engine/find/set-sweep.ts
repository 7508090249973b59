import type { Candidate } from './candidate.ts';
import type { TurnsChosen } from './choices.ts';
import type { Estimator } from './estimate.ts';
import { Front, isAsGood, Leaders, spread } from './ranking.ts';
import { type TurnsGroup, turnsWith } from './turns-space.ts';

/** Estimates nearer than this are one, dB. */
const HAIR = 0.05;

/** Of a front end with one back end so many sets go on: those that lie apart, and the best of each want and effort. */
export interface KeptOfEnds {
  readonly apart: number;
  readonly leading: number;
}

/** A front end ready to be swept. */
export interface SweptFront {
  readonly front: number;
  readonly estimator: Estimator;
  /** Parts of sets with each back end. */
  readonly parts: readonly number[];
  /** Effort of the winding. */
  readonly winding: number;
}

/** What is the same for all that one sweep tries. */
export interface SweepContext {
  readonly backs: readonly Parameters<Estimator['worth']>[0][];
  /** Places of the wants, among all, that are for few parts. */
  readonly partsWanted: readonly number[];
  readonly wants: number;
  /** Scores of sets received in full: what is surely no better than one of them, and takes no less effort, is ruled out. */
  readonly reference: readonly (readonly number[])[];
  readonly kept: KeptOfEnds;
}

/** Values sets of front and back ends, and keeps the best of each pair. */
export class SetSweep {
  valued = 0;
  ruledOut = 0;
  private readonly about: SweepContext;
  private readonly best = new Map<number, Best>();
  private readonly scores: Float64Array;

  constructor(about: SweepContext) {
    this.about = about;
    this.scores = new Float64Array(about.wants + 1);
  }

  /** Values a group of sets with some back ends. @param taps of the detector that are tried */
  visit(swept: SweptFront, group: TurnsGroup, backs: readonly number[], taps = group.detectorTaps): void {
    const { estimator } = swept;
    const { turns, aerialTap } = group;
    estimator.wind(turnsWith(group, turns));
    const tapped = aerialTap === undefined ? 0 : 1;
    const untapped = taps[taps.length - 1] === turns ? 1 : 0;
    const withTap: number[] = [];
    const withoutTap: number[] = [];
    for (const back of backs) {
      const effort = swept.parts[back] + swept.winding + tapped;
      const [outWithout, outWith] = this.areOut(swept, back, effort);
      if (outWithout) this.ruledOut += untapped;
      else if (untapped > 0) withoutTap.push(back);
      if (outWith) this.ruledOut += taps.length - untapped;
      else withTap.push(back);
    }
    if (withTap.length === 0 && withoutTap.length === 0) return;
    for (const tap of taps) {
      const tried = tap === turns ? withoutTap : withTap;
      if (tried.length === 0) continue;
      const chosen = turnsWith(group, tap);
      estimator.wind(chosen);
      for (const back of tried) this.value(swept, back, chosen, tapped + (tap === turns ? 0 : 1));
    }
  }

  /** The best of each pair of ends, in the order in which the pairs were first met. */
  candidates(): Candidate[] {
    return [...this.best.values()].flatMap(({ front, leaders, atEnd }) => [
      ...new Set([...spread(front.members, this.about.kept.apart), ...leaders.all(), ...atEnd.all()]),
    ]);
  }

  /** Whether sets without a tap of the detector, and with one, are surely no better than what has been received. */
  private areOut({ estimator, parts }: SweptFront, back: number, effort: number): [boolean, boolean] {
    const { reference, backs, partsWanted } = this.about;
    if (reference.length === 0) return [false, false];
    const { scores } = this;
    estimator.bound(backs[back], scores);
    for (const k of partsWanted) scores[k] = -parts[back];
    scores[scores.length - 1] = -effort;
    const outWithout = reference.some((known) => isAsGood(known, scores, 0));
    if (outWithout) return [true, true];
    scores[scores.length - 1] = -effort - 1;
    return [false, reference.some((known) => isAsGood(known, scores, 0))];
  }

  private value({ front, estimator, parts, winding }: SweptFront, back: number, turns: TurnsChosen, taps: number) {
    const { scores } = this;
    const { backs, partsWanted, kept } = this.about;
    const isAtEnd = estimator.worth(backs[back], scores);
    this.valued++;
    for (const k of partsWanted) scores[k] = -parts[back];
    scores[scores.length - 1] = -parts[back] - winding - taps;
    const key = front * backs.length + back;
    let best = this.best.get(key);
    if (!best)
      this.best.set(
        key,
        (best = { front: new Front(HAIR), leaders: new Leaders(kept.leading), atEnd: new Leaders(1) }),
      );
    const stays = !best.front.beats(scores);
    const leads = !best.leaders.beats(scores);
    const leadsAtEnd = isAtEnd && !best.atEnd.beats(scores);
    if (!stays && !leads && !leadsAtEnd) return;
    const candidate: Candidate = { front, back, turns, scores: [...scores], isAtEnd };
    if (stays) best.front.add(candidate);
    if (leads) best.leaders.add(candidate);
    if (leadsAtEnd) best.atEnd.add(candidate);
  }
}

interface Best {
  readonly front: Front<Candidate>;
  readonly leaders: Leaders<Candidate>;
  readonly atEnd: Leaders<Candidate>;
}
