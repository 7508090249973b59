import type { FieldOptions } from '../reception/path/field.ts';
import { isHeard, verdictOf } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import type { Want } from '../set/wants.ts';
import { usualHearing } from '../uncertainty/ranged-reception.ts';
import { uncertaintyOf } from '../uncertainty/uncertainty.ts';
import type { Decibels, Hertz } from '../units/quantities.ts';
import { figureOf, worthOf } from './objective.ts';
import type { Figures, Goal } from './question.ts';
import type { Trial } from './trial.ts';

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
  /** Undefined where the want sets no limit. */
  readonly isMet: boolean | undefined;
  /** For comparison: dB, more is better; what is more than enough is not counted. */
  readonly worth: Decibels;
  /** Ends of the dial, for a band. */
  readonly covered?: readonly [lowest: Hertz, highest: Hertz];
}

/** A want with its stations found. */
export interface WantedGoal {
  readonly want: Want;
  readonly stations: readonly number[];
  readonly goal: Goal;
}

/**
 * The goals that a set's wants come to; a want whose station is not in the list has none.
 * @param set as read
 * @returns in the order of the wants
 */
export const goalsOf = (set: Pick<SetDescription, 'wants' | 'place'>): readonly WantedGoal[] =>
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
 * What sets built like this one give of each want, in the median where levels are concerned, as a reception shows them.
 * @param trial of the set
 * @param when time and coastline, as for the trial
 * @returns in the order of the wants; none for a want whose station is not in the list
 */
export function wantValues(trial: Trial, when: FieldOptions = {}): readonly WantValue[] {
  const goals = goalsOf(trial.set);
  const isOfAll = goals.some(({ want }) => want.kind === 'most stations');
  const asked = isOfAll
    ? trial.set.place.stations.map((_, i) => i)
    : goals.flatMap(({ want, stations }) => (want.kind === 'loudest' ? stations : []));
  return valuesOfGoals(asked.length > 0 ? inMedian(trial, asked, when) : trial, goals);
}

/** A trial whose levels, and what of hearing follows, are medians of all sets built like it. */
function inMedian(trial: Trial, stations: readonly number[], when: FieldOptions): Trial {
  const drawn = uncertaintyOf(trial.receiver.circuit, { ...when, stations });
  const byStation = new Map(drawn.flatMap((one) => (one ? [[one.index, one] as const] : [])));
  const figures = (station: number): Figures => {
    const usual = trial.figures(station);
    const uncertainty = byStation.get(station);
    if (!usual.isWithin || !uncertainty) return usual;
    const { spl: level, splA: levelA, margin, marginInSilence } = trial.tuned(station).heard;
    const median = usualHearing({ level, levelA, margin, marginInSilence }, uncertainty);
    return {
      ...usual,
      level: median.level,
      margin: median.margin,
      heard: median.loudness,
      verdict: verdictOf(true, median.loudness, trial.interference(station)),
    };
  };
  return {
    ...trial,
    figures,
    stationsHeard: () => trial.set.place.stations.filter((_, station) => isHeard(figures(station).verdict)).length,
  };
}

/** What a set gives of the wants of another, such as those it had before a change. */
export const valuesOfGoals = (trial: Trial, goals: readonly WantedGoal[]): readonly WantValue[] =>
  goals.map(({ want, stations, goal }) => {
    const figure = figureOf(trial, goal.objective);
    const shown = figure !== undefined && want.kind === 'fewest parts' ? -figure : figure;
    return {
      want,
      stations,
      figure: shown,
      isMet: isMet(trial, { want, stations, goal }, figure),
      worth: worthOf(trial, goal),
      ...(want.kind === 'band' ? { covered: endsOf(trial) } : {}),
    };
  });

const endsOf = (trial: Trial): readonly [lowest: Hertz, highest: Hertz] => {
  const { lowest, highest } = trial.curve();
  return [lowest, highest];
};

function isMet(trial: Trial, { want, stations, goal }: WantedGoal, figure: number | undefined): boolean | undefined {
  if (want.kind === 'loudest') return figure !== undefined && trial.figures(stations[0]).heard !== 'not heard';
  if (goal.enough === undefined) return undefined;
  return figure !== undefined && figure >= goal.enough - HAIR;
}

/** Rounding of the last figure is no loss. */
const HAIR = 1e-9;
