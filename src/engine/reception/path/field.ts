import type { Warning } from '../../facts/warning.ts';
import type { Coast } from '../../place/coast.ts';
import { type Arrival, type ArrivalMemory, type ArrivalOptions, arrivalMemory } from '../../place/stations/arrival.ts';
import { arrivals } from '../../place/stations/arrivals.ts';
import { listeningTime, type TimeOfDay } from '../../set/listening-time.ts';
import type { PlaceDescription, StationDescription } from '../../set/place.ts';
import type { Decibels, Degrees, VoltsPerMetre } from '../../units/quantities.ts';
import type { FieldFacts } from './stage-facts.ts';

/** When a place is listened at, and what is known of land and sea round it. */
export interface FieldOptions {
  /** Default the time the description says, else day. */
  readonly time?: TimeOfDay;
  /** Finds land and sea on the way where both ends have positions; without it all is the place's own ground. */
  readonly coast?: Coast;
  /** From `arrivalMemory()`, where curves and paths are kept between calls. Default one that all share. */
  readonly memory?: ArrivalMemory;
}

/** What of a station arrives at the site, and how sure that is. */
export interface FieldAtSite extends FieldFacts {
  /** Median; 0 where it is not known, or the station is off the air. */
  readonly fieldStrength: VoltsPerMetre;
  /** ±. */
  readonly spread: Decibels;
  /** Whether it will come and go. */
  readonly fading: Arrival['fading'];
  readonly bearing?: Degrees;
  /** Noise in 9 kHz at the site, r.m.s. */
  readonly noise: VoltsPerMetre;
  readonly warnings: readonly Warning[];
}

/**
 * How `arrivals` is asked for a time as a reception has it.
 * @param options time, coastline and memory of a reception
 * @param sunspots smoothed sunspot number
 * @returns what `arrivals` takes
 */
export const arrivalOptions = ({ time = 'day', coast, memory }: FieldOptions, sunspots?: number): ArrivalOptions => ({
  ...(time instanceof Date ? { time } : { light: time }),
  coast,
  memory,
  sunspots,
});

/** The ground wave depends on frequency and way alone: what one reception found serves the next, with another coil or tap. */
const sharedMemory = arrivalMemory();

/**
 * How `arrivals` is asked at the time that a place is listened at, with the memory that all share.
 * @param place as read
 * @param options of a reception
 * @returns what `arrivals` takes
 */
export const arrivalsAtPlace = (place: PlaceDescription, options: FieldOptions): ArrivalOptions =>
  arrivalOptions(
    { ...options, time: options.time ?? listeningTime(place), memory: options.memory ?? sharedMemory },
    place.sunspots,
  );

/**
 * The field of any station at a place, as measured, or ground wave and by night sky wave together; each calculated once.
 * @param place as read
 * @param options time and coastline
 * @returns a function from a station to its field strength (V/m, r.m.s.) with its spread (dB)
 * @throws RangeError for a place no description can hold.
 */
export function fieldsAtSite(
  place: PlaceDescription,
  options: FieldOptions = {},
): (station: StationDescription) => FieldAtSite {
  const arrivalsAt = arrivalsAtPlace(place, options);
  const cache = new Map<StationDescription, FieldAtSite>();
  return (station) => {
    let field = cache.get(station);
    if (!field) cache.set(station, (field = fieldOf(arrivals(place, [station], arrivalsAt)[0])));
    return field;
  };
}

/** An arrival as a reception needs it. */
function fieldOf(arrival: Arrival): FieldAtSite {
  const { total, onAir } = arrival;
  const silent = onAir === false;
  return {
    fieldStrength: silent ? 0 : total.fieldStrength,
    spread: total.spread,
    ...factsOf(arrival),
    fading: arrival.fading,
    bearing: arrival.bearing,
    noise: arrival.noise.fieldStrength,
    warnings: arrival.warnings,
  };
}

const factsOf = ({ source, onAir, distance, sections, sky }: Arrival): FieldFacts => {
  const sea = sections.reduce((sum, { ground, length }) => sum + (ground === 'sea' ? length : 0), 0);
  return {
    how: onAir === false ? 'off the air' : source === 'measured' ? 'as given' : source,
    distance,
    sea,
    departureAngle: sky?.departureAngle,
  };
};
