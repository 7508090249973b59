import type { Adjustment, Effort } from '../kinds/adjustment.ts';
import { MASKED } from '../reception/interference/separation.ts';
import type { StageId } from '../reception/path/types.ts';
import { isHeard } from '../reception/verdict.ts';
import type { Decibels } from '../units/quantities.ts';
import { adjustmentsOf, type SetAdjustments } from './adjustments.ts';
import { CLEAR, reachObjective, WITHIN_WORTH } from './objective.ts';
import { optimise, trialOf } from './optimise.ts';
import type { Answer, Change, Guard, Question, Setting } from './question.ts';
import { disturberAt, disturberIndex, stageOfChange } from './suggest.ts';
import { firstInOrder, type HeardChange, heardChange } from './suggestion-order.ts';
import { trapAdjustment } from './trap-adjustment.ts';
import type { Trial, Trials } from './trial.ts';
import { valuesOfGoals, type WantGoal, type WantValue } from './want-values.ts';
import { goalsOnBand } from './want-values-on-bands.ts';

/** What a change does to one want. */
export interface WantEffect {
  readonly before: WantValue;
  readonly after: WantValue;
  /** Of what it is worth, dB: more is better. */
  readonly change: Decibels;
}

/** A change that serves the wants of a set, as facts. */
export interface WantSuggestion extends HeardChange {
  readonly code: 'want-suggestion';
  /** Where on the path it acts. */
  readonly stage: StageId;
  readonly settings: readonly Setting[];
  readonly changes: readonly Change[];
  /** The greatest of all that it takes. */
  readonly effort: Effort;
  /** One for each want, in their order. */
  readonly effects: readonly WantEffect[];
  /** Of all wants together, dB; without those whose station is beyond the dial before or after. */
  readonly gain: Decibels;
  /** Wants whose station comes onto the dial, by their places; and those whose station leaves it. */
  readonly reached: readonly number[];
  readonly unreached: readonly number[];
  /**
   * How much louder stations come that are not wanted loud: those wanted clear of others or for their speech; where no
   * station is wanted, the one received best.
   */
  readonly loudness: readonly { readonly station: string; readonly change: Decibels }[];
  /** It makes a want worse, for one that nothing else brings nearer. */
  readonly isTradeOff: boolean;
}

/** A want that loses less than this is as it was, dB. */
const AS_IT_WAS = 0.1;
/** Smaller gains are within what building to the same plan twice gives, dB. */
const LEAST_GAIN = 0.5;
/** A pair is named where it gains so much over its better half, dB. */
const BETTER_THAN_ONE = 0.5;
/** Less than this meets no want that was not met, dB. */
const LEAST_DIFFERENCE = 0.01;
const MOST = 5;
/** So many trade-offs stand at the end. */
const MOST_TRADE_OFFS = 2;
/** Rounding of the last figure is no loss. */
const HAIR = 1e-6;

interface WantOptions extends Pick<Question, 'keep' | 'effortAtMost'> {
  /** How many; default five. */
  readonly most?: number;
}

/**
 * What would serve the wants of a set, judged by all of them, in the order of `gainForEffort`, a station that comes onto
 * the dial counted as 10 dB; that a station that disturbs a wanted one is no longer heard is no loss. What makes a want worse by
 * more than 0.1 dB is left out; only where a want is not met and nothing else brings it nearer is it given, last and as a
 * trade-off. A station that a want is for and that is heard stays heard in any case. What is kept stays as it is.
 * Adjustments that only help together are tried in pairs.
 * @param trials of the set, its wants and what it keeps in its description
 * @param options what else is kept, the most effort, and how many are wanted
 * @returns changes with each want before and after; none where there are no wants
 */
