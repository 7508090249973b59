import type { Decibels, Hertz } from '../../units/quantities.ts';

/** Surroundings, from the most man-made noise to the least. */
export const ENVIRONMENT_KINDS = ['city', 'residential', 'rural', 'quiet rural'] as const;
export type EnvironmentKind = (typeof ENVIRONMENT_KINDS)[number];

/** Median constants c and d, and deciles, dB. Source: Rec. ITU-R P.372, reference/propagation-checks.json "p372-manmade". */
const MAN_MADE: Readonly<Record<EnvironmentKind, { c: number; d: number; above: number; below: number }>> = {
  city: { c: 76.8, d: 27.7, above: 11, below: 6.7 },
  residential: { c: 72.5, d: 27.7, above: 10.6, below: 5.3 },
  rural: { c: 67.2, d: 27.7, above: 9.2, below: 4.6 },
  'quiet rural': { c: 53.6, d: 28.6, above: 9.2, below: 4.6 },
};

export interface NoiseFigure {
  /** External noise figure F_a, dB over kT₀b. */
  readonly figure: Decibels;
  /** One case in ten is this much above the median, or below it, dB. */
  readonly above: Decibels;
  readonly below: Decibels;
}

/**
 * Man-made noise out of doors, F_am = c − d·log f (MHz), by Rec. ITU-R P.372. Stated for 0.3 to 250 MHz; on long wave it
 * is carried on. Indoors it is often worse than "city".
 * @throws RangeError for a frequency not above 0 or an unknown environment.
 */
export function manMadeNoise(frequency: Hertz, environment: EnvironmentKind): NoiseFigure {
  if (!(frequency > 0 && frequency < Number.POSITIVE_INFINITY))
    throw new RangeError(`frequency must be above 0 Hz, got ${frequency}`);
  if (!Object.hasOwn(MAN_MADE, environment))
    throw new RangeError(`unknown environment "${environment}": expected one of ${ENVIRONMENT_KINDS.join(', ')}`);
  const { c, d, above, below } = MAN_MADE[environment];
  return { figure: c - d * Math.log10(frequency / 1e6), above, below };
}
