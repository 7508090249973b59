import { type Warning, warning } from '../../facts/warning.ts';
import type { Decibels, Hertz, VoltsPerMetre } from '../../units/quantities.ts';
import { fieldFromLevel, fieldLevel, sumLevels } from '../levels.ts';
import { type AtmosphericTime, atmosphericNoise } from './atmospheric.ts';
import { type EnvironmentKind, manMadeNoise, type NoiseFigure } from './man-made.ts';

/**
 * Field strength level of noise with external noise figure F_a in a bandwidth: F_a + 20 log f(MHz) + 10 log b − 95.5,
 * dB(µV/m) r.m.s., for a short vertical aerial over good ground.
 * Source: Rec. ITU-R P.372; re-derived in reference/propagation-checks.json, "p372-En".
 */
export const noiseLevel = (figure: Decibels, frequency: Hertz, bandwidth: Hertz): Decibels =>
  figure + 20 * Math.log10(frequency / 1e6) + 10 * Math.log10(bandwidth) - 95.5;

/** The noise figure that gives a field strength in a bandwidth. */
export const noiseFigureOf = (field: VoltsPerMetre, frequency: Hertz, bandwidth: Hertz): Decibels =>
  fieldLevel(field) - noiseLevel(0, frequency, bandwidth);

export interface NoiseInput {
  readonly frequency: Hertz;
  /** Hz, above 0; 9 kHz takes in both sidebands of a broadcast channel. */
  readonly bandwidth: Hertz;
  readonly environment: EnvironmentKind;
  /** Season and time: adds the atmospheric noise. Left out, only man-made noise is counted. */
  readonly time?: AtmosphericTime;
  /** Noise measured at the place, V/m r.m.s. in its bandwidth: takes the place of the man-made figure. */
  readonly measured?: { readonly fieldStrength: VoltsPerMetre; readonly bandwidth: Hertz };
}

export interface Noise {
  /** Everything together, dB over kT₀b. */
  readonly externalNoiseFigure: Decibels;
  /** V/m r.m.s. in the bandwidth. */
  readonly fieldStrength: VoltsPerMetre;
  /** dB(µV/m). */
  readonly level: Decibels;
  /** How far the true median may lie, ± dB. */
  readonly spread: Decibels;
  readonly manMade?: NoiseFigure;
  readonly atmospheric?: NoiseFigure;
  readonly warnings: readonly Warning[];
}

/**
 * Radio noise at a place: man-made by surroundings (or as measured), and by season and time from lightning; powers added.
 * @param options frequency and bandwidth (Hz), surroundings, season and hour, or what was measured
 * @returns field strength of the noise (V/m, r.m.s.) and its parts
 * @throws RangeError for impossible input.
 */
export function noise({ frequency, bandwidth, environment, time, measured }: NoiseInput): Noise {
  if (!(bandwidth > 0 && bandwidth < Number.POSITIVE_INFINITY))
    throw new RangeError(`bandwidth must be above 0 Hz, got ${bandwidth}`);
  const manMade = manMadeNoise(frequency, environment);
  const atmospheric = time && atmosphericNoise(frequency, time);
  // A measurement holds all that was there when it was taken, so lightning is not counted twice.
  const figures = measured
    ? [noiseFigureOf(measured.fieldStrength, frequency, measured.bandwidth)]
    : [manMade.figure, ...(atmospheric ? [atmospheric.figure] : [])];
  const figure = sumLevels(figures);
  const level = noiseLevel(figure, frequency, bandwidth);
  const warnings: Warning[] = [];
  if (!measured && frequency < 300e3) warnings.push(warning('place.noise-extrapolated'));
  const lightning = atmospheric && !measured && atmospheric.figure > manMade.figure;
  return {
    externalNoiseFigure: figure,
    fieldStrength: fieldFromLevel(level),
    level,
    spread: measured ? 3 : lightning ? Math.max(atmospheric.above, 10) : 10,
    manMade: measured ? undefined : manMade,
    atmospheric: measured ? undefined : atmospheric,
    warnings,
  };
}
