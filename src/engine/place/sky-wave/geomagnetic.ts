import type { Degrees } from '../../units/quantities.ts';
import type { Position } from '../geodesy.ts';

const RAD = Math.PI / 180;
/** Dipole pole of the published method, 78.5° N 69° W. The real pole has moved; the method's constants have not. */
const POLE: Position = { latitude: 78.5, longitude: -69 };

/**
 * Geomagnetic latitude of a place, degrees, by a dipole at the earth's middle.
 * Source: 47 CFR 73.190 eq. 3 (as in Rec. ITU-R P.1147); reference/propagation-checks.json, "geomag-1".
 */
export function geomagneticLatitude({ latitude, longitude }: Position): Degrees {
  const sine =
    Math.sin(latitude * RAD) * Math.sin(POLE.latitude * RAD) +
    Math.cos(latitude * RAD) * Math.cos(POLE.latitude * RAD) * Math.cos((longitude - POLE.longitude) * RAD);
  return Math.asin(Math.min(1, Math.max(-1, sine))) / RAD;
}

/** Dip of the earth's field by the same dipole: tan I = 2 tan Φ. Real dip differs by up to about 10°. */
export const dipoleDip = (latitude: Degrees): Degrees =>
  Math.abs(latitude) >= 90 ? Math.sign(latitude) * 90 : Math.atan(2 * Math.tan(latitude * RAD)) / RAD;

/** Where the dipole's pole lies, for the direction of magnetic north. */
export const geomagneticPole = POLE;
