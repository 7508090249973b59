import fc from 'fast-check';
import type { SchemaNode } from '../../src/engine/fields/introspect.ts';
import type { Effort } from '../../src/engine/kinds/adjustment.ts';
import { MASKED } from '../../src/engine/reception/interference/separation.ts';
import { isHeard } from '../../src/engine/reception/verdict.ts';
import { description, type SetDescription } from '../../src/engine/set/description.ts';
import { isPlace, keptPath } from '../../src/engine/set/keep.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { withValueAt } from '../../src/engine/set/write.ts';
import { adjustmentsOf } from '../../src/engine/vary/adjustments.ts';
import { CLEAR } from '../../src/engine/vary/objective.ts';
import { optimise, trialOf } from '../../src/engine/vary/optimise.ts';
import type { Question } from '../../src/engine/vary/question.ts';
import { suggestForWants, type WantEffect } from '../../src/engine/vary/suggest-for-wants.ts';
import { gainForEffort } from '../../src/engine/vary/suggestion-order.ts';
import { type Trial, trialsOf } from '../../src/engine/vary/trial.ts';
import { goalsOf, valuesOfGoals, type WantValue } from '../../src/engine/vary/want-values.ts';
import { someSet } from './random-sets.ts';

const NAMES = ['Ash', 'Beech', 'Cedar'] as const;
const stations = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 60, max: 175 }), { minLength: 3, maxLength: 3 }),
    fc.array(fc.constantFrom('0.5 mV/m', '3 mV/m', '20 mV/m'), { minLength: 3, maxLength: 3 }),
  )
  .map(([channels, strengths]) =>
    NAMES.map((name, i) => ({ name, frequency: `${9 * channels[i]} kHz`, fieldStrength: strengths[i] })),
  );
const want = fc.oneof(
  fc.record({ kind: fc.constant('loudest'), station: fc.constantFrom(...NAMES) }),
  fc.record({
    kind: fc.constant('clear'),
    station: fc.constant('Ash'),
    from: fc.constantFrom('Beech', 'Cedar'),
    by: fc.constantFrom('15 dB', '30 dB', '50 dB'),
  }),
  fc.record({ kind: fc.constant('band'), from: fc.constantFrom('531 kHz', '700 kHz'), to: fc.constant('1602 kHz') }),
  fc.constant({ kind: 'most stations' }),
  fc.record({ kind: fc.constant('speech'), station: fc.constantFrom(...NAMES) }),
  fc.constant({ kind: 'fewest parts' }),
);
const kept = fc.subarray(['load', 'detector', 'arrangement.detectorTap', 'earth']);

/** A set with three stations, one to three wants, and some of it kept. */
export const wantingSet: fc.Arbitrary<Record<string, unknown>> = fc
  .tuple(someSet, stations, fc.uniqueArray(want, { minLength: 1, maxLength: 3, selector: ({ kind }) => kind }), kept)
  .filter(([set]) => set !== undefined)
  .map(([set, stations, wants, all]) => {
    // Not every arrangement has a tap.
    const keep = all.filter((text) => isPlace(description as unknown as SchemaNode, set, keptPath(text)!));
    return { ...set, place: { ...set!.place, stations }, wants, ...(keep.length > 0 ? { keep } : {}) };
  });

/** What comes of taking the first suggestion again and again. */
export interface Followed {
  /** Of each step, the least that a want gained, dB. */
  readonly leastGains: readonly number[];
  /** How often a station that a want is for was heard before any suggestion that was offered, and would not be after. */
  readonly silenced: number;
  /** How often a suggestion stood before one that gains more for the effort. */
  readonly outOfOrder: number;
  /** The most that any suggestion would still gain, dB. */
  readonly left: number;
  /** Places of the description that were changed. */
  readonly touched: readonly string[];
  /** What all wants together gained, dB. */
  readonly gained: number;
}

/**
 * Take the first suggestion that is no trade-off, so many times at most.
 * @throws Error for a description that does not read, before or after a suggestion
 */
