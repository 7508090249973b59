import { maximum } from '../numerics/minimum.ts';

/** Lists no longer than this are tried whole. */
const SHORT = 16;
/** Places of a long list that are tried first. */
const FIRST_LOOK = 13;
/** Peaks of the first look that are closed in on. */
const PEAKS = 3;
/** Values tried to each side of a peak in the end. */
const NEAREST = 2;
/** Differences smaller than this are no reason to move further from the present value, dB. */
const SAME = 0.01;

/** The best of a list of values. */
export interface BestOfList {
  readonly index: number;
  readonly score: number;
}

export interface ListSearch {
  readonly count: number;
  readonly scoreAt: (index: number) => number;
  /** Where the list stands now, maybe between two of its values or outside; decides between equals. */
  readonly now?: number;
  /** Indices tried first, in rising order; default evenly along the list. */
  readonly firstLook?: readonly number[];
  /** Only about where it stands now: the whole list has been looked along before, with little else different. */
  readonly isNearNow?: boolean;
}

/**
 * The greatest score along a list of values in order. A short list is tried whole; of a long one some places along it,
 * then between the neighbours of the highest, and in the end every value next to the peak: the peaks of a tuned circuit
 * are broad against the first grid. Among equals within 0.01 dB the nearest to what there is now.
 * @returns undefined for an empty list.
 */
export function bestOfList({ count, scoreAt, now, firstLook, isNearNow }: ListSearch): BestOfList | undefined {
  if (count === 0) return undefined;
  const known = new Map<number, number>();
  const score = (index: number): number => {
    let value = known.get(index);
    if (value === undefined) known.set(index, (value = scoreAt(index)));
    return value;
  };
  if (count <= SHORT) for (let i = 0; i < count; i++) score(i);
  else {
    const grid = firstGrid({ count, now, firstLook, isNearNow });
    const peaks = grid
      .map((index, k) => ({ index, low: grid[Math.max(0, k - 1)], high: grid[Math.min(grid.length - 1, k + 1)] }))
      .filter(({ index, low, high }) => score(index) >= score(low) && score(index) >= score(high))
      .sort((a, b) => score(b.index) - score(a.index) || a.index - b.index)
      .slice(0, PEAKS);
    for (const peak of peaks) closeIn(score, peak, count);
  }
  const highest = Math.max(...known.values());
  const from = now ?? 0;
  const [index] = [...known.keys()]
    .filter((i) => score(i) >= highest - SAME)
    .sort((a, b) => Math.abs(a - from) - Math.abs(b - from) || a - b);
  return { index, score: score(index) };
}

function firstGrid({ count, now, firstLook, isNearNow }: Omit<ListSearch, 'scoreAt'>): number[] {
  const within = (index: number): number => Math.min(count - 1, Math.max(0, index));
  const stride = (count - 1) / (FIRST_LOOK - 1);
  const first =
    now !== undefined && isNearNow
      ? [within(now - stride), within(now + stride)]
      : (firstLook ?? Array.from({ length: FIRST_LOOK }, (_, k) => k * stride));
  const near = now === undefined ? [] : [within(now)];
  return [...new Set([...first, ...near].map(Math.round))].sort((a, b) => a - b);
}

/** Between two indices about a higher one, then step by step uphill until no neighbour is higher. */
function closeIn(
  score: (index: number) => number,
  peak: { index: number; low: number; high: number },
  count: number,
): void {
  let { index: middle, low, high } = peak;
  while (high - low > 2 * NEAREST) {
    const isLeft = middle - low > high - middle;
    const tried = isLeft ? (low + middle) >> 1 : (middle + high + 1) >> 1;
    if (tried === middle) break;
    if (score(tried) > score(middle)) {
      if (isLeft) high = middle;
      else low = middle;
      middle = tried;
    } else if (isLeft) low = tried;
    else high = tried;
  }
  for (let moved = true; moved; ) {
    moved = false;
    for (let step = -NEAREST; step <= NEAREST; step++) {
      const index = middle + step;
      if (index < 0 || index >= count || !(score(index) > score(middle))) continue;
      middle = index;
      moved = true;
      break;
    }
  }
}

/** Places along a continuous scale that are tried first, its ends among them. */
const ALONG = 12;
/** Of the whole scale. */
const NEAR_ENOUGH = 0.005;

/** The place from 0 to 1 along a scale where a score is greatest: twelve places, then Brent's method about the highest. */
export function bestAlong(scoreAt: (share: number) => number): number {
  const scores = Array.from({ length: ALONG }, (_, k) => scoreAt(k / (ALONG - 1)));
  const top = scores.indexOf(Math.max(...scores));
  const at = (k: number): number => Math.min(ALONG - 1, Math.max(0, k)) / (ALONG - 1);
  const inside = maximum(scoreAt, at(top - 1), at(top + 1), NEAR_ENOUGH);
  return inside.value > scores[top] ? inside.x : at(top);
}
