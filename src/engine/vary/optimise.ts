import { type Adjustment, type Edit, EFFORT_COST, EFFORTS, type Path, partAt } from '../kinds/adjustment.ts';
import type { SetDescription } from '../set/description.ts';
import { keptPath, overlaps } from '../set/keep.ts';
import { valueAtPath } from '../set/write.ts';
import { figureOf, isAllowed, scoreOf } from './objective.ts';
import type { Answer, Change, Guard, Question } from './question.ts';
import { refine } from './refine.ts';
import { bestAlong, bestOfList } from './search.ts';
import { isBuilt, type Trial, type Trials } from './trial.ts';
import { asWritten, type Value, valuesOf } from './values.ts';

/** Differences smaller than this are none between answers: then the smaller effort and the smaller change win, dB. */
const TIE = 0.1;

/** Of a list that is in no order, so many of the highest values are judged by medians. */
const FINALISTS = 3;
/** A gain in the median this near to that of the search leaves the best value where it is, dB. */
const NEAR = 0.3;
/** The median of another detector, with spreads of its own, may lie so much nearer to its middle, dB. */
const DETECTORS_DIFFER = 4;
/** Differences smaller than this are none between two ways uphill, dB. */
const SAME = 0.01;

/**
 * The best value of adjustments of a set for an objective. The search goes by the set with every input in its middle;
 * what it finds is judged, put in order and given in medians, as a reception shows them.
 * One at a time: the best value of each, everything else unchanged. Together: the best values of those named.
 * What is kept is left alone, what a guard forbids is not answered, and an answer is never worse than what there is.
 * The same question has the same answer, whoever asks it.
 * @param trials of the set
 * @param adjustments what may be changed
 * @param question what is wanted, what is kept, what must not get worse
 * @returns answers that gain anything, best first.
 */
export function optimise(trials: Trials, adjustments: readonly Adjustment[], question: Question): readonly Answer[] {
  const free = adjustments.filter((adjustment) => isFree(adjustment, question));
  const { unknowns = 'one at a time' } = question;
  const searched: Question = { ...question, guard: searchedGuard(trials.now, question) };
  const search: Search = { trials, question, searched, start: scoreOf(trials.now, searched) };
  const answers =
    unknowns === 'one at a time'
      ? free.map((adjustment) => bestOne(search, adjustment))
      : [bestTogether(search, free, unknowns.together)];
  return ranked(answers.filter((answer) => answer !== undefined));
}

/** A question and what the search for its answer goes by. */
interface Search {
  readonly trials: Trials;
  readonly question: Question;
  readonly searched: Question;
  /** Of what there is, by the search. */
  readonly start: number;
}

/** Guards at the figures that a search goes by: no stricter there than in the median, which judges in the end. */
const searchedGuard = (now: Trial, question: Question): readonly Guard[] =>
  (question.guard ?? []).map(({ objective, atLeast }) => {
    const above = (figureOf(now, objective) ?? 0) - (figureOf(now.medians, objective) ?? 0);
    return { objective, atLeast: above < 0 ? atLeast + above : atLeast };
  });

function isFree(adjustment: Adjustment, { keep, effortAtMost }: Question): boolean {
  if (effortAtMost && EFFORTS.indexOf(adjustment.effort) > EFFORTS.indexOf(effortAtMost)) return false;
  return !isKept([adjustment], keep);
}

/** Whether any place lies in what is kept, by part, by id or by place, or around it. */
function isKept(edits: readonly { readonly path: Path; readonly id?: string }[], keep: Question['keep']): boolean {
  if (!keep || keep.size === 0) return false;
  const places = [...keep].map(keptPath).filter((place) => place !== undefined);
  return edits.some(({ path, id }) => {
    const part = partAt(path);
    return (
      (id !== undefined && keep.has(id)) ||
      (part !== undefined && keep.has(part)) ||
      places.some((place) => overlaps(place, path))
    );
  });
}

/** All that a value of an adjustment writes. */
export const editsFor = (adjustment: Adjustment, { written, value }: Value): readonly Edit[] =>
  adjustment.edits?.(written, value) ?? [{ path: adjustment.path, to: written }];

/** A search's way to a score: an adjustment's values, with others' values held. */
function scorer({ trials, searched, start }: Search, fixed: readonly Edit[] = []) {
  return (adjustment: Adjustment, value: Value): number => {
    const edits = editsFor(adjustment, value);
    // Taps that go along with turns may be kept.
    if (isKept(edits, searched.keep)) return Number.NEGATIVE_INFINITY;
    const outcome = trials.with([...fixed, ...edits]);
    return isBuilt(outcome) ? scoreOf(outcome, searched, start) : Number.NEGATIVE_INFINITY;
  };
}

