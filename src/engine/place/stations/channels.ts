import type { Hertz } from '../../units/quantities.ts';

/** Spacing of broadcast channels: 9 kHz in ITU Regions 1 and 3, 10 kHz in the Americas. */
export type Raster = 9000 | 10000;
export type Band = 'long wave' | 'medium wave';

/** First and last carrier. Source: Geneva 1975 (GE75) and Rio de Janeiro 1981 plans, 47 CFR 73.14; from memory. */
const CHANNELS: Readonly<Record<Raster, Partial<Record<Band, readonly [Hertz, Hertz]>>>> = {
  9000: { 'long wave': [153e3, 279e3], 'medium wave': [531e3, 1602e3] },
  10000: { 'medium wave': [530e3, 1700e3] },
};

/** Every carrier frequency of a band, Hz; empty where the raster has none (no long wave in the Americas). */
export function channels(raster: Raster, band: Band): Hertz[] {
  const ends = CHANNELS[raster][band];
  if (!ends) return [];
  return Array.from({ length: Math.round((ends[1] - ends[0]) / raster) + 1 }, (_, n) => ends[0] + n * raster);
}

/** Both rasters' carriers are whole multiples of their spacing. @param tolerance Hz; default 100. */
export const onRaster = (frequency: Hertz, raster: Raster, tolerance: Hertz = 100): boolean =>
  Math.abs(frequency - Math.round(frequency / raster) * raster) <= tolerance;

/** The nearest carrier in use on a raster. */
export function nearestChannel(frequency: Hertz, raster: Raster): Hertz {
  const all = (['long wave', 'medium wave'] as const).flatMap((band) => channels(raster, band));
  return all.reduce((best, f) => (Math.abs(f - frequency) < Math.abs(best - frequency) ? f : best));
}

/** The raster that more of the frequencies lie on; 9 kHz when they do not say. */
export function guessRaster(frequencies: readonly Hertz[]): Raster {
  const count = (raster: Raster) => frequencies.filter((f) => onRaster(f, raster)).length;
  return count(10000) > count(9000) ? 10000 : 9000;
}

/** Which band a frequency belongs to, by the ITU allocations widened to what is in use. */
export function bandOf(frequency: Hertz): Band | undefined {
  if (frequency >= 148.5e3 && frequency <= 283.5e3) return 'long wave';
  if (frequency >= 520e3 && frequency <= 1710e3) return 'medium wave';
  return undefined;
}
