import { byName } from '../numerics/lazily.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { uniform } from '../numerics/random.ts';
import { textHash } from '../numerics/text-hash.ts';
import type { Ratio } from '../units/quantities.ts';

/** How many sets are drawn. */
export const DRAWS = 2000;

/** One deviate for each of the equal shares that a normal distribution is cut into. */
let strata: Float64Array | undefined;
const levels = (): Float64Array =>
  (strata ??= Float64Array.from({ length: DRAWS }, (_, k) => normalQuantile((k + 0.5) / DRAWS)));

const cache = byName<Float64Array>(2100);

/**
 * Standard normal deviates of one input, one for each set drawn: a Latin hypercube (McKay, Beckman and Conover,
 * Technometrics 21, 1979), so that every input's own distribution is met exactly. Always the same for a name, whatever
 * the set: what is asked twice answers alike, and what two stations share is the same set for both.
 */
export const deviates = (name: string): Float64Array =>
  cache(name, () => {
    const shuffled = levels().slice();
    const next = uniform(textHash(name));
    for (let k = DRAWS - 1; k > 0; k--) {
      const j = Math.floor(next() * (k + 1));
      [shuffled[k], shuffled[j]] = [shuffled[j], shuffled[k]];
    }
    return shuffled;
  });

/** A figure's median and the range from its 5th to its 95th percentile. */
export interface Ranged {
  readonly median: number;
  /** 90 %. */
  readonly range: readonly [low: number, high: number];
}

/** A figure over all sets drawn, and in the set with every input in its middle. */
export interface Drawn extends Ranged {
  readonly middle: number;
}

/** Of draws in any order. */
export function rangedOf(draws: Float64Array): Ranged {
  const work = draws.slice();
  const last = work.length - 1;
  // Each search finds what lies to its left and to its right already parted.
  const median = quantile(work, 0.5, [0, last]);
  const middle = Math.floor(0.5 * work.length - 0.5);
  const low = quantile(work, 0.05, [0, middle]);
  const high = quantile(work, 0.95, [middle, last]);
  return { median, range: [low, high] };
}

/** The figure that a share of draws lies below; those from one place to another hold it. */
function quantile(work: Float64Array, share: number, [from, to]: readonly [number, number]): number {
  const x = Math.max(0, share * work.length - 0.5);
  const k = Math.min(work.length - 2, Math.floor(x));
  const t = x - k;
  const below = placed(work, k, from, to);
  if (t === 0) return below;
  const above = placed(work, k + 1, k + 1, to);
  // Silence is −∞ and must not become a number that is none.
  return below === above ? below : below * (1 - t) + above * t;
}

/**
 * The number that stands at a place when all between two places are sorted: put there, none greater before it and none
 * smaller behind it (Hoare, Communications of the ACM 4, 1961, algorithm 65).
 */
function placed(work: Float64Array, place: number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (low < high) {
    const pivot = work[(low + high) >> 1];
    let [i, j] = [low, high];
    while (i <= j) {
      while (work[i] < pivot) i++;
      while (pivot < work[j]) j--;
      if (i > j) break;
      const swap = work[i];
      work[i++] = work[j];
      work[j--] = swap;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return work[place];
}

/** Of all sets drawn, the share of which something holds. */
export function shareOfDraws(holds: (draw: number) => boolean): Ratio {
  let count = 0;
  for (let k = 0; k < DRAWS; k++) if (holds(k)) count++;
  return count / DRAWS;
}
