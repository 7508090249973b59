import { greatCircle } from '../place/geodesy.ts';
import type { Ground } from '../place/ground.ts';
import { groundField } from '../place/ground-wave/ground-field.ts';
import { noise } from '../place/noise/noise.ts';
import type { PlaceDescription, StationDescription } from '../set/parts/place.ts';
import type { Decibels, Degrees, Metres, VoltsPerMetre } from '../units/quantities.ts';

/** What of a station arrives at the site, and how sure that is. */
export interface FieldAtSite {
  readonly fieldStrength: VoltsPerMetre;
  /** ±. */
  readonly spread: Decibels;
  readonly how: 'as given' | 'ground wave';
  readonly distance?: Metres;
  readonly bearing?: Degrees;
  /** Noise in 9 kHz at the site, r.m.s. */
  readonly noise: VoltsPerMetre;
  readonly warnings: readonly string[];
}

/** A figure somebody measured or read off a map; and one computed over a single kind of ground. */
const GIVEN_SPREAD = 2;
const COMPUTED_SPREAD = 5;
/** Both sidebands of a broadcast channel. */
const CHANNEL = 9000;
/** In which a measured local noise is stated. */
const NOISE_BANDWIDTH = 2700;

export function fieldAtSite(station: StationDescription, place: PlaceDescription): FieldAtSite {
  const around = noise({
    frequency: station.frequency,
    bandwidth: CHANNEL,
    environment: place.environment,
    measured:
      place.localNoise === undefined ? undefined : { fieldStrength: place.localNoise, bandwidth: NOISE_BANDWIDTH },
  });
  const path = place.position && station.position ? greatCircle(place.position, station.position) : undefined;
  const distance = station.distance ?? path?.distance;
  const bearing = station.bearing ?? path?.bearing;
  if (station.fieldStrength !== undefined) {
    return {
      fieldStrength: station.fieldStrength,
      spread: GIVEN_SPREAD,
      how: 'as given',
      distance,
      bearing,
      noise: around.fieldStrength,
      warnings: [],
    };
  }
  if (distance === undefined || station.power === undefined) {
    return {
      fieldStrength: 0,
      spread: GIVEN_SPREAD,
      how: 'as given',
      distance,
      bearing,
      noise: around.fieldStrength,
      warnings: ['Its position is known but not yours: give the place a position, or the station a distance.'],
    };
  }
  const ground = groundField({
    frequency: station.frequency,
    distance: Math.max(distance, 1),
    ground: place.ground as Ground,
    power: station.power * 10 ** (station.mastGain / 10),
  });
  return {
    fieldStrength: ground.fieldStrength,
    spread: COMPUTED_SPREAD,
    how: 'ground wave',
    distance,
    bearing,
    noise: around.fieldStrength,
    warnings: ground.warnings,
  };
}
