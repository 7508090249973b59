import type { Decibels, Hertz, Metres, Ratio, VoltsPerMetre, Watts } from '../../units/quantities.ts';
import type { GroundConstants } from '../ground.ts';
import { groundWaveCurves } from '../ground-wave/ground-wave.ts';
import { levelAlong, type PathSection, sliverLength, tidySections } from '../ground-wave/mixed-path.ts';
import { fieldFromLevel, powerLevel } from '../levels.ts';

export interface ProfileInput {
  readonly frequency: Hertz;
  /** From the transmitter. */
  readonly sections: readonly PathSection[];
  /** Effective monopole radiated power, W. Default 1 kW. */
  readonly power?: Watts;
  readonly earthRadiusFactor?: Ratio;
  /** About how many points. Default 200. */
  readonly points?: number;
  /** First point, m. Default 1 % of the path, at least 100 m. */
  readonly from?: Metres;
}

export interface ProfilePoint {
  /** From the transmitter, m. */
  readonly distance: Metres;
  readonly fieldStrength: VoltsPerMetre;
  /** dB(µV/m). */
  readonly level: Decibels;
}

export interface PathProfile {
  /** Even in the logarithm near the mast and in distance farther out, with one exactly at every boundary. */
  readonly points: readonly ProfilePoint[];
  /** Where the ground changes, m from the transmitter. */
  readonly boundaries: readonly {
    readonly distance: Metres;
    readonly from: GroundConstants;
    readonly to: GroundConstants;
  }[];
}

/**
 * Ground-wave field against distance along a path: its fall over each kind of ground, and its rise behind a coast.
 * @param options frequency (Hz), stretches of the path (m), power (W), how finely and from where
 * @returns field strength (V/m, r.m.s.) at distances (m), and where coasts are
 * @throws RangeError for impossible input.
 */
export function pathProfile({
  frequency,
  sections,
  power = 1000,
  earthRadiusFactor,
  points = 200,
  from,
}: ProfileInput): PathProfile {
  if (!(points >= 2 && points <= 1e5)) throw new RangeError(`points must be from 2 to 100000, got ${points}`);
  const path = tidySections(sections, sliverLength(frequency));
  const curves = groundWaveCurves({ frequency, earthRadiusFactor });
  const ends: Metres[] = [];
  for (const { length } of path) ends.push((ends.at(-1) ?? 0) + length);
  const total = ends[ends.length - 1];
  const first = from ?? Math.min(total / 2, Math.max(100, total / 100));
  if (!(first > 0 && first < total)) throw new RangeError(`the first point must lie on the path, got ${first} m`);

  const distances = new Set<Metres>(ends.filter((end) => end >= first));
  for (let n = 0; n < points; n++) {
    const share = n / (points - 1);
    // Half way between even steps and even ratios.
    distances.add(Math.min(total, ((1 - share) * first + share * total + first * (total / first) ** share) / 2));
  }
  return {
    points: [...distances]
      .sort((a, b) => a - b)
      .map((distance) => {
        const level = levelAlong(path, distance, curves) + powerLevel(power);
        return { distance, level, fieldStrength: fieldFromLevel(level) };
      }),
    boundaries: path.slice(1).map(({ ground }, n) => ({ distance: ends[n], from: path[n].ground, to: ground })),
  };
}