/** The best value of one adjustment. @returns undefined where none can be built. */
function bestValue(
  adjustment: Adjustment,
  scoreAt: (value: Value) => number,
  from: unknown = adjustment.now,
  isNearNow = false,
): { readonly value: Value; readonly score: number } | undefined {
  const { domain } = adjustment;
  const list = valuesOf(domain);
  if (list === undefined) return domain.is === 'real' ? bestReal(domain, scoreAt) : undefined;
  const best = bestOfList({
    count: list.length,
    scoreAt: (index) => scoreAt(list[index]),
    now: typeof from === 'number' ? placeIn(list, from) : undefined,
    isNearNow,
    firstLook: domain.is === 'whole' && domain.scale === 'ratio' ? ratioPlaces(list.length, domain.from) : undefined,
  });
  return best && best.score > Number.NEGATIVE_INFINITY ? { value: list[best.index], score: best.score } : undefined;
}

/** Indices of whole numbers evenly along a ratio scale, with a few more at the high end. */
function ratioPlaces(count: number, from: number): number[] {
  const to = from + count - 1;
  return Array.from({ length: 13 }, (_, k) => {
    // Between a ratio and an even scale: hills may be as narrow as some turns at either end.
    const t = k / 12;
    const ratio = from * (to / from) ** t;
    const even = from + (to - from) * t;
    return (ratio + even) / 2 - from;
  });
}

function placeIn(list: readonly Value[], value: number): number {
  const next = list.findIndex((one) => (one.value as number) >= value);
  if (next < 0) return list.length;
  const [at, before] = [list[next].value as number, list[next - 1]?.value as number | undefined];
  return at === value || before === undefined ? next : next - (at - value) / (at - before);
}

/** Along a continuous scale; what is written is rounded, so the roundings next to the best are tried as well. */
function bestReal(
  domain: Extract<Adjustment['domain'], { is: 'real' }>,
  scoreAt: (value: Value) => number,
): { readonly value: Value; readonly score: number } | undefined {
  const { from, to, scale, unit, digits } = domain;
  const at = (share: number): number => (scale === 'ratio' ? from * (to / from) ** share : from + (to - from) * share);
  const best = at(bestAlong((share) => scoreAt(asWritten(at(share), digits + 2, unit))));
  const grain = 10 ** (Math.floor(Math.log10(best)) - digits + 1);
  const candidates = [-1, -0.5, 0, 0.5, 1]
    .map((by) => best + by * grain)
    .filter((x) => x >= from && x <= to)
    .concat([from, to])
    .map((x) => asWritten(x, digits, unit))
    .map((value) => ({ value, score: scoreAt(value) }));
  const top = candidates.reduce((a, b) => (b.score > a.score ? b : a));
  return top.score > Number.NEGATIVE_INFINITY ? top : undefined;
}

function bestOne(search: Search, adjustment: Adjustment): Answer | undefined {
  const scoreAt = scorer(search);
  const score = (value: Value): number => scoreAt(adjustment, value);
  const judge = (value: Value): Answer | undefined => answerOf(search, [{ adjustment, value }]);
  const { domain } = adjustment;
  if (domain.is === 'choice')
    return ranked(finalists(search, adjustment, score).flatMap((value) => judge(value) ?? []))[0];
  const best = bestValue(adjustment, score);
  const promised = best && promise(search, best.score);
  if (!best || promised === undefined) return undefined;
  const answer = judge(best.value);
  if (Math.abs(promised - (answer?.scoreGain ?? 0)) < NEAR) return answer;
  const medianScore = (value: Value): number => judge(value)?.score ?? Number.NEGATIVE_INFINITY;
  return judge(refine(domain, best.value, { estimate: score, exact: medianScore }));
}

/** By how much a search's best is better than what there is; undefined where that is not worth judging. */
function promise({ searched, start }: Search, score: number): number | undefined {
  const gain = score - start;
  return isAllowed(score) && gain > (searched.leastPromise ?? 0) ? gain : undefined;
}

/** Of a list in no order the highest few, as near to each other as medians may put them in another order. */
function finalists(search: Search, { domain, part }: Adjustment, scoreAt: (value: Value) => number): Value[] {
  const allowance = part === 'detector' ? DETECTORS_DIFFER : 0;
  const all = (valuesOf(domain) ?? []).map((value) => ({ value, score: scoreAt(value) }));
  const highest = Math.max(...all.map(({ score }) => score));
  return all
    .filter(({ score }) => promise(search, score + allowance) !== undefined && score > highest - NEAR - allowance)
    .sort((a, b) => b.score - a.score)
    .slice(0, FINALISTS)
    .map(({ value }) => value);
}

interface Chosen {
  readonly adjustment: Adjustment;
  readonly value: Value;
}

/** Rounds of one adjustment after the other. */
const ROUNDS = 4;

/**
 * Several adjustments at once: from the best of each alone, one after the other is made best until nothing is gained.
 * Every adjustment begins once, so a ridge is climbed from both sides.
 */
