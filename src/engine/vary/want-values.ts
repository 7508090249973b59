import type { Verdict } from '../reception/path/types.ts';
import { isHeard } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import type { Want } from '../set/wants.ts';
import type { Decibels, Hertz } from '../units/quantities.ts';
import { figureOf, worthOf } from './objective.ts';
import type { Goal } from './question.ts';
import type { SetFigures, Trial } from './trial.ts';

/** A want of a set, and what the set gives of it. */
export interface WantValue {
  readonly want: Want;
  /** Of the stations it names, their places in the list. */
  readonly stations: readonly number[];
  /**
   * Level, dB SPL; how far the other station stays below, dB; share of the band covered; stations heard; audio bandwidth,
   * Hz; parts. Undefined for a station beyond the dial.
   */
  readonly figure: number | undefined;
  /** How the station comes through that it is for; left out where it is for none. */
  readonly verdict?: Verdict;
  /** Undefined where the want sets no limit. A want for a station is met only where that one is heard. */
  readonly isMet: boolean | undefined;
  /** For comparison: dB, more is better; what is more than enough is not counted. */
  readonly worth: Decibels;
  /** Ends of the dial, for a band; of a set with a band switch those of the band that covers most. */
  readonly covered?: readonly [lowest: Hertz, highest: Hertz];
  /** Of a set with a band switch, the band that gives it; left out where the bands give it together. */
  readonly band?: string;
}

/** A want with its stations found. */
export interface WantGoal {
  readonly want: Want;
  readonly stations: readonly number[];
  readonly goal: Goal;
}

/**
 * The goals that a set's wants come to; a want whose station is not in the list has none.
 * @param set as read
 * @returns in the order of the wants
 */
export const goalsOf = (set: Pick<SetDescription, 'wants' | 'place'>): readonly WantGoal[] =>
  (set.wants ?? []).flatMap((want) => {
    const named = want.kind === 'clear' ? [want.station, want.from] : 'station' in want ? [String(want.station)] : [];
    const stations = named.flatMap((name) => stationNamed(set.place.stations, name) ?? []);
    return stations.length < named.length ? [] : [{ want, stations, goal: goalOf(want, stations) }];
  });

function goalOf(want: Want, [station, from]: readonly number[]): Goal {
  switch (want.kind) {
    case 'loudest':
      return { objective: { of: 'loudness', station } };
    case 'clear':
      return { objective: { of: 'clearance', station, from }, enough: want.by };
    case 'band': {
      const { tolerance } = want;
      const [low, high] = [want.from * (1 + tolerance), want.to * (1 - tolerance)];
      // A narrow band within its own tolerance is one frequency.
      return low < high
        ? { objective: { of: 'band covered', from: low, to: high }, enough: 1 }
        : { objective: { of: 'band covered', from: want.from, to: want.to }, enough: 1 };
    }
    case 'most stations':
      return { objective: { of: 'stations heard' } };
    case 'speech':
      return { objective: { of: 'audio bandwidth', station }, enough: want.bandwidth };
    case 'fewest parts':
      return { objective: { of: 'parts' } };
  }
}

/**
 * What sets built like this one give of each want: medians, as a reception shows them.
 * @param trial of the set
 * @returns in the order of the wants; none for a want whose station is not in the list
 */
export const wantValues = (trial: Trial): readonly WantValue[] => valuesOfGoals(trial.medians, goalsOf(trial.set));

/** What a set gives of the wants of another, such as those it had before a change. */
export const valuesOfGoals = (trial: SetFigures, goals: readonly WantGoal[]): readonly WantValue[] =>
  goals.map(({ want, stations, goal }) => {
    const figure = figureOf(trial, goal.objective);
    const verdict = 'station' in want ? trial.figures(stations[0]).verdict : undefined;
    const shown = figure !== undefined && want.kind === 'fewest parts' ? -figure : figure;
    return {
      want,
      stations,
      figure: shown,
      ...(verdict === undefined ? {} : { verdict }),
      isMet: isMet(goal, want, { figure, verdict }),
      worth: worthOf(trial, goal),
      ...(want.kind === 'band' ? { covered: dialEndsOf(trial) } : {}),
    };
  });

export const dialEndsOf = (trial: SetFigures): readonly [lowest: Hertz, highest: Hertz] => {
  const { lowest, highest } = trial.curve();
  return [lowest, highest];
};

function isMet(
  { enough }: Goal,
  { kind }: Want,
  { figure, verdict }: { readonly figure: number | undefined; readonly verdict: Verdict | undefined },
): boolean | undefined {
  if (verdict !== undefined && !isHeard(verdict)) return false;
  if (kind === 'loudest') return true;
  if (enough === undefined) return undefined;
  return figure !== undefined && figure >= enough - LOST_BY_ROUNDING;
}

/** Rounding of the last figure is no loss. */
export const LOST_BY_ROUNDING = 1e-9;
