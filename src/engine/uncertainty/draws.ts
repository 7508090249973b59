import { normalQuantile } from '../numerics/normal.ts';
import { uniform } from '../numerics/random.ts';
import { textHash } from '../numerics/text-hash.ts';

/** How many sets are drawn. */
export const DRAWS = 2000;

/** One deviate for each of the equal shares that a normal distribution is cut into. */
let strata: Float64Array | undefined;
const levels = (): Float64Array =>
  (strata ??= Float64Array.from({ length: DRAWS }, (_, k) => normalQuantile((k + 0.5) / DRAWS)));

const MOST_KEPT = 2100;
const known = new Map<string, Float64Array>();

/**
 * Standard normal deviates of one input, one for each set drawn: a Latin hypercube (McKay, Beckman and Conover,
 * Technometrics 21, 1979), so that every input's own distribution is met exactly. Always the same for a name, whatever
 * the set: what is asked twice answers alike, and what two stations share is the same set for both.
 */
export function deviates(name: string): Float64Array {
  let found = known.get(name);
  if (found) return found;
  found = levels().slice();
  const next = uniform(textHash(name));
  for (let k = DRAWS - 1; k > 0; k--) {
    const j = Math.floor(next() * (k + 1));
    [found[k], found[j]] = [found[j], found[k]];
  }
  if (known.size >= MOST_KEPT) known.clear();
  known.set(name, found);
  return found;
}

/** A figure's median and the range from its 5th to its 95th percentile. */
export interface Ranged {
  readonly median: number;
  /** 90 %. */
  readonly range: readonly [low: number, high: number];
}

/** A figure over all sets drawn, beside what it is in the set with every input in its middle. */
export interface Drawn extends Ranged {
  readonly middle: number;
}

/** Of draws in any order. */
export function rangedOf(draws: Float64Array): Ranged {
  const sorted = draws.slice().sort();
  const at = (share: number): number => {
    const x = Math.max(0, share * sorted.length - 0.5);
    const k = Math.min(sorted.length - 2, Math.floor(x));
    const t = x - k;
    // Silence is −∞ and must not become a number that is none.
    return t === 0 ? sorted[k] : sorted[k] === sorted[k + 1] ? sorted[k] : sorted[k] * (1 - t) + sorted[k + 1] * t;
  };
  return { median: at(0.5), range: [at(0.05), at(0.95)] };
}