function bestTogether(search: Search, free: readonly Adjustment[], ids: readonly string[]): Answer | undefined {
  const unknown = ids.flatMap((id) => free.filter((adjustment) => adjustment.id === id));
  if (unknown.length < ids.length || unknown.length === 0) return undefined;
  const climbed = unknown.map((first) => {
    const settingOf = new Map<string, Chosen>();
    let reached = search.start;
    const order = [first, ...unknown.filter((other) => other !== first)];
    for (let round = 0; round < ROUNDS; round++) {
      const before = reached;
      for (const adjustment of order) {
        const fixed = order.flatMap((other) => {
          const value = other === adjustment ? undefined : settingOf.get(other.id);
          return value ? editsFor(other, value.value) : [];
        });
        const score = scorer(search, fixed);
        const now = settingOf.get(adjustment.id)?.value.value ?? adjustment.now;
        const best = bestValue(adjustment, (value) => score(adjustment, value), now, round > 0);
        if (!best || best.score <= reached) continue;
        reached = best.score;
        settingOf.set(adjustment.id, { adjustment, value: best.value });
      }
      if (round > 0 && reached - before < TIE / 2) break;
    }
    return { reached, settings: order.flatMap(({ id }) => settingOf.get(id) ?? []) };
  });
  const { reached, settings } = climbed.reduce((a, b) => (b.reached > a.reached + SAME ? b : a));
  return promise(search, reached) === undefined ? undefined : answerOf(search, settings);
}

/** Judged by medians. @returns undefined for what gains nothing or is not allowed. */
function answerOf({ trials, question }: Search, settings: readonly Chosen[]): Answer | undefined {
  if (settings.length === 0) return undefined;
  const edits = settings.flatMap(({ adjustment, value }) => editsFor(adjustment, value));
  const outcome = trials.with(edits);
  if (!isBuilt(outcome)) return undefined;
  const [start, end] = [trials.now.medians, outcome.medians];
  const [before, score] = [scoreOf(start, question), scoreOf(end, question)];
  if (!isAllowed(score) || !(score > before)) return undefined;
  const [was, then] = [figureOf(start, question.objective), figureOf(end, question.objective)];
  return {
    settings: settings.map(({ adjustment, value }) => ({
      adjustment: adjustment.id,
      from: adjustment.now,
      to: value.value,
    })),
    changes: settings.flatMap(({ adjustment, value }) => changesOf(trials.now.set, adjustment, value)),
    gain: was === undefined || then === undefined ? undefined : then - was,
    score,
    scoreGain: score - before,
    effort: settings
      .map(({ adjustment }) => adjustment.effort)
      .reduce((a, b) => (EFFORT_COST[b] > EFFORT_COST[a] ? b : a)),
  };
}

const changesOf = (set: SetDescription, adjustment: Adjustment, value: Value): Change[] =>
  editsFor(adjustment, value).map(({ path, to }) => ({
    adjustment: adjustment.id,
    part: partAt(path) ?? adjustment.part,
    path,
    from: valueAtPath(set, path),
    to,
    effort: adjustment.effort,
  }));

/** Effort of all of an answer: two taps are more than one. */
const costOf = ({ changes }: Answer): number => costOfChanges(changes);

/** The same of changes by themselves. */
export const costOfChanges = (changes: readonly Change[]): number =>
  [...new Map(changes.map((change) => [change.adjustment, change])).values()].reduce(
    (sum, { effort }) => sum + EFFORT_COST[effort],
    0,
  );

/** The set as an answer would have it. @throws RangeError for edits of another set. */
export function trialOf(trials: Trials, { changes }: Pick<Answer, 'changes'>): Trial {
  const outcome = trials.with(changes);
  if (!isBuilt(outcome)) throw new RangeError(outcome.notBuildable);
  return outcome;
}

/** Best first; within a tie the smaller effort, then the fewer and smaller changes, then the name. */
export function ranked(answers: readonly Answer[]): Answer[] {
  const rest = [...answers];
  const order: Answer[] = [];
  while (rest.length > 0) {
    const highest = Math.max(...rest.map(({ scoreGain }) => scoreGain));
    const tied = rest.filter(({ scoreGain }) => scoreGain >= highest - TIE);
    const first = tied.reduce((a, b) => (comesBefore(b, a) ? b : a));
    order.push(first);
    rest.splice(rest.indexOf(first), 1);
  }
  return order;
}

function comesBefore(a: Answer, b: Answer): boolean {
  const [costA, costB] = [costOf(a), costOf(b)];
  if (costA !== costB) return costA < costB;
  if (a.settings.length !== b.settings.length) return a.settings.length < b.settings.length;
  const [sizeA, sizeB] = [sizeOf(a), sizeOf(b)];
  if (Math.abs(sizeA - sizeB) > 1e-9) return sizeA < sizeB;
  return a.settings[0].adjustment < b.settings[0].adjustment;
}

const sizeOf = ({ settings }: Answer): number =>
  settings.reduce(
    (sum, { from, to }) =>
      sum +
      (typeof from === 'number' && typeof to === 'number' && from > 0 && to > 0 ? Math.abs(Math.log(to / from)) : 1),
    0,
  );
