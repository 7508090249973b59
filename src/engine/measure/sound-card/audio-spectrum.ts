import { powerSpectrum } from '../../numerics/power-spectrum.ts';
import { bandWidth, powerSum, THIRD_OCTAVES } from '../../reception/hearing/third-octaves.ts';
import type { Decibels, Hertz } from '../../units/quantities.ts';

/** Level of a sound in one third of an octave. */
export interface BandLevel {
  /** Middle of the band, Hz. */
  readonly frequency: Hertz;
  readonly level: Decibels;
}

/** Why a recording says nothing, or may mislead. */
export type SpectrumFault = 'too-short' | 'silent' | 'clipped';

/** A recording by third octaves, against a sine that just fills the input. */
export interface AudioSpectrum {
  readonly bands: readonly BandLevel[];
  /** Of all bands together. */
  readonly level: Decibels;
  readonly faults: readonly SpectrumFault[];
}

/** A recording is compared that lasts at least so long: speech pauses. */
const LEAST_SECONDS = 3;
/** The narrowest band, at 100 Hz, has several bins of this width, Hz. */
const WIDEST_BIN: Hertz = 3.5;
/** Below full scale nothing was connected, dB. */
const SILENT: Decibels = -80;
const FULL = 0.985;
const CLIPPED_SAMPLES = 4;

/**
 * The mean spectrum of a recording.
 * @param samples full scale is 1
 * @param sampleRate Hz
 * @returns level of each third octave from 100 Hz to 8 kHz that lies below half the sample rate
 * @throws RangeError for a sample rate that is not above 0, or samples that are not finite
 */
export function audioSpectrum(samples: ArrayLike<number>, sampleRate: Hertz): AudioSpectrum {
  if (!(sampleRate > 0 && sampleRate < Number.POSITIVE_INFINITY))
    throw new RangeError(`a sample rate must be above 0 Hz, got ${sampleRate}`);
  for (let i = 0; i < samples.length; i++)
    if (!Number.isFinite(samples[i])) throw new RangeError(`sample ${i} must be a finite number, got ${samples[i]}`);
  if (!(samples.length >= LEAST_SECONDS * sampleRate))
    return { bands: [], level: Number.NEGATIVE_INFINITY, faults: ['too-short'] };
  const size = 2 ** Math.ceil(Math.log2(sampleRate / WIDEST_BIN));
  const power = powerSpectrum(samples, size);
  const bin = sampleRate / size;
  const bands = THIRD_OCTAVES.flatMap((frequency): BandLevel[] => {
    const [from, to] = [frequency - bandWidth(frequency) / 2, frequency + bandWidth(frequency) / 2];
    if (to > sampleRate / 2) return [];
    let sum = 0;
    // A bin across the edge of a band belongs to both by its shares.
    for (let k = Math.floor(from / bin); k <= Math.ceil(to / bin); k++) {
      const share = Math.min((k + 0.5) * bin, to) - Math.max((k - 0.5) * bin, from);
      if (share > 0) sum += (power[k] * share) / bin;
    }
    return [{ frequency, level: 10 * Math.log10(2 * sum) }];
  });
  const level = powerSum(bands.map((band) => band.level));
  let full = 0;
  for (let i = 0; i < samples.length; i++) if (Math.abs(samples[i]) >= FULL) full++;
  return {
    bands,
    level,
    faults: [
      ...(level < SILENT ? (['silent'] as const) : []),
      ...(full >= CLIPPED_SAMPLES ? (['clipped'] as const) : []),
    ],
  };
}

/** A recording beside what is predicted. */
export interface SpectrumBeside {
  /** As recorded: in the unit of the prediction where full scale is known, else moved to its mean level. */
  readonly measured: readonly BandLevel[];
  readonly predicted: readonly BandLevel[];
  /** Recorded over predicted, all bands together; without the level of full scale it is not known. */
  readonly difference?: Decibels;
  /** Of each band that is compared: recorded over predicted, the mean over all of them left out. */
  readonly shape: readonly BandLevel[];
  /** One standard deviation of `shape`. */
  readonly scatter: Decibels;
}

/** Bands so far below the loudest are left out: noise of the input fills them. */
const COMPARED: Decibels = 40;
const LEAST_BANDS = 3;

/**
 * A recording of a set's audio beside the predicted one.
 * @param recorded by third octaves, against full scale
 * @param predicted level of each band, in dB of any unit
 * @param fullScale level of a sine that fills the input, in the same unit; left out where the input was not calibrated
 * @returns undefined where fewer than three bands have anything to compare
 */
export function besidePredicted(
  recorded: AudioSpectrum,
  predicted: readonly BandLevel[],
  fullScale?: Decibels,
): SpectrumBeside | undefined {
  const loudest = Math.max(...predicted.map(({ level }) => level));
  const both = recorded.bands.flatMap(({ frequency, level }) => {
    const of = predicted.find((band) => band.frequency === frequency);
    return of && of.level > loudest - COMPARED && Number.isFinite(level)
      ? [{ frequency, over: level - of.level, measured: level, predicted: of.level }]
      : [];
  });
  if (both.length < LEAST_BANDS) return undefined;
  const mean = both.reduce((sum, { over }) => sum + over, 0) / both.length;
  const shape = both.map(({ frequency, over }) => ({ frequency, level: over - mean }));
  const moved = fullScale ?? -mean;
  return {
    measured: recorded.bands.map(({ frequency, level }) => ({ frequency, level: level + moved })),
    predicted: both.map(({ frequency, predicted: level }) => ({ frequency, level })),
    ...(fullScale !== undefined && {
      difference: powerSum(both.map((one) => one.measured + fullScale)) - powerSum(both.map((one) => one.predicted)),
    }),
    shape,
    scatter: Math.sqrt(shape.reduce((sum, { level }) => sum + level * level, 0) / (shape.length - 1)),
  };
}
