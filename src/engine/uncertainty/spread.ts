import { normalQuantile } from '../numerics/normal.ts';

/** Standard normal deviate with one case in twenty above it: ± this is the 90 % range. */
export const NINETY = normalQuantile(0.95);

/**
 * How an unmeasured figure is distributed: median and 90 % range, log-normal or normal, each side with its own width
 * where they differ (a split normal, its median kept).
 */
export interface Spread {
  /** Whether the three are factors or differences, and of what: a factor's middle is 1 for as calculated. */
  readonly kind: 'factor' | 'difference';
  /** 5th percentile, median and 95th percentile. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** Who says so; `COMMON_PRACTICE` where nobody does. */
  readonly source: string;
}

export const COMMON_PRACTICE = 'common practice, no source';

/** ×/÷ a factor about a middle. */
export const timesOrOver = (factor: number, source: string, middle = 1): Spread => ({
  kind: 'factor',
  low: middle / factor,
  middle,
  high: middle * factor,
  source,
});

/** ± an amount about a middle. */
export const plusOrMinus = (amount: number, source: string, middle = 0): Spread => ({
  kind: 'difference',
  low: middle - amount,
  middle,
  high: middle + amount,
  source,
});

/** From its 5th to its 95th percentile, with the median between. @throws RangeError when they do not rise. */
export function between(
  kind: Spread['kind'],
  [low, middle, high]: readonly [number, number, number],
  source: string,
): Spread {
  if (!(low <= middle && middle <= high) || (kind === 'factor' && !(low > 0)))
    throw new RangeError(`a spread must rise from low to high, got ${low}, ${middle}, ${high}`);
  return { kind, low, middle, high, source };
}

/** The figure at a standard normal deviate. */
export function valueAtDeviate({ kind, low, middle, high }: Spread, deviate: number): number {
  const side = deviate < 0 ? low : high;
  const share = Math.abs(deviate) / NINETY;
  return kind === 'factor' ? middle * (side / middle) ** share : middle + (side - middle) * share;
}
