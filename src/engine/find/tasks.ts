import { builtSet } from '../built/built-set.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import type { WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { attempt } from '../uncertainty/attempt.ts';
import { uncertaintyOf } from '../uncertainty/uncertainty.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import { worthOf } from '../vary/objective.ts';
import { trialsOf } from '../vary/trial.ts';
import { goalsOf, type WantValue, wantValues } from '../vary/want-values.ts';
import type { BoxDescription, WrittenBox } from './box-schema.ts';
import type { Candidate } from './candidate.ts';
import { type BackEnd, backEndsOf, type FrontEnd, frontEndsOf, type SetChoice, type TurnsChosen } from './choices.ts';
import { chosenSets, type FindPlace, writtenSet } from './chosen-set.ts';
import { estimators } from './estimate.ts';
import { type KeptOfEnds, SetSweep, type SweepContext, type SweptFront } from './set-sweep.ts';
import { turnsSpace, turnsWith } from './turns-space.ts';

/** Where sets are to stand and what is wanted of them, as written. */
export interface WrittenAt {
  readonly place: WrittenDescription['place'];
  readonly ear?: WrittenDescription['ear'];
  readonly wants: NonNullable<WrittenDescription['wants']>;
}

/** All that a search is about: the box as read and as written, and the place. */
export interface FindQuestion {
  readonly box: BoxDescription;
  readonly written: WrittenBox;
  readonly at: WrittenAt;
  /** The same as read. */
  readonly read: FindPlace;
}

/** How a wanted station is heard through sets built like one. */
export interface StationChance {
  /** Place in the list of stations. */
  readonly station: number;
  /** dB SPL, median and 90 % range. */
  readonly level: Decibels;
  readonly range: readonly [Decibels, Decibels];
  readonly chance: Ratio;
}

/** A candidate received in full. */
export interface Judged extends Candidate {
  readonly figures: readonly WantValue[];
  readonly parts: number;
}

/** One piece of work of a search. Places are of the lists of front and back ends. */
export type FindTask =
  | {
      readonly do: 'estimate';
      /** Front ends of one coil, or pair of coils, and the back ends that go with each. */
      readonly fronts: readonly number[];
      readonly backs: readonly (readonly number[])[];
      /** How fine a grid: see `turnsSpace`. */
      readonly grid: number;
      /** Scores of sets received in full, against which others are ruled out. */
      readonly reference?: readonly (readonly number[])[];
      /** How many go on. */
      readonly kept: KeptOfEnds;
    }
  | { readonly do: 'refine'; readonly seeds: readonly Candidate[]; readonly grid: number }
  | { readonly do: 'receive' | 'judge'; readonly candidates: readonly Candidate[] }
  | { readonly do: 'chances'; readonly candidate: Candidate };

/** What comes of a piece of work. */
export interface TaskAnswer {
  /** Sets valued. */
  readonly valued: number;
  /** Sets ruled out by a bound on their figures. */
  readonly ruledOut?: number;
  readonly candidates: readonly (Candidate | Judged)[];
  readonly chances?: readonly StationChance[];
}

/** The lists that tasks refer to. */
export interface FindSpace {
  readonly fronts: readonly FrontEnd[];
  readonly backs: readonly BackEnd[];
}

/** Front and back ends of a box; every thread makes the same. */
export function findSpace(box: BoxDescription): FindSpace {
  return { fronts: frontEndsOf(box), backs: backEndsOf(box) };
}

/** How many sets that is, every whole turn and tap counted. */
export const setsSpanned = (box: BoxDescription, { fronts, backs }: FindSpace): number =>
  backs.length * fronts.reduce((sum, front) => sum + turnsSpace(box, front).count, 0);

const KEPT_OF_REFINED: KeptOfEnds = { apart: 8, leading: 6 };

/** What winding a coil costs beside fitting a part or making a tap. Common practice, no source. */
const WINDING_EFFORT = 4;

/** Parts to fit, coils to wind, taps to make: less is better. */
const effortOf = ({ front, turns }: SetChoice, parts: number): number =>
  parts +
  WINDING_EFFORT * (front.second ? 2 : 1) +
  (turns.aerialTap === undefined ? 0 : 1) +
  (turns.detectorTap === undefined ? 0 : 1);

/**
 * A worker of a search: does any of its tasks, and keeps what several of them need. The same task has the same answer,
 * whatever was done before.
 * @param question box and place
 * @param when time and coastline
 * @returns does one task
 */
