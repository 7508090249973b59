import type { Domain } from '../kinds/adjustment.ts';
import { lazily } from '../numerics/lazily.ts';
import { asWritten, type Value, valuesOf } from './values.ts';

/** Of a value, that far from one place to the next; of a linear scale, of its whole length a third of that. */
const STEP = 0.1;
/** Places to each side. */
const MOST_STEPS = 5;
/** Values judged at most, after the first two. */
const MOST_JUDGED = 3;
/** What promises less over the best judged is not worth judging, dB. */
const LEAST_PROMISE = 0.1;

/** Places along a scale, the one that is started from, and the value at each, rounded as it is written. */
interface Places {
  readonly isList: boolean;
  readonly from: number;
  readonly first: number;
  readonly last: number;
  readonly step: number;
  readonly at: (place: number) => Value;
}

/** Scores of a value; −∞ for one that is not allowed. */
interface Scores {
  /** What a search compares. */
  readonly estimate: (value: Value) => number;
  /** What counts in the end: slow to calculate. */
  readonly exact: (value: Value) => number;
}

/**
 * The best value of a domain about the one that a search found, with few evaluations of what counts in the end: the difference
 * between the two scores is taken to run straight between the values judged and beyond them, and the value that promises
 * most by that is judged in turn, while it promises more than there is.
 * @param start the search's best
 * @returns a value judged at least as good as the start
 */
export function refine(domain: Domain, start: Value, { estimate, exact }: Scores): Value {
  const scale = placesOf(domain, start);
  if (!scale) return start;
  const { from, isList, first, last, step, at } = scale;
  const valueAt = (place: number): Value => (place === from ? start : at(place));
  const searchedAt = lazily((place: number) => estimate(valueAt(place)));
  const known: { readonly place: number; readonly score: number }[] = [];
  const judge = (place: number): void => {
    if (!known.some((one) => one.place === place)) known.push({ place, score: exact(valueAt(place)) });
  };
  const within = (place: number): number => Math.min(last, Math.max(first, isList ? Math.round(place) : place));
  const places = [
    ...new Set(Array.from({ length: 2 * MOST_STEPS + 1 }, (_, k) => within(from + (k - MOST_STEPS) * step))),
  ];
  const adjacent = places.filter((place) => place !== from && Math.abs(place - from) <= 1.5 * step);

  judge(from);
  const isAllowed = known[0].score > Number.NEGATIVE_INFINITY;
  for (const place of isAllowed ? adjacent.sort((a, b) => searchedAt(b) - searchedAt(a)).slice(0, 1) : adjacent)
    judge(place);
  for (let k = 0; k < MOST_JUDGED; k++) {
    const off = known
      .filter(({ score }) => score > Number.NEGATIVE_INFINITY)
      .map(({ place, score }) => [place, score - searchedAt(place)] as const);
    if (off.length === 0) break;
    const promised = (place: number): number => searchedAt(place) + straight(off, place);
    const best = places
      .filter((place) => !known.some((one) => one.place === place))
      .reduce<number | undefined>((a, b) => (a === undefined || promised(b) > promised(a) ? b : a), undefined);
    const reached = Math.max(...known.map(({ score }) => score));
    if (best === undefined || !(promised(best) > reached + LEAST_PROMISE)) break;
    judge(best);
  }
  return valueAt(known.reduce((a, b) => (b.score > a.score ? b : a)).place);
}

/** On the straight line through the two points nearest to a place; one alone serves everywhere. */
function straight(points: readonly (readonly [x: number, y: number])[], x: number): number {
  const [[x0, y0], next] = points.toSorted((p, q) => Math.abs(p[0] - x) - Math.abs(q[0] - x));
  return next ? y0 + ((next[1] - y0) * (x - x0)) / (next[0] - x0) : y0;
}

function placesOf(domain: Domain, { value }: Value): Places | undefined {
  if (domain.is === 'choice' || typeof value !== 'number') return undefined;
  if (domain.is === 'real') {
    const { from, to, scale, digits, unit } = domain;
    const isRatio = scale === 'ratio';
    return {
      isList: false,
      from: isRatio ? Math.log(value) : value,
      first: isRatio ? Math.log(from) : from,
      last: isRatio ? Math.log(to) : to,
      step: isRatio ? STEP : ((to - from) * STEP) / 3,
      at: (place) => asWritten(isRatio ? Math.exp(place) : place, digits, unit),
    };
  }
  const list = valuesOf(domain)!;
  const from = list.findIndex((one) => one.value === value);
  if (from < 0) return undefined;
  const step = domain.is === 'whole' ? Math.max(1, Math.round(STEP * value)) : 1;
  return { isList: true, from, first: 0, last: list.length - 1, step, at: (place) => list[place] };
}
