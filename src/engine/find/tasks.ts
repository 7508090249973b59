import { builtSet } from '../built/built-set.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import type { WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { uncertaintyOf } from '../uncertainty/uncertainty.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import { worthOf } from '../vary/objective.ts';
import { trialsOf } from '../vary/trial.ts';
import { goalsOf, type WantValue, wantValues } from '../vary/want-values.ts';
import type { BoxDescription, WrittenBox } from './box-schema.ts';
import { type BackEnd, backEndsOf, type FrontEnd, frontEndsOf, type SetChoice, type TurnsChosen } from './choices.ts';
import { chosenSets, type FindPlace, writtenSet } from './chosen-set.ts';
import { estimators } from './estimate.ts';
import { Front, Leaders, spread } from './ranking.ts';
import { turnsSpace } from './turns-space.ts';

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

/** A set of a search with what it is worth for each want (dB), and less effort as the last score. */
export interface Candidate {
  readonly front: number;
  readonly back: number;
  readonly turns: TurnsChosen;
  readonly scores: readonly number[];
  /** A wanted station lies at an end of the dial: medians of sets as built may differ from the usual set by more. */
  readonly isAtEnd?: boolean;
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
  | { readonly do: 'estimate'; readonly front: number }
  | { readonly do: 'refine'; readonly seeds: readonly Candidate[] }
  | { readonly do: 'receive' | 'judge'; readonly candidates: readonly Candidate[] }
  | { readonly do: 'chances'; readonly candidate: Candidate };

/** What comes of a piece of work. */
export interface TaskAnswer {
  /** Sets valued. */
  readonly valued: number;
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

/** Of a front end with one back end so many sets go on. */
const KEPT_OF_GRID = { apart: 6, leading: 2 } as const;
const KEPT_OF_REFINED = { apart: 8, leading: 6 } as const;
/** Estimates nearer than this are one, dB. */
const HAIR = 0.05;

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
  const partsOf = (choice: SetChoice, front: number, back: number): number => {
    const key = `${front} ${back}`;
    let count = parts.get(key);
    if (count === undefined) {
      count = builtSet(setOf(choice)).parts.size;
      parts.set(key, count);
    }
    return count;
  };

  const estimate = (
    tried: Iterable<{ front: number; back: number; turns: TurnsChosen }>,
    kept: { readonly apart: number; readonly leading: number },
  ): TaskAnswer => {
    const byEnds = new Map<
      string,
      { front: Front<Candidate>; leaders: Leaders<Candidate>; atEnd: Leaders<Candidate> }
    >();
    let valued = 0;
    for (const one of tried) {
      const choice = choiceOf(one);
      const { worth, isAtEnd } = estimatorOf(choice.front).of(choice.back, one.turns);
      valued++;
      const key = `${one.front} ${one.back}`;
      let ends = byEnds.get(key);
      if (!ends)
        byEnds.set(key, (ends = { front: new Front(HAIR), leaders: new Leaders(kept.leading), atEnd: new Leaders(1) }));
      const scores = [...worth, -effortOf(choice, partsOf(choice, one.front, one.back))];
      const candidate = { ...one, scores, isAtEnd };
      if (isAtEnd) ends.atEnd.add(candidate);
      ends.front.add(candidate);
      ends.leaders.add(candidate);
    }
    return {
      valued,
      candidates: [...byEnds.values()].flatMap(({ front, leaders, atEnd }) => [
        ...new Set([...spread(front.members, kept.apart), ...leaders.all(), ...atEnd.all()]),
      ]),
    };
  };
  const inFull = (candidate: Candidate): Candidate | undefined =>
    attempted(() => {
      const choice = choiceOf(candidate);
      const { now } = trialsOf(setOf(choice), when);
      const scores = [...goals.map(({ goal }) => worthOf(now, goal)), -effortOf(choice, now.parts())];
      return { ...candidate, scores };
    });
  const asBuilt = (candidate: Candidate): Judged | undefined =>
    attempted(() => {
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
        return estimate(gridOf(box, fronts, backs, task.front), KEPT_OF_GRID);
      case 'refine':
        return estimate(aboutSeeds(box, fronts, task.seeds), KEPT_OF_REFINED);
      case 'receive':
        return { valued: task.candidates.length, candidates: task.candidates.flatMap((one) => inFull(one) ?? []) };
      case 'judge':
        return { valued: task.candidates.length, candidates: task.candidates.flatMap((one) => asBuilt(one) ?? []) };
      case 'chances':
        return { valued: 1, candidates: [], chances: attempted(() => chancesOf(task.candidate)) ?? [] };
    }
  };
}

/** Undefined for parts that cannot be built together. */
function attempted<T>(work: () => T | undefined): T | undefined {
  try {
    return work();
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

function* gridOf(box: BoxDescription, fronts: readonly FrontEnd[], backs: readonly BackEnd[], front: number) {
  for (const turns of turnsSpace(box, fronts[front]).grid())
    for (let back = 0; back < backs.length; back++) yield { front, back, turns };
}

/** Every set about some, each once. */
function* aboutSeeds(box: BoxDescription, fronts: readonly FrontEnd[], seeds: readonly Candidate[]) {
  const tried = new Set<string>();
  for (const { front, back, turns } of seeds)
    for (const near of turnsSpace(box, fronts[front]).about(turns)) {
      const key = `${front} ${back} ${near.turns} ${near.secondTurns} ${near.aerialTap} ${near.detectorTap}`;
      if (tried.has(key)) continue;
      tried.add(key);
      yield { front, back, turns: near };
    }
}
