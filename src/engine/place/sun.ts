import { getPosition, getTimes } from 'suncalc';
import { withinHalfTurn } from '../units/angle.ts';
import type { Degrees, Metres } from '../units/quantities.ts';
import { greatCircle, type Position } from './geodesy.ts';
import { hourlyLoss } from './sky-wave/losses.ts';

/** The sun at one place and moment. */
export interface SunState {
  /** Degrees above the horizon, refraction included. */
  readonly altitude: Degrees;
  /** Sunset and sunrise nearest to the moment; null where the sun does neither for a day and a half. */
  readonly sunset: Date | null;
  readonly sunrise: Date | null;
  /** Hours since those, negative before; null with them. */
  readonly afterSunset: number | null;
  readonly afterSunrise: number | null;
  /** Dusk and dawn are the hour on either side of sunset and sunrise. */
  readonly state: 'day' | 'dusk' | 'night' | 'dawn';
}

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** The sun's upper edge on the horizon, refraction included. */
const HORIZON: Degrees = -0.833;

/**
 * Where the sun stands at a place, and the nearest sunset and sunrise; by suncalc (about a minute).
 * @param time any moment
 * @param options the place, degrees
 * @returns height of the sun (degrees), and the nearest sunset and sunrise
 * @throws RangeError for an invalid date or place.
 */
export function sunState(time: Date, { latitude, longitude }: Position): SunState {
  const moment = time.getTime();
  if (!Number.isFinite(moment)) throw new RangeError('expected a valid date');
  if (!(Math.abs(latitude) <= 90 && Number.isFinite(longitude))) throw new RangeError('expected a place on the earth');
  let sunset: Date | null = null;
  let sunrise: Date | null = null;
  const nearer = (candidate: Date | null, best: Date | null): Date | null => {
    const off = (date: Date | null) => (date ? Math.abs(date.getTime() - moment) : 1.5 * DAY);
    return candidate && Number.isFinite(candidate.getTime()) && off(candidate) < off(best) ? candidate : best;
  };
  for (const days of [-1, 0, 1]) {
    const times = getTimes(new Date(moment + days * DAY), latitude, longitude);
    sunset = nearer(times.sunset, sunset);
    sunrise = nearer(times.sunrise, sunrise);
  }
  const altitude = getPosition(time, latitude, longitude).altitude;
  const since = (date: Date | null) => (date ? (moment - date.getTime()) / HOUR : null);
  const afterSunset = since(sunset);
  const afterSunrise = since(sunrise);
  const near = (hours: number | null) => (hours === null ? Number.POSITIVE_INFINITY : Math.abs(hours));
  const changing = Math.min(near(afterSunset), near(afterSunrise)) <= 1;
  const state = changing
    ? near(afterSunset) <= near(afterSunrise)
      ? 'dusk'
      : 'dawn'
    : altitude > HORIZON
      ? 'day'
      : 'night';
  return { altitude, sunset, sunrise, afterSunset, afterSunrise, state };
}

const J2000 = Date.UTC(2000, 0, 1, 12);
const RAD = Math.PI / 180;

/**
 * Where the sun stands overhead: the middle of the day side, for shading a map (night begins 90.8° from it).
 * Low-precision formulae of the Astronomical Almanac, good to about 0.02° from 1950 to 2050.
 * @param time any moment
 * @returns latitude and longitude, degrees
 */
export function subsolarPoint(time: Date): Position {
  const n = (time.getTime() - J2000) / DAY;
  if (!Number.isFinite(n)) throw new RangeError('expected a valid date');
  const g = (357.528 + 0.9856003 * n) * RAD;
  const lambda = (280.46 + 0.9856474 * n + 1.915 * Math.sin(g) + 0.02 * Math.sin(2 * g)) * RAD;
  const epsilon = (23.439 - 4e-7 * n) * RAD;
  const ascension = Math.atan2(Math.cos(epsilon) * Math.sin(lambda), Math.cos(lambda)) / RAD;
  const longitude = ascension - 15 * (18.697374558 + 24.06570982441908 * n);
  return {
    latitude: Math.asin(Math.sin(epsilon) * Math.sin(lambda)) / RAD,
    longitude: withinHalfTurn(longitude),
  };
}

/** What the sun does to a sky-wave path. */
export interface PathNight {
  /** The sun at the middle of the path. */
  readonly sun: SunState;
  /** dB by `hourlyLoss`; null by day, when medium wave has no sky wave. */
  readonly loss: number | null;
}

/**
 * Day or night along a path and the loss of its sky wave. Taken at the middle; on a path of more than 2000 km at the two
 * points 750 km from its ends, whichever loses more (from memory of Rec. ITU-R P.1147, medium confidence).
 */
export function pathNight(time: Date, from: Position, to: Position): PathNight {
  const path = greatCircle(from, to);
  const middle = sunState(time, path.at(path.distance / 2));
  const points: readonly Metres[] = [750e3, path.distance - 750e3];
  const states = path.distance > 2000e3 ? points.map((distance) => sunState(time, path.at(distance))) : [middle];
  const losses = states.map(lossOf);
  return { sun: middle, loss: losses.includes(null) ? null : Math.max(...(losses as number[])) };
}

function lossOf({ altitude, afterSunset, afterSunrise }: SunState): number | null {
  const t = afterSunset ?? Number.POSITIVE_INFINITY;
  const u = afterSunrise ?? Number.POSITIVE_INFINITY;
  const evening = t >= -1 && t <= 4;
  const morning = u >= -3 && u <= 1;
  if (!evening && !morning && altitude > HORIZON) return null;
  return hourlyLoss(t, u);
}

/**
 * When the sun is down at a place within one day.
 * @param time any moment of the day, which counts in UTC
 * @param position the place, degrees
 * @returns from and to in hours of that day, UTC, in order; none where the sun does not set, 0 to 24 where it does not rise
 * @throws RangeError for an invalid date or place
 */
export function nightHours(time: Date, position: Position): readonly (readonly [from: number, to: number])[] {
  const midnight = Math.floor(time.getTime() / DAY) * DAY;
  const isDown = (hours: number): boolean => sunState(new Date(midnight + hours * HOUR), position).altitude <= HORIZON;
  const { latitude, longitude } = position;
  const changes = [-1, 0, 1]
    .flatMap((days) => {
      const { sunrise, sunset } = getTimes(new Date(midnight + DAY / 2 + days * DAY), latitude, longitude);
      return [sunrise, sunset].flatMap((date) => (date ? [(date.getTime() - midnight) / HOUR] : []));
    })
    .filter((hours) => hours > 0 && hours < 24);
  const ends = [...new Set([0, ...changes, 24])].sort((a, b) => a - b);
  return ends.slice(1).flatMap((to, i) => (isDown((ends[i] + to) / 2) ? [[ends[i], to] as const] : []));
}
