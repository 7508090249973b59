import type { Decibels, Hertz } from '../../units/quantities.ts';

/** Middles of the one-third octaves in which programme, noise and threshold are compared, Hz (IEC 61260 nominal). */
export const THIRD_OCTAVES: readonly Hertz[] = [
  100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
];

/** Width of a one-third octave, Hz. */
export const bandWidth = (middle: Hertz): Hertz => middle * (2 ** (1 / 6) - 2 ** (-1 / 6));

/** Level of several sounds together. */
export const powerSum = (levels: readonly Decibels[]): Decibels =>
  10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));

/** Frequency weighting A, dB, 0 at 1 kHz (IEC 61672-1, from its pole frequencies). */
export function aWeighting(f: Hertz): Decibels {
  const gain = (x: number) => {
    const s = x * x;
    return (
      (12194.217 ** 2 * s * s) /
      ((s + 20.598997 ** 2) * Math.sqrt((s + 107.65265 ** 2) * (s + 737.86223 ** 2)) * (s + 12194.217 ** 2))
    );
  };
  return 20 * Math.log10(gain(f) / gain(1000));
}