export function follow(set: unknown, steps: number, effortAtMost: Effort): Followed {
  let written = set;
  const first = trialsOf(readOf(set)).now;
  const leastGains: number[] = [];
  const touched: string[] = [];
  let [silenced, outOfOrder] = [0, 0];
  for (let step = 0; ; step++) {
    const trials = trialsOf(readOf(written));
    const all = suggestForWants(trials, { effortAtMost, most: 100 });
    const isSilenced = ({ before, after }: WantEffect): boolean => isHeardIn(before) && !isHeardIn(after);
    silenced += all.filter(({ effects }) => effects.some(isSilenced)).length;
    const offered = all.filter(({ isTradeOff }) => !isTradeOff);
    const places = offered.map((one) => gainForEffort(one, one.gain));
    outOfOrder += places.filter((place, i) => i > 0 && place > places[i - 1]).length;
    const left = Math.max(0, ...offered.map(({ gain }) => gain));
    if (offered.length === 0 || step === steps)
      return { leastGains, silenced, outOfOrder, left, touched, gained: gainOf(first, trials.now.medians) };
    const [{ changes }] = offered;
    touched.push(...changes.map(({ path }) => path.join('.')));
    written = changes.reduce((before: unknown, { path, to }) => withValueAt(before, path, to), written);
    const goals = goalsOf(trials.now.set);
    const before = valuesOfGoals(trials.now.medians, goals);
    const after = valuesOfGoals(trialsOf(readOf(written)).now.medians, goals);
    leastGains.push(Math.min(...after.map(({ worth }, i) => worth - before[i].worth)));
  }
}

/**
 * The most that all adjustments up to an effort come to when they are searched together, by the optimiser itself and not
 * by the list of suggestions: no want worse, and what is heard of the stations wanted stays heard.
 * @returns what all wants together gain, dB
 */
export function bestTogether(set: unknown, effortAtMost: Effort): number {
  const trials = trialsOf(readOf(set));
  const { now } = trials;
  const goals = goalsOf(now.set);
  const heard = goals
    .flatMap(({ stations }) => stations.slice(0, 1))
    .filter((station) => isHeard(now.medians.figures(station).verdict));
  const { all } = adjustmentsOf(now.set);
  const question: Question = {
    objective: { of: 'goals', goals: goals.map(({ goal }) => goal) },
    keep: new Set(now.set.keep ?? []),
    effortAtMost,
    guard: [
      ...valuesOfGoals(now.medians, goals).map(({ worth }, i) => ({
        objective: { of: 'goals' as const, goals: [goals[i].goal] },
        atLeast: worth - 0.1,
      })),
      // As for the suggestions: a station wanted loud or for its speech stays as clear of others as it is.
      ...goals
        .filter(({ want }) => want.kind === 'loudest' || want.kind === 'speech')
        .map(({ stations: [station] }) => ({
          objective: { of: 'clearance' as const, station },
          atLeast: Math.min(now.medians.figures(station).clearance, CLEAR),
        })),
      ...heard.map((station) => ({ objective: { of: 'audibility' as const, station }, atLeast: 0 })),
      ...heard.map((station) => ({ objective: { of: 'clearance' as const, station }, atLeast: MASKED })),
    ],
  };
  const together = optimise(trials, all, question).map(({ settings }) => settings[0].adjustment);
  const [best] = together.length > 0 ? optimise(trials, all, { ...question, unknowns: { together } }) : [];
  return best ? gainOf(now, trialOf(trials, best).medians) : 0;
}

/** What all wants gain from one trial of a set to another, in medians, dB. */
function gainOf(now: Trial, after: Trial['medians']): number {
  const goals = goalsOf(now.set);
  const before = valuesOfGoals(now.medians, goals);
  // A station beyond the dial before and after has gained nothing.
  return valuesOfGoals(after, goals).reduce(
    (sum, { worth, figure }, i) =>
      figure === undefined && before[i].figure === undefined ? sum : sum + worth - before[i].worth,
    0,
  );
}

const isHeardIn = ({ verdict }: WantValue): boolean => verdict !== undefined && isHeard(verdict);

function readOf(written: unknown): SetDescription {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
