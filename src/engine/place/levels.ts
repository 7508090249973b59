import type { Decibels, VoltsPerMetre, Watts } from '../units/quantities.ts';

/** Field strength to its level. @returns dB over 1 µV/m; −∞ for no field. */
export const fieldLevel = (field: VoltsPerMetre): Decibels => 120 + 20 * Math.log10(field);
/** Level in dB over 1 µV/m to field strength. */
export const fieldFromLevel = (level: Decibels): VoltsPerMetre => 1e-6 * 10 ** (level / 20);

/**
 * Power to dB over 1 kW e.m.r.p., which on perfect ground gives 300 mV/m at 1 km (cymomotive force 300 V).
 * Source: Rec. ITU-R P.368-10 conditions; reference/propagation-checks.json, "conv-1".
 */
export const powerLevel = (power: Watts): Decibels => 10 * Math.log10(power / 1000);

/** Sum of levels of things that do not know each other's phase. Empty or all −∞ gives −∞. */
export const sumLevels = (levels: readonly Decibels[]): Decibels => levels.reduce(sumOfTwo, Number.NEGATIVE_INFINITY);

/** The same of two; −∞ for one that is not there. */
export function sumOfTwo(a: Decibels, b: Decibels): Decibels {
  const top = Math.max(a, b);
  if (!(top > Number.NEGATIVE_INFINITY)) return Number.NEGATIVE_INFINITY;
  return top + 10 * Math.log10(1 + 10 ** ((Math.min(a, b) - top) / 10));
}
