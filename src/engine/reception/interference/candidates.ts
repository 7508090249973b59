import type { Hertz, Ratio, Volts } from '../../units/quantities.ts';

/** Lists no longer than this are evaluated whole. */
export const SHORT_LIST = 64;
/** Frequencies at which the response is sampled for a longer list: evenly along the list's own, in order. */
const SAMPLES = 96;
/** Stations of a long list that are evaluated: those that the samples say are strongest at the detector, */
const STRONGEST = 40;
/** and as many as this of those close enough in frequency to whistle. */
const WHISTLING = 12;

/** The response of a set from aerial to detector, sampled: what tells far stations that matter from those that do not. */
export interface Sampled {
  readonly frequencies: readonly Hertz[];
  /** For each station, the samples below and above it. */
  readonly below: Int32Array;
  readonly above: Int32Array;
}

/** Where among its own frequencies the response of a set is sampled for a list of stations; at each where they share few. */
export function samplesAmong(stations: readonly Hertz[]): Sampled {
  const distinct = [...new Set(stations)].sort((a, b) => a - b);
  const last = distinct.length - 1;
  const count = Math.min(SAMPLES, distinct.length);
  const frequencies = Array.from(
    { length: count },
    (_, k) => distinct[Math.round((k * last) / Math.max(1, count - 1))],
  );
  const below = Int32Array.from(stations, (f) => frequencies.findLastIndex((at) => at <= f));
  const above = below.map((k, i) => (frequencies[k] === stations[i] ? k : k + 1));
  return { frequencies, below, above };
}

interface CandidateQuestion {
  readonly frequencies: readonly Hertz[];
  readonly sampled: Sampled;
  /** The tuned station's frequency, and which index is itself. */
  readonly carrier: Hertz;
  readonly isOwn: (index: number) => boolean;
  readonly emfs: Float64Array;
  readonly levelAt: (frequency: Hertz) => Ratio;
  /** Weaker at the detector than this is inaudible. */
  readonly audible: Volts;
  /** Beats of the two carriers above this are not heard. */
  readonly highestWhistle: Hertz;
}

/**
 * Indices of the stations to evaluate as interference at a tuned one, of a list of any length: each is ranked by its emf and
 * the greater of the samples about it, near the tuned one by the response there.
 * @returns them in the order of the list, and how many others would be heard by that measure
 */
export function candidatesAmong(question: CandidateQuestion): {
  readonly indices: readonly number[];
  readonly others: number;
} {
  const { frequencies, sampled, carrier, isOwn, emfs, levelAt, audible, highestWhistle } = question;
  const levels = Float64Array.from(sampled.frequencies, levelAt);
  const atCarrier = levelAt(carrier);
  // The samples on each side of the tuned station may both lie outside its resonance.
  const [low, high] = aboutOf(sampled.frequencies, carrier);
  const strongest = strongestOf(STRONGEST);
  const whistling = strongestOf(WHISTLING);
  let heard = 0;
  for (let i = 0; i < emfs.length; i++) {
    const f = frequencies[i];
    const level = Math.max(levels[sampled.below[i]], levels[sampled.above[i]]);
    const estimate = emfs[i] * (f > low && f < high ? Math.max(level, atCarrier) : level);
    if (!(estimate > audible) || isOwn(i)) continue;
    heard++;
    strongest.offer(i, estimate);
    if (Math.abs(f - carrier) < highestWhistle) whistling.offer(i, estimate);
  }
  const indices = [...new Set([...strongest.indices, ...whistling.indices])].sort((a, b) => a - b);
  return { indices, others: heard - indices.length };
}

/** Keeps so many of what it is offered, the strongest, and of equals the first. */
function strongestOf(count: number): {
  readonly indices: readonly number[];
  readonly offer: (index: number, strength: number) => void;
} {
  const indices: number[] = [];
  const strengths: number[] = [];
  return {
    indices,
    offer(index, strength) {
      if (indices.length === count) {
        if (!(strength > strengths[count - 1])) return;
        indices.pop();
        strengths.pop();
      }
      let at = indices.length;
      while (at > 0 && strength > strengths[at - 1]) at--;
      indices.splice(at, 0, index);
      strengths.splice(at, 0, strength);
    },
  };
}

/** The samples next to a frequency that are not it. */
function aboutOf(samples: readonly Hertz[], f: Hertz): readonly [Hertz, Hertz] {
  return [samples.findLast((at) => at < f) ?? 0, samples.find((at) => at > f) ?? Number.POSITIVE_INFINITY];
}
