import { type Adjustment, type Disturber, EFFORT_COST, type Effort, type Wish } from '../kinds/adjustment.ts';
import { bearingOf } from '../reception/path/receive-station.ts';
import type { StageId } from '../reception/path/types.ts';
import { stationText } from '../set/want-problems.ts';
import type { Decibels, Hertz } from '../units/quantities.ts';
import { adjustmentsOf, type SetAdjustments } from './adjustments.ts';
import { wishFor } from './objective.ts';
import { optimise, ranked, trialOf } from './optimise.ts';
import type { Answer, Change, Figures, Question, Setting } from './question.ts';
import { firstInOrder, type HeardChange, heardChange } from './suggestion-order.ts';
import { trapAdjustment } from './trap-adjustment.ts';
import type { Trial, Trials } from './trial.ts';
import { isOnAnotherBand } from './want-values-on-bands.ts';

/** What a station and its set are, before or after: medians, as a reception shows them. */
export interface Outlook extends Figures {
  readonly bandwidth: Hertz;
}

/** A change that would serve a station, as a fact: words are made of it where it is shown. */
export interface Suggestion extends HeardChange {
  readonly code: 'suggestion';
  readonly station: number;
  /** Where on the path it acts. */
  readonly stage: StageId;
  /** What it is for: a station that others disturb wants clearance, one beyond the dial to be reached. */
  readonly wish: Wish;
  readonly settings: readonly Setting[];
  readonly changes: readonly Change[];
  /** The greatest of all that it takes. */
  readonly effort: Effort;
  /** Of level for loudness, of clearance for clearance; undefined for a station that comes within reach. */
  readonly gain: Decibels | undefined;
  readonly before: Outlook;
  readonly after: Outlook;
}

/** Smaller gains are within what building to the same plan twice gives, dB. */
const LEAST_GAIN = 0.5;
/** What promises less is not worth its draws: no median differs from what so small a change promises by as much again, dB. */
const LEAST_PROMISE = 0.25;
/** A pair is named where it gains so much over its better half, dB. */
const BETTER_THAN_ONE = 1;
const MOST = 5;

export interface SuggestOptions extends Pick<Question, 'keep' | 'effortAtMost'> {
  /** How many; default five. */
  readonly most?: number;
}

/** What is asked about a station: the wish it has as things stand, the question for it, and what may be adjusted. */
export interface StationWish extends SetAdjustments {
  readonly wish: Wish;
  readonly question: Pick<Question, 'objective' | 'guard'>;
}

/**
 * The question that every asker puts for a station: what it wants as the set stands, and the adjustments that serve that.
 * @throws RangeError for a station the set does not have.
 */
export function stationWish(trials: Trials, station: number): StationWish {
  const { now } = trials;
  checkStation(now, station);
  const question = wishFor(now.medians, station);
  const figures = now.medians.figures(station);
  const wish: Wish = !figures.isWithin ? 'reach' : question.objective.of === 'clearance' ? 'clearance' : 'loudness';
  const { frequency } = now.tuned(station).station;
  const adjustments = adjustmentsOf(now.set, {
    against: wish === 'clearance' ? disturberOf(now, station) : undefined,
    beyond: wish !== 'reach' ? undefined : frequency < now.curve().lowest ? 'below' : 'above',
  });
  return { wish, question, ...adjustments };
}

/** Of a station the one that it stands least above, if not on the same frequency. */
function disturberOf(now: Trial, station: number): Disturber | undefined {
  const worst = disturberIndex(now, station);
  return worst === undefined ? undefined : disturberAt(now, worst);
}

/** The same, by its place in the list. */
export function disturberIndex(now: Trial, station: number): number | undefined {
  const worst = [...now.interference(station)].sort((a, b) => a.separation - b.separation)[0];
  const { frequency: carrier } = now.tuned(station).station;
  return worst === undefined || worst.frequency === carrier ? undefined : worst.index;
}

/** A station to be kept out. */
export function disturberAt(now: Trial, index: number): Disturber {
  const { station, field } = now.tuned(index);
  return {
    name: stationText(now.set.place.stations, index),
    frequency: station.frequency,
    bearing: bearingOf(station, field),
  };
}

