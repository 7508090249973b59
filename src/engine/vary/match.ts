import type { Decibels, Hertz } from '../units/quantities.ts';
import { isAllowed, scoreOf } from './objective.ts';
import { editsFor, optimise, trialOf } from './optimise.ts';
import type { Change } from './question.ts';
import { type Outlook, outlook, stationWish } from './suggest.ts';
import { isBuilt, type Trial, type Trials } from './trial.ts';
import { asWritten } from './values.ts';

/** Something that can be set to suit a station. */
export type Matched =
  | 'aerial tap'
  | 'detector tap'
  | 'distance of the coils'
  | 'coupling of the coils'
  | 'series capacitor'
  | 'transformer';

const MATCHED: readonly { readonly what: Matched; readonly id: string }[] = [
  { what: 'aerial tap', id: 'arrangement.aerialTap' },
  { what: 'detector tap', id: 'arrangement.detectorTap' },
  { what: 'distance of the coils', id: 'arrangement.distance' },
  { what: 'coupling of the coils', id: 'arrangement.coupling' },
  { what: 'series capacitor', id: 'arrangement.seriesCapacitor' },
  { what: 'transformer', id: 'load.transformer.ratio' },
];

/** What a set as a whole can do: how many stations are heard on it, and from where to where its dial goes. */
export interface Coverage {
  readonly stationsHeard: number;
  readonly lowest: Hertz;
  readonly highest: Hertz;
}

/** The best value of one adjustment for a station as things stand, everything else unchanged. */
export interface BestSetting {
  readonly id: string;
  /** What is best: loudness, or clearance while others disturb the station. */
  readonly of: 'loudness' | 'clearance';
  /** SI; undefined where it is not fitted. */
  readonly now: number | undefined;
  /** SI; what there is now where nothing is better. */
  readonly value: number | undefined;
  /** Of `of`, over what there is now; 0 where nothing is better. */
  readonly gain: Decibels;
  /** What the search went by gains so much. */
  readonly scoreGain: number;
  /** What is to be written for it; none where nothing is better. */
  readonly changes: readonly Change[];
  readonly before: Outlook;
  readonly after: Outlook;
}

/** The best value of one thing for a station, as a fact: words are made of it where it is shown. */
export interface Match extends BestSetting {
  readonly code: 'match';
  readonly what: Matched;
  /** What those at hand lose against the best, in the order given; undefined for one that cannot be built or is not allowed. */
  readonly atHand: readonly { readonly value: number; readonly lost: Decibels | undefined }[];
  /** Louder than the best, at the price of clearance. */
  readonly louder?: { readonly value: number; readonly gain: Decibels; readonly clearance: Decibels };
  /** Without any transformer it is so much louder than with the best. */
  readonly without?: Decibels;
  /** The set as a whole before and after; undefined where it was not asked for or nothing changes. */
  readonly coverage?: { readonly before: Coverage; readonly after: Coverage };
}

export interface MatchOptions {
  /** Already on the coil, turns from the earthed end. */
  readonly taps?: readonly number[];
  /** Of transformers in the box, to one. */
  readonly ratios?: readonly number[];
  /** Look at every station with each change made. */
  readonly withCoverage?: boolean;
}

/** Smaller differences are inaudible, dB. */
const LEAST_GAIN = 0.3;

/**
 * The best value of one adjustment for a station: the same question that suggestions put.
 * @returns undefined where the set has no such adjustment, or no value of it brings the station onto the dial.
 * @throws RangeError for a station the set does not have.
 */
export function bestSetting(trials: Trials, station: number, id: string): BestSetting | undefined {
  const { question, all } = stationWish(trials, station);
  const adjustment = all.find((one) => one.id === id);
  if (!adjustment) return undefined;
  const [answer] = optimise(trials, [adjustment], question);
  const now = typeof adjustment.now === 'number' ? adjustment.now : undefined;
  if (!answer && !trials.now.medians.figures(station).isWithin) return undefined;
  const before = outlook(trials.now, station);
  const of = question.objective.of === 'clearance' ? 'clearance' : 'loudness';
  if (!answer) return { id, of, now, value: now, gain: 0, scoreGain: 0, changes: [], before, after: before };
  const after = outlook(trialOf(trials, answer), station);
  return {
    id,
    of,
    now,
    value: answer.settings[0].to as number,
    gain: of === 'clearance' ? after.clearance - before.clearance : after.level - before.level,
    scoreGain: answer.scoreGain,
    changes: answer.scoreGain > LEAST_GAIN ? answer.changes : [],
    before,
    after,
  };
}

/**
 * The best of every tap, distance and transformer of a set for a station, each by itself with everything else unchanged.
 * @param trials of the set
 * @param station its place in the list, from 0
 * @param options what is kept
 * @returns best values with their gain (dB)
 * @throws RangeError for a station the set does not have.
 */
export function matching(trials: Trials, station: number, options: MatchOptions = {}): Match[] {
  const { taps = [], ratios = [], withCoverage = false } = options;
  const { question, all } = stationWish(trials, station);
  const covered = withCoverage ? coverageOf(trials.now) : undefined;
  return MATCHED.flatMap(({ what, id }): Match[] => {
    const best = bestSetting(trials, station, id);
    const adjustment = all.find((one) => one.id === id);
    if (!best || !adjustment || (what === 'series capacitor' && best.now === undefined)) return [];
    const score = scoreOf(trials.now.medians, question) + best.scoreGain;
    const listed = what === 'transformer' ? ratios : what === 'aerial tap' || what === 'detector tap' ? taps : [];
    const atHand = listed.map((value) => {
      const outcome = trials.with(editsFor(adjustment, asWritten(value, 6)));
      const reached = isBuilt(outcome) ? scoreOf(outcome.medians, question) : Number.NEGATIVE_INFINITY;
      return { value, lost: isAllowed(reached) ? Math.max(0, score - reached) : undefined };
    });
    const changed = best.changes.length > 0 ? trialOf(trials, best) : trials.now;
    return [
      {
        ...best,
        code: 'match',
        what,
        atHand,
        louder: louderThan(trials, station, best),
        without: what === 'transformer' ? withoutTransformer(trials, station, changed) : undefined,
        coverage: covered && changed !== trials.now ? { before: covered, after: coverageOf(changed) } : undefined,
      },
    ];
  });
}

/** The loudest value whatever it does to clearance, where that is another. */
function louderThan(trials: Trials, station: number, best: BestSetting): Match['louder'] {
  const { all } = stationWish(trials, station);
  const adjustment = all.filter((one) => one.id === best.id);
  const [answer] = optimise(trials, adjustment, { objective: { of: 'loudness', station } });
  if (!answer) return undefined;
  const { level, clearance } = trialOf(trials, answer).medians.figures(station);
  const isLouder = level > Math.max(best.after.level, best.before.level) + 1 && clearance < best.after.clearance;
  return isLouder ? { value: answer.settings[0].to as number, gain: level - best.before.level, clearance } : undefined;
}

function withoutTransformer(trials: Trials, station: number, best: Trial): Decibels | undefined {
  const direct =
    trials.now.set.load.transformer === undefined
      ? trials.now
      : trials.with([{ path: ['load', 'transformer'], to: undefined }]);
  return isBuilt(direct) ? direct.medians.figures(station).level - best.medians.figures(station).level : undefined;
}

function coverageOf(trial: Trial): Coverage {
  const { lowest, highest } = trial.curve();
  return { stationsHeard: trial.medians.stationsHeard().length, lowest, highest };
}
