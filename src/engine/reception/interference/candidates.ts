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

interface Asked {
  readonly frequencies: readonly Hertz[];
  readonly sampled: Sampled;
  /** The wanted station's frequency, and the list index it has; negative where it is not in the list. */
  readonly wanted: Hertz;
  readonly emfs: Float64Array;
  readonly levelAt: (frequency: Hertz) => Ratio;
  /** Weaker at the detector than this, nobody hears it. */
  readonly audible: Volts;
  /** Beats of the two carriers above this are not heard. */
  readonly highestWhistle: Hertz;
}

/**
 * Indices of the stations worth evaluating beside a wanted one, of a list of any length: each is ranked by its emf and
 * the greater of the samples about it, near the wanted one by the response there.
 * @returns them, and how many others would be heard by that measure
 */
export function candidatesAmong(asked: Asked): { readonly chosen: readonly number[]; readonly others: number } {
  const { frequencies, sampled, wanted, emfs, levelAt, audible, highestWhistle } = asked;
  const levels = sampled.frequencies.map(levelAt);
  const atWanted = levelAt(wanted);
  // The samples beside the wanted station may both lie outside its resonance.
  const [low, high] = aboutOf(sampled.frequencies, wanted);
  const estimates = emfs.map((emf, i) => {
    const f = frequencies[i];
    const level = Math.max(levels[sampled.below[i]], levels[sampled.above[i]]);
    return emf * (f > low && f < high ? Math.max(level, atWanted) : level);
  });
  const heard: number[] = [];
  for (let i = 0; i < estimates.length; i++) if (estimates[i] > audible) heard.push(i);
  heard.sort((a, b) => estimates[b] - estimates[a]);
  const chosen = new Set(heard.slice(0, STRONGEST));
  for (const i of heard.filter((i) => Math.abs(frequencies[i] - wanted) < highestWhistle).slice(0, WHISTLING))
    chosen.add(i);
  return { chosen: [...chosen], others: heard.length - chosen.size };
}

/** The samples next to a frequency that are not it. */
function aboutOf(samples: readonly Hertz[], f: Hertz): readonly [Hertz, Hertz] {
  return [samples.findLast((at) => at < f) ?? 0, samples.find((at) => at > f) ?? Number.POSITIVE_INFINITY];
}
