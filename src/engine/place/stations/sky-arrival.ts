import { type Warning, warning } from '../../facts/warning.ts';
import type { Decibels, Degrees } from '../../units/quantities.ts';
import { bearingTo, midpoint, type Position } from '../geodesy.ts';
import { fieldFromLevel } from '../levels.ts';
import { dipoleDip, geomagneticLatitude, geomagneticPole } from '../sky-wave/geomagnetic.ts';
import { polarizationLoss, type SunspotRegion } from '../sky-wave/losses.ts';
import { reflectionHeight, skyWave } from '../sky-wave/sky-wave.ts';
import { pathNight, type SunState } from '../sun.ts';
import type { ArrivalOptions, SkyArrival } from './arrival.ts';
import { departureAngle, mastGain } from './mast.ts';
import type { StationPath } from './path-to-station.ts';
import type { Station } from './station.ts';

/** Geomagnetic latitude taken where no position is known: the middle of Europe. */
const UNKNOWN_LATITUDE: Degrees = 50;

/**
 * The sky wave of one station at one moment, if there is one.
 * Gain of ends near the sea is not counted: the published curve it needs was not to be had.
 */
export function skyArrival(
  site: Position | undefined,
  path: StationPath,
  station: Station,
  { time, light, sunspots = 50 }: ArrivalOptions,
): { sky?: SkyArrival; sun?: SunState; warnings: readonly Warning[] } {
  const { transmitter, distance } = path;
  const { frequency, power } = station;
  const night = time && site && transmitter ? pathNight(time, transmitter, site) : undefined;
  const loss = light ? (light === 'night' ? 0 : null) : night ? night.loss : null;
  const sun = night?.sun;
  const warnings: Warning[] = [];
  if (power === undefined) return { sun, warnings };
  if (loss === null) {
    if (frequency < 300e3 && distance > 500e3) warnings.push(warning('place.long-wave-sky-by-day'));
    return { sun, warnings };
  }
  const known = site && transmitter;
  if (!known) warnings.push(warning('place.sky-wave-position-assumed'));
  const latitudeOf = (place?: Position) => (place ? geomagneticLatitude(place) : UNKNOWN_LATITUDE);
  const middle = known ? midpoint(site, transmitter) : undefined;
  const angle = departureAngle(distance, reflectionHeight(frequency, distance));
  const field = skyWave({
    frequency,
    distance,
    power,
    sunspots,
    transmitterGeomagneticLatitude: latitudeOf(transmitter),
    receiverGeomagneticLatitude: latitudeOf(site),
    region: middle ? sunspotRegion(middle) : 'Europe',
    southOfRegion3: Boolean(middle && middle.latitude < -11 && middle.longitude > 60),
    polarizationLoss: known && frequency >= 300e3 ? endLoss(site, transmitter) + endLoss(transmitter, site) : 0,
    hourlyLoss: loss,
  });
  const level = field.level + skyGain(station, angle);
  return {
    sun,
    sky: {
      level,
      fieldStrength: fieldFromLevel(level),
      // Method and night-to-night together (Rec. ITU-R P.1147 says little; common practice).
      spread: frequency < 300e3 ? 7 : 8,
      hourlyLoss: loss,
      departureAngle: angle,
      decile: field.decile,
    },
    // Within 50 km the ground wave rules anyway; saying so for every local station would only be noise.
    warnings: distance < 50e3 ? warnings : [...warnings, ...field.warnings],
  };
}

/** Gain at the departure angle: the mast's own shape, brought to the gain along the ground that was written for it. */
function skyGain({ mastGain: gain, mastHeight, frequency }: Station, angle: Degrees): Decibels {
  // A short mast where no height is known.
  const height = mastHeight ?? 1;
  return mastGain(height, frequency, angle) + (gain ? gain - mastGain(height, frequency) : 0);
}

/** Polarisation coupling loss at one end, with dip and magnetic directions of the dipole. */
function endLoss(near: Position, far: Position): Decibels {
  const off = Math.abs(((bearingTo(near, far) - bearingTo(near, geomagneticPole)) % 180) + 180) % 180;
  return polarizationLoss(dipoleDip(geomagneticLatitude(near)), Math.abs(90 - off));
}

/** Rough outlines of where the sunspot term was measured, by the middle of the path. */
function sunspotRegion({ latitude, longitude }: Position): SunspotRegion {
  if (latitude > 34 && longitude > -25 && longitude < 45) return 'Europe';
  if (latitude > 15 && longitude > -170 && longitude < -50) return 'North America';
  if (latitude < -10 && longitude > 110 && longitude < 180) return 'Australia';
  return 'elsewhere';
}
