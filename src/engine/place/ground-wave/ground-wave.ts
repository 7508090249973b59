import { magnitude } from '../../numerics/complex.ts';
import type { Decibels, Hertz, Metres, Ratio } from '../../units/quantities.ts';
import { type Ground, groundConstants } from '../ground.ts';
import { residueSeries } from './residue-series.ts';
import { shortForm } from './short-form.ts';
import { STANDARD_RADIUS_FACTOR, surface } from './surface.ts';

export type GroundWaveMethod = 'flat-earth-with-curvature' | 'residue-series';

export interface GroundWaveOptions {
  /** Hz, above 0; Rec. ITU-R P.368 covers 10 kHz to 30 MHz. */
  readonly frequency: Hertz;
  readonly ground: Ground;
  /** Effective earth radius over 6370 km. Default 1.370373 as in P.368-10; 4/3 is the older habit. */
  readonly earthRadiusFactor?: Ratio;
}

/** The ground wave of one frequency over one kind of ground, as a function of distance. */
export interface GroundWaveCurve {
  /** Field strength level, dB(µV/m) r.m.s., for 1 kW e.m.r.p. at a distance in metres, above 0. */
  readonly level: (distance: Metres) => Decibels;
  /** 20·log10 of the ratio to the field on perfect flat ground; 0 near the transmitter. */
  readonly attenuation: (distance: Metres) => Decibels;
  readonly method: (distance: Metres) => GroundWaveMethod;
  readonly switchDistance: Metres;
}

/** Level of 300 V over 1 m, dB(µV/m): 1 kW e.m.r.p. on perfect ground at 1 m. */
const UNATTENUATED: Decibels = 20 * Math.log10(300e6);

/**
 * Ground wave over smooth, homogeneous, spherical earth, both ends on the ground, vertical polarisation.
 * Short distances by Sommerfeld-Norton with two curvature terms, the rest by the residue series; the two meet within
 * 0.02 dB at 80/f^(1/3) km. Roots are found as they are needed and kept in the returned object.
 * Agrees with the open reference implementation of Rec. ITU-R P.368 to about 0.02 dB. The smooth-earth model itself is
 * good to ±3-6 dB on real ground.
 * @throws RangeError for impossible frequency, ground, radius factor or distance.
 */
export function groundWave({
  frequency,
  ground,
  earthRadiusFactor = STANDARD_RADIUS_FACTOR,
}: GroundWaveOptions): GroundWaveCurve {
  const earth = surface(frequency, groundConstants(ground), earthRadiusFactor);
  const far = residueSeries(earth);
  const attenuation = (distance: Metres): Decibels => {
    if (!(distance > 0 && distance < Number.POSITIVE_INFINITY))
      throw new RangeError(`distance must be above 0 m, got ${distance}`);
    return distance < earth.switchDistance ? 20 * Math.log10(magnitude(shortForm(earth, distance))) : far(distance);
  };
  return {
    attenuation,
    level: (distance) => UNATTENUATED - 20 * Math.log10(distance) + attenuation(distance),
    method: (distance) => (distance < earth.switchDistance ? 'flat-earth-with-curvature' : 'residue-series'),
    switchDistance: earth.switchDistance,
  };
}

/** Ground-wave curves of one frequency, each kind of ground computed once. */
export type GroundWaveCurves = (ground: Ground) => GroundWaveCurve;

/** A keeper of curves for one frequency: a mixed path asks for the same few grounds again and again. */
export function groundWaveCurves(options: Omit<GroundWaveOptions, 'ground'>): GroundWaveCurves {
  const curves = new Map<string, GroundWaveCurve>();
  return (ground) => {
    const constants = groundConstants(ground);
    const key = `${constants.conductivity}/${constants.permittivity}`;
    let curve = curves.get(key);
    if (!curve) curves.set(key, (curve = groundWave({ ...options, ground: constants })));
    return curve;
  };
}
