import { withinTurn } from '../units/angle.ts';
import type { Degrees, Metres } from '../units/quantities.ts';

/** A place on the earth, decimal degrees: north and east are positive. */
export interface Position {
  /** −90 to 90. */
  readonly latitude: Degrees;
  /** Any turn; answers lie from −180 up to 180. */
  readonly longitude: Degrees;
}

/** Mean radius of the earth, m (IUGG). The sphere is within 0.5 % of the ellipsoid: 0.04 dB of field. */
export const MEAN_RADIUS: Metres = 6_371_008.8;
/** Halfway round the earth, m. */
export const FARTHEST: Metres = Math.PI * MEAN_RADIUS;

const RAD = Math.PI / 180;
type Vector = readonly [number, number, number];

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Vector) => Math.hypot(a[0], a[1], a[2]);

function vector({ latitude, longitude }: Position): Vector {
  if (!(Math.abs(latitude) <= 90)) throw new RangeError(`latitude must be from −90° to 90°, got ${latitude}`);
  if (!Number.isFinite(longitude)) throw new RangeError(`longitude must be a number, got ${longitude}`);
  const c = Math.cos(latitude * RAD);
  return [c * Math.cos(longitude * RAD), c * Math.sin(longitude * RAD), Math.sin(latitude * RAD)];
}

/** A great circle from one place to another. */
export interface GreatCircle {
  /** m, 0 to half round the earth. */
  readonly distance: Metres;
  /** At the start, degrees clockwise from north, 0 to 360. Between coincident places 0; between antipodes one of many. */
  readonly bearing: Degrees;
  /** Place at a distance from the start, m; goes on past the end, and back from the start if negative. */
  readonly at: (distance: Metres) => Position;
}

/**
 * The great circle between two places; sound at poles, over the antimeridian, for coincident and for antipodal places.
 * @param from where it begins
 * @param to where it ends
 * @returns distance (m), and bearings at both ends (degrees clockwise from north)
 */
export function greatCircle(from: Position, to: Position): GreatCircle {
  const a = vector(from);
  const b = vector(to);
  const sine = size(cross(a, b));
  const angle = Math.atan2(sine, dot(a, b));
  // East and north at the start; at a pole they follow the longitude given, so bearings there still lead somewhere.
  const { east, north } = compass(from);
  // Nearer than a millimetre to coincidence or antipode the direction is free; north is taken.
  const bearing = sine > 1e-10 ? Math.atan2(dot(b, east), dot(b, north)) : 0;
  return { distance: angle * MEAN_RADIUS, bearing: withinTurn(bearing / RAD), at: along(a, north, east, bearing) };
}

/** The great circle that leaves a place in a direction. */
function greatCircleFrom(from: Position, bearing: Degrees): (distance: Metres) => Position {
  if (!Number.isFinite(bearing)) throw new RangeError(`bearing must be a number, got ${bearing}`);
  const { east, north } = compass(from);
  return along(vector(from), north, east, bearing * RAD);
}

function compass({ latitude, longitude }: Position): { east: Vector; north: Vector } {
  const [sLat, cLat] = [Math.sin(latitude * RAD), Math.cos(latitude * RAD)];
  const [sLon, cLon] = [Math.sin(longitude * RAD), Math.cos(longitude * RAD)];
  return { east: [-sLon, cLon, 0], north: [-sLat * cLon, -sLat * sLon, cLat] };
}

function along(a: Vector, north: Vector, east: Vector, bearing: number): (distance: Metres) => Position {
  const [c, s] = [Math.cos(bearing), Math.sin(bearing)];
  const ahead: Vector = [c * north[0] + s * east[0], c * north[1] + s * east[1], c * north[2] + s * east[2]];
  return (distance) => {
    const angle = distance / MEAN_RADIUS;
    const [ca, sa] = [Math.cos(angle), Math.sin(angle)];
    const x = ca * a[0] + sa * ahead[0];
    const y = ca * a[1] + sa * ahead[1];
    const z = ca * a[2] + sa * ahead[2];
    return { latitude: Math.atan2(z, Math.sqrt(x * x + y * y)) / RAD, longitude: Math.atan2(y, x) / RAD };
  };
}

/** Great-circle distance, m. */
export const distanceBetween = (a: Position, b: Position): Metres => greatCircle(a, b).distance;
/** Bearing at the first place toward the second, degrees clockwise from north. */
export const bearingTo = (from: Position, to: Position): Degrees => greatCircle(from, to).bearing;
/**
 * Place at a distance (m) in a direction (degrees clockwise from north).
 * @param from where it begins
 * @param bearing degrees clockwise from north
 * @param distance m
 * @returns latitude and longitude, degrees
 */
export const destination = (from: Position, bearing: Degrees, distance: Metres): Position =>
  greatCircleFrom(from, bearing)(distance);
/**
 * Middle of the great circle between two places.
 * @param a one place
 * @param b another
 * @returns latitude and longitude, degrees
 */
export function midpoint(a: Position, b: Position): Position {
  const path = greatCircle(a, b);
  return path.at(path.distance / 2);
}

const POINTS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;
/** A bearing in words, to the nearest of eight points. */
export const compassPoint = (bearing: Degrees): (typeof POINTS)[number] =>
  POINTS[Math.round(withinTurn(bearing) / 45) % 8];