/** @throws RangeError when a set has no such station. */
function checkStation({ set }: Trial, station: number): void {
  if (!(Number.isInteger(station) && station >= 0 && station < set.place.stations.length))
    throw new RangeError(`station ${station} is not one of the set's ${set.place.stations.length}`);
}

/**
 * What would serve a station most: every adjustment by itself, then pairs that its kind says work together, in the order
 * of `gainForEffort`, those last that lose a station. Nothing is suggested that makes the station silent or less clear of others than it is, and nothing for
 * a station beyond the dial that another band of the set receives. That the station that disturbs is no longer heard is no
 * loss.
 * @param trials of the set
 * @param station its place in the list, from 0
 * @param options what is kept, and how many are wanted
 * @returns changes with level and clearance (dB) before and after
 * @throws RangeError for a station the set does not have.
 */
export function suggest(trials: Trials, station: number, options: SuggestOptions = {}): Suggestion[] {
  const { wish, question, together, ...rest } = stationWish(trials, station);
  if (wish === 'reach' && isOnAnotherBand(trials, station)) return [];
  const stop = wish === 'clearance' ? disturberIndex(trials.now, station) : undefined;
  const all = [...rest.all, ...(stop === undefined ? [] : trapAdjustment(trials, [{ stop, target: station }]))];
  const { most = MOST, effortAtMost } = options;
  const limits = { effortAtMost, keep: new Set([...(trials.now.set.keep ?? []), ...(options.keep ?? [])]) };
  const served = all.filter(({ serves }) => serves.includes(wish) || wish === 'reach');
  const limited: Question = { ...question, ...limits, leastPromise: LEAST_PROMISE };
  const singles = optimise(trials, wish === 'reach' ? reachingFirst(served) : served, limited);
  const pairs =
    wish === 'reach'
      ? []
      : together.flatMap((ids) => {
          const half = singles.find(({ settings }) => ids.includes(settings[0].adjustment))?.scoreGain ?? 0;
          const leastPromise = half + BETTER_THAN_ONE / 2;
          const [pair] = optimise(trials, all, { ...limited, unknowns: { together: ids }, leastPromise });
          if (!pair || pair.settings.length < 2) return [];
          return pair.scoreGain > half + BETTER_THAN_ONE ? [pair] : [];
        });
  const useful = [...singles, ...pairs].filter(({ scoreGain }) => scoreGain >= LEAST_GAIN);
  const list = ranked(useful).map((answer) => ({
    suggestion: suggestionOf(trials, station, wish, answer),
    // On the dial or not: more turns than are needed gain nothing.
    gain: wish === 'reach' ? 1 : answer.scoreGain,
  }));
  return firstInOrder(list, (one) => heardChange(trials.now, trialOf(trials, one)), {
    most,
    unwanted: stop === undefined ? [] : [stop],
    lossesLast: true,
  });
}

/** Turns and capacitances bring a station onto the dial; a tap may as well. */
const reachingFirst = (adjustments: readonly Adjustment[]): Adjustment[] =>
  adjustments.filter(({ serves, effort }) => serves.includes('reach') || EFFORT_COST[effort] <= EFFORT_COST.rewire);

function suggestionOf(
  trials: Trials,
  station: number,
  wish: Wish,
  answer: Answer,
): Omit<Suggestion, keyof HeardChange> {
  const after = trialOf(trials, answer);
  return {
    code: 'suggestion',
    station,
    stage: stageOfChange(answer.changes[0]),
    wish,
    settings: answer.settings,
    changes: answer.changes,
    effort: answer.effort,
    gain: wish === 'reach' ? undefined : answer.gain,
    before: outlook(trials.now, station),
    after: outlook(after, station),
  };
}

export const outlook = ({ medians }: Trial, station: number): Outlook => ({
  ...medians.figures(station),
  bandwidth: medians.bandwidth(station),
});

/** Where on the path a change acts. */
export function stageOfChange({ part, adjustment }: Change): StageId {
  if (adjustment === 'arrangement.detectorTap' || part === 'detector') return 'detector';
  if (part === 'aerial' || part === 'earth') return 'aerial';
  return part === 'load' ? 'phones' : 'tuned circuit';
}
