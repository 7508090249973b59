import { type Adjustment, EFFORT_COST, type Effort } from '../kinds/adjustment.ts';
import { MASKED } from '../reception/interference/separation.ts';
import type { StageId } from '../reception/path/types.ts';
import type { Decibels } from '../units/quantities.ts';
import { adjustmentsOf, type SetAdjustments } from './adjustments.ts';
import { CLEAR } from './objective.ts';
import { costOf, optimise, trialOf } from './optimise.ts';
import type { Answer, Change, Guard, Question, Setting } from './question.ts';
import { disturberAt, disturberOf, stageOfChange } from './suggest.ts';
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
export interface WantSuggestion {
  readonly code: 'want-suggestion';
  /** Where on the path it acts. */
  readonly stage: StageId;
  readonly settings: readonly Setting[];
  readonly changes: readonly Change[];
  /** The greatest of all that it takes. */
  readonly effort: Effort;
  /** One for each want, in their order. */
  readonly effects: readonly WantEffect[];
  /** Of all wants together, dB. */
  readonly gain: Decibels;
  /** The station received best, where no station is wanted loud, and how much louder it comes. */
  readonly loudness?: { readonly station: string; readonly change: Decibels };
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
 * What would serve the wants of a set, judged by all of them: what takes only a turn of a knob first, then the most gain
 * for the effort. What makes a want worse by more than 0.1 dB is left out; only where a want is not met and nothing else
 * brings it nearer is it given, last and as a trade-off. What is kept stays as it is. Adjustments that only help together are tried in pairs.
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
  const unasked = loudnessUnasked(now, goals);
  const question: Question = {
    objective: { of: 'goals', goals: [...goals.map(({ goal }) => goal), ...(unasked ? [unasked] : [])] },
    guard: guardsOf(now, goals),
    keep,
    effortAtMost,
  };
  const adjustments = adjustmentsFor(now, goals);
  const before = valuesOfGoals(now.medians, goals);
  const suggestionsOf = (answers: readonly Answer[]): WantSuggestion[] =>
    inOrder(answers).map((answer) => {
      const after = trialOf(trials, answer).medians;
      const suggestion = suggestionOf(answer, before, valuesOfGoals(after, goals));
      if (!unasked) return suggestion;
      const { station } = unasked.objective;
      const change = after.figures(station).level - now.medians.figures(station).level;
      return { ...suggestion, loudness: { station: now.set.place.stations[station].name, change } };
    });
  const suggestions = suggestionsOf(answersTo(trials, adjustments, question)).filter(
    ({ isTradeOff, gain, effects }) => !isTradeOff && (gain >= LEAST_GAIN || effects.some(isNowMet)),
  );
  const helped = (want: number): boolean => suggestions.some(({ effects }) => helps(effects[want]));
  const unhelped = before.flatMap(({ isMet }, want) => (isMet === false && !helped(want) ? [want] : []));
  if (unhelped.length === 0) return suggestions.slice(0, most);
  const others = suggestionsOf(answersTo(trials, adjustments, { ...question, guard: [] })).filter(
    ({ isTradeOff, effects }) => isTradeOff && unhelped.some((want) => helps(effects[want])),
  );
  const tradeOffs = others.slice(0, MOST_TRADE_OFFS);
  return [...suggestions.slice(0, most - tradeOffs.length), ...tradeOffs];
}

/** Weight of a decibel of loudness that no want asks for, relative to the wants. Common practice, no source. */
const UNASKED = 0.1;

/** Where no station is wanted loud: the one received best, so that wants are not met at the cost of all loudness. */
function loudnessUnasked(now: Trial, goals: readonly WantGoal[]) {
  if (goals.some(({ want }) => want.kind === 'loudest')) return undefined;
  const margins = now.set.place.stations.map((_, station) => {
    const { isWithin, margin } = now.figures(station);
    return isWithin ? margin : Number.NEGATIVE_INFINITY;
  });
  const best = Math.max(...margins);
  return best > Number.NEGATIVE_INFINITY
    ? ({ objective: { of: 'loudness', station: margins.indexOf(best) }, weight: UNASKED } as const)
    : undefined;
}

const isNowMet = ({ before, after }: WantEffect): boolean => before.isMet === false && after.isMet === true;
const helps = (effect: WantEffect): boolean => effect.change >= LEAST_GAIN || isNowMet(effect);

/** What an answer does to every want. */
function suggestionOf(answer: Answer, before: readonly WantValue[], after: readonly WantValue[]): WantSuggestion {
  const effects = before.map((value, i) => ({ before: value, after: after[i], change: after[i].worth - value.worth }));
  return {
    code: 'want-suggestion',
    stage: stageOfChange(answer.changes[0]),
    settings: answer.settings,
    changes: answer.changes,
    effort: answer.effort,
    effects,
    gain: effects.reduce((sum, { change }) => sum + change, 0),
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

/** Turns of a knob first, then by gain for effort. */
function inOrder(answers: readonly Answer[]): Answer[] {
  const share = (answer: Answer): number => answer.scoreGain / (1 + costOf(answer));
  const isKnob = (answer: Answer): number => (costOf(answer) === EFFORT_COST.knob ? 0 : 1);
  return [...answers].sort((a, b) => isKnob(a) - isKnob(b) || share(b) - share(a));
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

/** All that the set can adjust, wave traps and directions for the stations to be kept out, turns for those out of range. */
function adjustmentsFor(now: Trial, goals: readonly WantGoal[]): Adjustable {
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
  const against = goals.flatMap(({ want, stations: [station, from] }) => {
    if (station === undefined) return [];
    if (want.kind === 'clear') return [disturberAt(now, from)];
    return now.figures(station).clearance < CLEAR ? [disturberOf(now, station)] : [];
  });
  const sets = (against.length > 0 ? against : [undefined]).map((one) =>
    adjustmentsOf(now.set, { against: one, beyond }),
  );
  const all = new Map<string, Adjustment>();
  for (const one of sets.flatMap((set) => set.all)) if (!all.has(one.id)) all.set(one.id, one);
  const isRange = goals.some(({ want, stations: [station] }) =>
    want.kind === 'band' ? true : station !== undefined && now.beyondDial(station) > 0,
  );
  const { together, forRange } = sets[0];
  return { all: [...all.values()], together: isRange ? [...together, ...forRange] : together };
}
