import { ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Farads, Henries, Hertz } from '../../units/quantities.ts';
import { preferredValue } from './preferred.ts';

export interface BandRequirement {
  readonly inductance: Henries;
  /** Lowest and highest frequency to cover. */
  readonly from: Hertz;
  readonly to: Hertz;
  /** The capacitor's own ends. */
  readonly min: Farads;
  readonly max: Farads;
  /** Across the coil whatever is done: its own capacitance, wiring, the aerial's share. Default 0. */
  readonly stray?: Farads;
}

export interface BandFit {
  readonly possible: boolean;
  /** Across the whole, in parallel with the coil; 0 if none. */
  readonly trimmer: Farads;
  /** In series with the capacitor; undefined if none. */
  readonly padder?: Farads;
  /** Band with trimmer and padder as computed, or as it is when nothing can be done. */
  readonly covers: readonly [Hertz, Hertz];
  /** Nearest bought values and the band with them. */
  readonly bought?: { readonly trimmer: Farads; readonly padder?: Farads; readonly covers: readonly [Hertz, Hertz] };
  /** Coil that would cover most of the wanted band with this capacitor, when this one cannot. */
  readonly betterInductance?: Henries;
  readonly target: BandRequirement;
  /** Why it cannot be done: the capacitor changes by too little, or there is too much across the coil already. */
  readonly cannot?: (
    | { readonly why: 'span'; readonly span: Farads; readonly needed: Farads }
    | { readonly why: 'too-much'; readonly needed: Farads }
  ) & {
    /** Coil that would cover most of the wanted band, and up to where it would. */
    readonly betterInductance: Henries;
    readonly reaches: Hertz;
  };
}

const resonance = (L: Henries, C: Farads): Hertz => 1 / (2 * Math.PI * Math.sqrt(L * C));
const series = (a: Farads, b?: Farads): Farads => (b === undefined ? a : (a * b) / (a + b));

/**
 * Trimmer T and padder P that make the ends of the capacitor the ends of the band: stray + T + CP/(C+P) = 1/(4π²f²L) at
 * both. The difference of the two fixes P (a quadratic), then T follows.
 * @param target inductance (H), ends of the band (Hz), ends of the capacitor and strays (F)
 * @returns trimmer and padder (F), and the band they give (Hz)
 * @throws RangeError unless 0 < from < to, 0 < min < max and the rest are positive.
 */
export function fitBand(target: BandRequirement): BandFit {
  const { inductance: L, from, to, min, max, stray = 0 } = target;
  if (!(L > 0) || !(from > 0 && to > from) || !(min > 0 && max > min) || !(stray >= 0))
    throw new ImpossibleValues({ code: 'tuned-circuit.sizes' });
  const cover = (trimmer: Farads, padder?: Farads): [Hertz, Hertz] => [
    resonance(L, stray + trimmer + series(max, padder)),
    resonance(L, stray + trimmer + series(min, padder)),
  ];
  const most = 1 / ((2 * Math.PI * from) ** 2 * L);
  const least = 1 / ((2 * Math.PI * to) ** 2 * L);
  const span = max - min;
  const difference = most - least;
  const asIs = cover(0);
  type Why = { readonly why: 'span'; readonly span: Farads } | { readonly why: 'too-much' };
  const cannot = (why: Why, needed: Farads): BandFit => {
    // With the least possible across the coil the ratio is greatest; put the low end where it was wanted.
    const betterInductance = 1 / ((2 * Math.PI * from) ** 2 * (max + stray));
    const reach = resonance(betterInductance, min + stray);
    return {
      possible: false,
      trimmer: 0,
      covers: asIs,
      betterInductance,
      target,
      cannot: { ...why, needed, betterInductance, reaches: reach },
    };
  };
  if (difference > span * (1 + 1e-9)) return cannot({ why: 'span', span }, difference);
  let padder: Farads | undefined;
  if (difference < span * (1 - 1e-3)) {
    const a = span - difference;
    const b = difference * (max + min);
    padder = (b + Math.sqrt(b * b + 4 * a * difference * max * min)) / (2 * a);
  }
  const trimmer = least - stray - series(min, padder);
  if (trimmer < -1e-3 * least) return cannot({ why: 'too-much' }, least);
  const T = Math.max(0, trimmer);
  const stock = {
    trimmer: T < 1e-12 ? 0 : preferredValue(T).nearest,
    padder: padder === undefined ? undefined : preferredValue(padder).nearest,
  };
  return {
    possible: true,
    trimmer: T,
    padder,
    covers: cover(T, padder),
    bought: { ...stock, covers: cover(stock.trimmer, stock.padder) },
    target,
  };
}
