import { type Warning, warning } from '../../facts/warning.ts';
import {
  type Decibels,
  type Hertz,
  LIGHT_SPEED,
  type Metres,
  type Ratio,
  type VoltsPerMetre,
  type Watts,
} from '../../units/quantities.ts';
import { type Ground, groundConstants } from '../ground.ts';
import { fieldFromLevel, powerLevel } from '../levels.ts';
import { type GroundWaveCurves, groundWaveCurves } from './ground-wave.ts';
import { type MixedPath, mixedPath, type PathSection } from './mixed-path.ts';
import { EARTH_RADIUS } from './surface.ts';

export interface GroundFieldInput {
  /** Hz. */
  readonly frequency: Hertz;
  /** m; needed with `ground`. */
  readonly distance?: Metres;
  readonly ground?: Ground;
  /** Instead of distance and ground: the path from the transmitter. */
  readonly sections?: readonly PathSection[];
  /** Effective monopole radiated power, W. Default 1 kW. */
  readonly power?: Watts;
  readonly earthRadiusFactor?: Ratio;
  /** Curves already made for this frequency and radius factor. */
  readonly curves?: GroundWaveCurves;
}

export interface GroundField {
  /** V/m r.m.s. */
  readonly fieldStrength: VoltsPerMetre;
  /** dB(µV/m). */
  readonly level: Decibels;
  readonly method: MixedPath['method'];
  readonly distance: Metres;
  readonly sections: MixedPath['sections'];
  readonly warnings: readonly Warning[];
}

/** Halfway round the earth, m. */
const ANTIPODE: Metres = Math.PI * EARTH_RADIUS;

/**
 * Ground-wave field strength at the end of a path.
 * @param input frequency (Hz), power (W), and the path as its length (m) or its stretches of land and sea
 * @returns field strength (V/m, r.m.s.) with its spread (dB)
 * @throws RangeError for impossible input: no path, a distance or power below zero.
 */
export function groundField(input: GroundFieldInput): GroundField {
  const { frequency, power = 1000, earthRadiusFactor } = input;
  if (!(power >= 0 && power < Number.POSITIVE_INFINITY))
    throw new RangeError(`power must be 0 W or more, got ${power}`);
  const sections = input.sections ?? [
    { length: input.distance ?? Number.NaN, ground: groundConstants(input.ground ?? 'average') },
  ];
  const curves = input.curves ?? groundWaveCurves({ frequency, earthRadiusFactor });
  const path = mixedPath(frequency, sections, curves);
  const distance = sections.reduce((sum, { length }) => sum + length, 0);
  const level = path.level + powerLevel(power);
  const warnings: Warning[] = [];
  if (!(frequency >= 1e4 && frequency <= 3e7)) warnings.push(warning('place.ground-wave-frequency-range'));
  if (distance < LIGHT_SPEED / frequency) warnings.push(warning('place.within-a-wavelength'));
  if (distance > ANTIPODE) warnings.push(warning('place.distance-beyond-antipode', { distance }));
  if (path.sections.length > 3) warnings.push(warning('place.many-coasts'));
  return {
    fieldStrength: fieldFromLevel(level),
    level,
    method: path.method,
    distance,
    sections: path.sections,
    warnings,
  };
}