export function findWorker(question: FindQuestion, when: FieldOptions): (task: FindTask) => TaskAnswer {
  const { box, read } = question;
  const { fronts, backs } = findSpace(box);
  const setOf = chosenSets(box, read);
  const goals = goalsOf({ place: read.place, wants: read.wants });
  const estimatorOf = estimators({ setOf, goals, when });
  const parts = new Map<string, number>();
  const choiceOf = ({ front, back, turns }: Pick<Candidate, 'front' | 'back' | 'turns'>): SetChoice => ({
    front: fronts[front],
    back: backs[back],
    turns,
  });
  const partsOf = (front: number, back: number, turns: TurnsChosen): number => {
    const { arrangement, aerial, earth, tuner, series, winding } = fronts[front];
    const { kind } = box.formers[winding.former].former;
    const key = [arrangement, kind, aerial, earth, JSON.stringify(tuner), series, back].join(' ');
    let count = parts.get(key);
    if (count === undefined) {
      count = builtSet(setOf(choiceOf({ front, back, turns }))).parts.size;
      parts.set(key, count);
    }
    return count;
  };
  /** Front ends ready to be swept, each once. */
  const sweptFronts = (): ((front: number, any: TurnsChosen) => SweptFront) => {
    const swept = new Map<number, SweptFront>();
    return (front, any) => {
      let ready = swept.get(front);
      if (!ready) {
        ready = {
          front,
          estimator: estimatorOf(fronts[front]),
          parts: backs.map((_, back) => partsOf(front, back, any)),
          winding: WINDING_EFFORT * (fronts[front].second ? 2 : 1),
        };
        swept.set(front, ready);
      }
      return ready;
    };
  };
  const partsWanted = goals.flatMap(({ goal }, k) => (goal.objective.of === 'parts' ? [k] : []));
  const sweepWith = (kept: KeptOfEnds, reference: SweepContext['reference'] = []): SetSweep =>
    new SetSweep({ backs, partsWanted, wants: goals.length, kept, reference });
  const answerOf = (sweep: SetSweep): TaskAnswer => ({
    valued: sweep.valued,
    ruledOut: sweep.ruledOut,
    candidates: sweep.candidates(),
  });

  const estimate = ({
    fronts: some,
    backs: withEach,
    grid,
    reference,
    kept,
  }: Extract<FindTask, { do: 'estimate' }>): TaskAnswer => {
    const sweep = sweepWith(kept, reference);
    const sweptOf = sweptFronts();
    for (const group of turnsSpace(box, fronts[some[0]]).groups(grid))
      for (const [i, front] of some.entries())
        sweep.visit(sweptOf(front, turnsWith(group, group.turns)), group, withEach[i]);
    return answerOf(sweep);
  };
  const refine = ({ seeds, grid }: Extract<FindTask, { do: 'refine' }>): TaskAnswer => {
    const sweep = sweepWith(KEPT_OF_REFINED);
    const sweptOf = sweptFronts();
    const tried = new Set<string>();
    for (const { front, back, turns } of seeds)
      for (const group of turnsSpace(box, fronts[front]).about(turns, grid)) {
        const key = `${front} ${back} ${group.turns} ${group.secondTurns} ${group.aerialTap}`;
        const taps = group.detectorTaps.filter((tap) => !tried.has(`${key} ${tap}`));
        if (taps.length === 0) continue;
        for (const tap of taps) tried.add(`${key} ${tap}`);
        sweep.visit(sweptOf(front, turnsWith(group, group.turns)), group, [back], taps);
      }
    return answerOf(sweep);
  };
  const inFull = (candidate: Candidate): Candidate | undefined =>
    attempt(() => {
      const choice = choiceOf(candidate);
      const { now } = trialsOf(setOf(choice), when);
      const scores = [...goals.map(({ goal }) => worthOf(now, goal)), -effortOf(choice, now.parts())];
      return { ...candidate, scores };
    });
  const asBuilt = (candidate: Candidate): Judged | undefined =>
    attempt(() => {
      const choice = choiceOf(candidate);
      const result = readValue(writtenSet(question, choice, question.at, '?'));
      if (!result.ok) return undefined;
      const { now } = trialsOf(result.set, when);
      const figures = wantValues(now);
      const count = now.parts();
      const scores = [...figures.map(({ worth }) => worth), -effortOf(choice, count)];
      return { ...candidate, scores, figures, parts: count };
    });
  const chancesOf = (candidate: Candidate): StationChance[] => {
    const stations = [...new Set(goals.flatMap((goal) => goal.stations.slice(0, 1)))];
    const { receiver } = trialsOf(setOf(choiceOf(candidate)), when).now;
    return uncertaintyOf(receiver.circuit, { ...when, stations }).flatMap((one) => {
      if (!one) return [];
      const { median, range } = one.figures.soundPressureLevel;
      return [{ station: one.index, level: median, range, chance: one.chance }];
    });
  };

  return (task) => {
    switch (task.do) {
      case 'estimate':
        return estimate(task);
      case 'refine':
        return refine(task);
      case 'receive':
        return { valued: task.candidates.length, candidates: task.candidates.flatMap((one) => inFull(one) ?? []) };
      case 'judge':
        return { valued: task.candidates.length, candidates: task.candidates.flatMap((one) => asBuilt(one) ?? []) };
      case 'chances':
        return { valued: 1, candidates: [], chances: attempt(() => chancesOf(task.candidate)) ?? [] };
    }
  };
}
