import { setCircuit } from '../../built/set-circuit.ts';
import type { Detector } from '../../parts/detector/detector.ts';
import {
  crystalSurface,
  type SpotQuality,
  USUAL_CRYSTAL,
  type Whisker,
  type WhiskerPosition,
} from '../../parts/detector/surface.ts';
import type { SetDescription } from '../../set/description.ts';
import type { Decibels, Ratio } from '../../units/quantities.ts';
import { type FieldOptions, fieldsAtSite } from '../path/field.ts';
import { receiver, receiveStation } from '../path/receive-station.ts';
import type { Loudness } from '../path/types.ts';

/** A station through one touch of the crystal. */
export interface HeardThrough {
  readonly soundPressureLevel: Decibels;
  readonly heard: Loudness;
}

/** Level of a station on spots of one quality. */
export interface CrystalSpot {
  readonly quality: SpotQuality;
  /** Of the crystal's grains. */
  readonly share: Ratio;
  /** Middle one of the touches tried. */
  readonly soundPressureLevel: Decibels;
  /** Over a fair spot. */
  readonly gain: Decibels;
}

const QUALITIES: readonly SpotQuality[] = ['dead', 'poor', 'fair', 'good', 'very good'];
/** Touches tried of each quality, evenly picked from the map. */
const TRIED = 3;

/** Any detector in this set on a station, the dial peaked for it. */
function through(set: SetDescription, station: number, options: FieldOptions): (detector: Detector) => HeardThrough {
  const target = set.place.stations[station];
  if (!target) throw new RangeError(`there is no station ${station}`);
  const fieldOf = fieldsAtSite(set.place, options);
  const like = setCircuit(set);
  return (detector) => {
    const { heard } = receiveStation(receiver(setCircuit(set, { detector, like }), fieldOf), target);
    return { soundPressureLevel: heard.spl, heard: heard.loudness };
  };
}

/**
 * Level of a station at one touch of the crystal.
 * @param set as read, with a crystal
 * @param station its place in the list, from 0
 * @param seed of the crystal
 * @param position place (m), pressure and material of the whisker
 * @param options time and coastline
 * @returns level (dB SPL) and how loud that is
 * @throws RangeError for a place off the crystal, or a station there is not.
 */
export function heardAtTouch(
  set: SetDescription,
  station: number,
  seed: number,
  { x, y, pressure, material }: WhiskerPosition,
  options: FieldOptions = {},
): HeardThrough {
  return through(set, station, options)(crystalSurface(seed).probe(x, y, pressure, material).detector);
}

/**
 * Levels of a station on the spots of a crystal in this set, a light touch on each, from dead to very good.
 * @param set as read
 * @param station its place in the list, from 0
 * @param options seed of the crystal, material of the whisker, time and coastline
 * @returns levels (dB SPL), worst first
 * @throws RangeError for a station there is not.
 */
export function crystalSurvey(
  set: SetDescription,
  station: number,
  {
    seed = USUAL_CRYSTAL,
    material = 'phosphor bronze',
    ...options
  }: FieldOptions & { seed?: number; material?: Whisker } = {},
): CrystalSpot[] {
  const surface = crystalSurface(seed);
  const all = surface.spots();
  const levelOf = through(set, station, options);
  const survey = QUALITIES.map((quality) => {
    const spots = all.filter((s) => s.quality === quality).sort((a, b) => a.merit - b.merit);
    const count = Math.min(quality === 'dead' ? 1 : TRIED, spots.length);
    const tried = Array.from({ length: count }, (_, k) => {
      const { x, y } = spots[Math.floor(((k + 0.5) / count) * spots.length)];
      return levelOf(surface.probe(x, y, 0.2, material).detector).soundPressureLevel;
    }).sort((a, b) => a - b);
    return { quality, share: spots.length / all.length, soundPressureLevel: tried[tried.length >> 1] };
  }).filter((s) => s.soundPressureLevel !== undefined);
  const fair = survey.find((s) => s.quality === 'fair')?.soundPressureLevel ?? survey[0].soundPressureLevel;
  return survey.map((s) => ({ ...s, gain: s.soundPressureLevel - fair }));
}

/** Shares as whole parts that add up to a hundred, the largest remainders rounded up; nothing there is goes uncounted. */
export function ofHundred(shares: readonly Ratio[]): number[] {
  const sum = shares.reduce((a, b) => a + b, 0);
  if (!(sum > 0)) return shares.map(() => 0);
  const exact = shares.map((s) => (100 * s) / sum);
  const parts = exact.map((x) => (x > 0 ? Math.max(1, Math.floor(x)) : 0));
  const over = (i: number): number => exact[i] - parts[i];
  for (let rest = 100 - parts.reduce((a, b) => a + b, 0); rest !== 0; rest -= Math.sign(rest)) {
    const may = parts.map((_, i) => i).filter((i) => exact[i] > 0 && (rest > 0 || parts[i] > 1));
    const index = may.reduce((best, i) => (Math.sign(rest) * (over(i) - over(best)) > 0 ? i : best), may[0]);
    parts[index] += Math.sign(rest);
  }
  return parts;
}
