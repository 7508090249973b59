import { turnSwitch } from '../set/band-switch.ts';
import type { Hertz } from '../units/quantities.ts';
import { worthOfFigure } from './objective.ts';
import type { Trial, Trials } from './trial.ts';
import { dialEndsOf, goalsOf, LOST_BY_ROUNDING, type WantGoal, type WantValue, wantValues } from './want-values.ts';

/**
 * What a set gives of each want, whichever band its switch has to be turned to: of a station the best band, of a band that
 * is to be covered and of the stations heard what all of them give together.
 * @param trials of the set, its switch on any band
 * @returns in the order of the wants; without a band switch as `wantValues` has them
 */
export function wantValuesOnBands(trials: Trials): readonly WantValue[] {
  const { set } = trials.now;
  const bands = set.bands ?? [];
  if (bands.length === 0) return wantValues(trials.now);
  const onBands = trialsOnBands(trials);
  const values = onBands.map(wantValues);
  return goalsOf(set).map((goal, k) => {
    const each = values.map((of) => of[k]);
    const best = each.reduce((best, _, i) => (isBetter(each[i], each[best]) ? i : best), 0);
    const together = togetherOf(goal, onBands);
    if (together === undefined) return { ...each[best], band: bands[best].name };
    const { figure, enough } = together;
    return {
      ...each[best],
      figure: goal.want.kind === 'fewest parts' ? -figure : figure,
      worth: worthOfFigure(goal.goal.objective.of, figure),
      isMet: enough === undefined ? undefined : figure >= enough - LOST_BY_ROUNDING,
    };
  });
}

/** A band that meets a want before one that does not, whatever they are worth. */
const isBetter = (a: WantValue, b: WantValue): boolean => (a.isMet === b.isMet ? a.worth > b.worth : a.isMet === true);

const trialsOnBands = (trials: Trials): readonly Trial[] => {
  const { set } = trials.now;
  return (set.bands ?? []).map((_, i) => {
    const turned = turnSwitch(set, i);
    return turned === set ? trials.now : trials.about(turned).now;
  });
};

/**
 * Whether another band than the one the switch stands on receives a station that this one does not.
 * @param trials of the set
 * @param station its place in the list
 * @returns false without a band switch
 */
export const isOnAnotherBand = (trials: Trials, station: number): boolean =>
  !trials.now.tuned(station).within &&
  trialsOnBands(trials).some((trial) => trial !== trials.now && trial.tuned(station).within);

/**
 * The goals that changes of one band can serve: not those of stations or frequencies that another band is for.
 * @param trials of the set, its switch on that band
 * @returns those of `goalsOf`, in their order; all of them without a band switch
 */
export function goalsOnBand(trials: Trials): readonly WantGoal[] {
  const { now } = trials;
  const goals = goalsOf(now.set);
  const others = goals.length === 0 ? [] : trialsOnBands(trials).filter((trial) => trial !== now);
  return goals.filter((goal) => {
    const here = reachOf(now, goal);
    return !others.some((other) => reachOf(other, goal) > here);
  });
}

/** How much of what a want is about a dial has: the share of a band, or the station or not; one to be kept away may be on any. */
function reachOf(trial: Trial, { goal, stations }: WantGoal): number {
  if (goal.objective.of === 'band covered') return shareCovered([trial], goal.objective.from, goal.objective.to);
  return stations.length === 0 || trial.tuned(stations[0]).within ? 1 : 0;
}

/** What the bands give of a want only together. */
function togetherOf(
  { want, goal }: WantGoal,
  trials: readonly Trial[],
): { figure: number; enough?: number } | undefined {
  if (want.kind === 'most stations')
    return { figure: new Set(trials.flatMap(({ medians }) => medians.stationsHeard())).size };
  // Every band is built into the one set, and what they share counts once.
  if (want.kind === 'fewest parts') return { figure: -new Set(trials.flatMap((trial) => trial.partIds())).size };
  if (goal.objective.of !== 'band covered') return undefined;
  const { from, to } = goal.objective;
  return { figure: shareCovered(trials, from, to), enough: goal.enough };
}

/** Share of a band, by the logarithm of the frequency, that lies within any of the dials. */
function shareCovered(trials: readonly Trial[], from: Hertz, to: Hertz): number {
  const ranges = trials.filter((trial) => trial.curve().isTuned).map(dialEndsOf);
  let [covered, reached] = [0, from];
  for (const [low, high] of ranges.sort(([a], [b]) => a - b)) {
    const [start, end] = [Math.max(low, reached), Math.min(high, to)];
    if (end <= start) continue;
    covered += Math.log(end / start);
    reached = end;
  }
  return covered / Math.log(to / from);
}