export function suggestForWants(trials: Trials, options: WantOptions = {}): WantSuggestion[] {
  const { now } = trials;
  const goals = goalsOnBand(trials);
  if (goals.length === 0) return [];
  const { most = MOST, effortAtMost } = options;
  const keep = new Set([...(now.set.keep ?? []), ...(options.keep ?? [])]);
  const unasked = unaskedLoudness(now, goals);
  const heardNow = stationsFor(goals).filter((station) => isHeard(now.medians.figures(station).verdict));
  const isReaching = goals.some((goal) => isBeyond(now, goal));
  const question: Question = {
    objective: {
      of: 'goals',
      // A station is brought onto the dial first, by as little as can be; how loud it is there comes after.
      goals: isReaching
        ? goals.map((goal) =>
            isBeyond(now, goal) ? { objective: reachObjective(now.medians, goal.stations[0]) } : goal.goal,
          )
        : [...goals.map(({ goal }) => goal), ...unasked],
    },
    guard: [...guardsOf(now, goals), ...heardGuards(heardNow)],
    keep,
    effortAtMost,
  };
  const against = tasksAgainst(now, goals);
  const unwanted = against.map(({ stop }) => stop);
  const adjustments = adjustmentsFor(trials, goals, against);
  const before = valuesOfGoals(now.medians, goals);
  const suggestionsOf = (answers: readonly Answer[]): Unordered[] =>
    answers.flatMap((answer) => {
      const after = trialOf(trials, answer).medians;
      if (!heardNow.every((station) => isHeard(after.figures(station).verdict))) return [];
      const loudness = unasked.flatMap(({ objective: { station } }) => {
        const [was, is] = [now.medians.figures(station), after.figures(station)];
        return is.isWithin ? [{ station: now.set.place.stations[station].name, change: is.level - was.level }] : [];
      });
      return [suggestionOf(answer, { before, after: valuesOfGoals(after, goals), loudness })];
    });
  const inOrder = (list: readonly Unordered[], count: number): WantSuggestion[] =>
    firstInOrder(
      list.map((suggestion) => ({ suggestion, gain: gainWithReach(suggestion) })),
      (one) => heardChange(now, trialOf(trials, one)),
      { most: count, unwanted },
    );
  const suggestions = suggestionsOf(answersTo(trials, adjustments, question)).filter(
    (one) => !one.isTradeOff && (gainWithReach(one) >= LEAST_GAIN || one.effects.some(isNowMet)),
  );
  const helped = (want: number): boolean => suggestions.some(({ effects }) => helps(effects[want]));
  const unhelped = before.flatMap(({ isMet }, want) => (isMet === false && !helped(want) ? [want] : []));
  if (unhelped.length === 0) return inOrder(suggestions, most);
  const guard = heardGuards(heardNow);
  const others = suggestionsOf(answersTo(trials, adjustments, { ...question, guard })).filter(
    ({ isTradeOff, effects }) => isTradeOff && unhelped.some((want) => helps(effects[want])),
  );
  // What makes no want worse has a place before them.
  const tradeOffs = inOrder(others, Math.min(MOST_TRADE_OFFS, most - Math.min(1, suggestions.length)));
  return [...inOrder(suggestions, most - tradeOffs.length), ...tradeOffs];
}

type Unordered = Omit<WantSuggestion, keyof HeardChange>;

/** What a suggestion stands in the order by: a station on the dial or not is no matter of decibels. */
const gainWithReach = ({ gain, reached, unreached }: Unordered): Decibels =>
  gain + WITHIN_WORTH * (reached.length - unreached.length);

/** The stations that wants are for, each once. */
const stationsFor = (goals: readonly WantGoal[]): number[] => [
  ...new Set(goals.flatMap(({ stations }) => stations.slice(0, 1))),
];

/** Whether a want is for a station beyond the dial. */
const isBeyond = (now: Trial, { stations: [station] }: WantGoal): boolean =>
  station !== undefined && !now.medians.figures(station).isWithin;

/** What is heard stays heard. */
const heardGuards = (stations: readonly number[]): Guard[] =>
  stations.flatMap((station): Guard[] => [
    { objective: { of: 'audibility', station }, atLeast: 0 },
    { objective: { of: 'clearance', station }, atLeast: MASKED },
  ]);

/** Weight of a decibel of loudness that no want asks for, relative to the wants: of a station that is wanted otherwise, */
const WANTED_OTHERWISE = 0.25;
/** and of one that no want is for. Common practice, no source. */
const UNASKED = 0.1;

interface UnaskedLoudness {
  readonly objective: { readonly of: 'loudness'; readonly station: number };
  readonly weight: number;
}

/**
 * Stations whose loudness counts a little though no want asks for it, so that wants are not met at the cost of all
 * loudness: those that are wanted clear of others or for their speech; without any station wanted the one received best.
 */
function unaskedLoudness(now: Trial, goals: readonly WantGoal[]): UnaskedLoudness[] {
  const isWantedLoud = (station: number): boolean =>
    goals.some(({ want, stations }) => want.kind === 'loudest' && stations[0] === station);
  const unasked = stationsFor(goals).filter((station) => !isWantedLoud(station) && now.figures(station).isWithin);
  if (unasked.length > 0)
    return unasked.map((station) => ({ objective: { of: 'loudness', station }, weight: WANTED_OTHERWISE }));
  if (stationsFor(goals).length > 0) return [];
  const margins = now.set.place.stations.map((_, station) => {
    const { isWithin, margin } = now.figures(station);
    return isWithin ? margin : Number.NEGATIVE_INFINITY;
  });
  const best = Math.max(...margins);
  return best > Number.NEGATIVE_INFINITY
    ? [{ objective: { of: 'loudness', station: margins.indexOf(best) }, weight: UNASKED }]
    : [];
}

const isNowMet = ({ before, after }: WantEffect): boolean => before.isMet === false && after.isMet === true;
const isOnDial = ({ figure }: WantValue): boolean => figure !== undefined;
/** What leaves a station beyond the dial has done nothing for it. */
const isSeen = ({ before, after }: WantEffect): boolean => isOnDial(before) || isOnDial(after);
const sumOfChanges = (sum: Decibels, { change }: WantEffect): Decibels => sum + change;
const placesOf = (effects: readonly WantEffect[], holds: (effect: WantEffect) => boolean): number[] =>
  effects.flatMap((effect, want) => (holds(effect) ? [want] : []));
const helps = (effect: WantEffect): boolean => isSeen(effect) && (effect.change >= LEAST_GAIN || isNowMet(effect));

/** What an answer does to every want. */
function suggestionOf(
  answer: Answer,
  {
    before,
    after,
    loudness,
  }: {
    readonly before: readonly WantValue[];
    readonly after: readonly WantValue[];
    readonly loudness: WantSuggestion['loudness'];
  },
): Unordered {
  const effects = before.map((value, i) => ({ before: value, after: after[i], change: after[i].worth - value.worth }));
  return {
    code: 'want-suggestion',
    stage: stageOfChange(answer.changes[0]),
    settings: answer.settings,
    changes: answer.changes,
    effort: answer.effort,
    effects,
    gain: effects.filter((effect) => isOnDial(effect.before) && isOnDial(effect.after)).reduce(sumOfChanges, 0),
    reached: placesOf(effects, (effect) => !isOnDial(effect.before) && isOnDial(effect.after)),
    unreached: placesOf(effects, (effect) => isOnDial(effect.before) && !isOnDial(effect.after)),
    loudness,
    isTradeOff: effects.some(({ change }) => change < -AS_IT_WAS - HAIR),
  };
}

type Adjustable = Pick<SetAdjustments, 'all' | 'together'>;

/** Singles, and pairs that gain over their better half. */
function answersTo(trials: Trials, { all, together }: Adjustable, question: Question): Answer[] {
  const singles = optimise(trials, all, question);
  const pairs = together.flatMap((ids) => {
    const [pair] = optimise(trials, all, { ...question, unknowns: { together: ids } });
    if (!pair || pair.settings.length < 2) return [];
    const half = singles.find(({ settings }) => ids.includes(settings[0].adjustment))?.scoreGain ?? 0;
    return pair.scoreGain > half + BETTER_THAN_ONE ? [pair] : [];
  });
  return [...singles, ...pairs].filter(({ scoreGain }) => scoreGain >= LEAST_DIFFERENCE);
}

/** No want gets worse; a station wanted loud stays as clear of others as it is, up to where it is clear. */
const guardsOf = (now: Trial, goals: readonly WantGoal[]): Guard[] =>
  valuesOfGoals(now.medians, goals).flatMap(({ want, stations, worth }, i): Guard[] => {
    const goal: Guard = { objective: { of: 'goals', goals: [goals[i].goal] }, atLeast: worth - AS_IT_WAS };
    if (want.kind !== 'loudest' && want.kind !== 'speech') return [goal];
    const { isWithin, heard, clearance } = now.medians.figures(stations[0]);
    if (!isWithin) return [goal];
    const atLeast = Math.min(clearance, heard === 'not heard' ? MASKED : CLEAR);
    return [goal, { objective: { of: 'clearance', station: stations[0] }, atLeast }];
  });

/** Stations to be kept out for those wanted: the one that a want names, or else the one that disturbs most. */
const tasksAgainst = (now: Trial, goals: readonly WantGoal[]): { readonly stop: number; readonly target: number }[] =>
  goals.flatMap(({ want, stations: [station, from] }) => {
    if (station === undefined) return [];
    if (want.kind === 'clear') return [{ stop: from, target: station }];
    const worst = now.figures(station).clearance < CLEAR ? disturberIndex(now, station) : undefined;
    return worst === undefined ? [] : [{ stop: worst, target: station }];
  });

/** All that the set can adjust, wave traps and directions for the stations to be kept out, turns for those out of range. */
function adjustmentsFor(
  trials: Trials,
  goals: readonly WantGoal[],
  against: readonly { readonly stop: number; readonly target: number }[],
): Adjustable {
  const { now } = trials;
  const { lowest, highest } = now.curve();
  const { stations } = now.set.place;
  const sides = goals.flatMap(({ want, stations: [station] }): ('below' | 'above')[] => {
    const ends =
      want.kind === 'band' ? [want.from, want.to] : station === undefined ? [] : [stations[station].frequency];
    return [
      ...(ends.some((f) => f < lowest) ? (['below'] as const) : []),
      ...(ends.some((f) => f > highest) ? (['above'] as const) : []),
    ];
  });
  const beyond = new Set(sides).size === 1 ? sides[0] : undefined;
  const sets = (against.length > 0 ? against : [undefined]).map((one) =>
    adjustmentsOf(now.set, { against: one && disturberAt(now, one.stop), beyond }),
  );
  const all = new Map<string, Adjustment>();
  const distinct = [...sets.flatMap((set) => set.all), ...trapAdjustment(trials, against)];
  for (const one of distinct) if (!all.has(one.id)) all.set(one.id, one);
  const isRange = goals.some(({ want, stations: [station] }) =>
    want.kind === 'band' ? true : station !== undefined && now.beyondDial(station) > 0,
  );
  const { together, forRange } = sets[0];
  return { all: [...all.values()], together: isRange ? [...together, ...forRange] : together };
}
