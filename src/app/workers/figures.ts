import {
  type Arrival,
  type ArrivalMemory,
  arrivalOptions,
  arrivals,
  type Coast,
  checkStations,
  destination,
  GROUND_KINDS,
  type GroundConstants,
  greatCircle,
  groundGain,
  midpoint,
  type PlaceDescription,
  pathProfile,
  type RangedArrival,
  rangedArrivals,
  type StationDoubt,
  type SunState,
  sameGround,
  sunState,
} from '../../engine/index.ts';
import type { FieldProfile } from '../../outputs/plots/index.ts';
import { pathWords } from '../../outputs/words/index.ts';
import type { When } from '../description/when.ts';

export interface PlaceQuestion {
  readonly about: 'place';
  readonly place: PlaceDescription;
  readonly when: When;
  /** For sunset and sunrise while `when` is only day or night. */
  readonly date: Date;
  /** Whose path to draw. */
  readonly chosen?: number;
}

/** Everything the field's workbench shows that must be computed. */
export interface PlaceFigures {
  readonly day: readonly RangedArrival[];
  readonly night: readonly RangedArrival[];
  readonly now: readonly Arrival[];
  readonly doubts: readonly StationDoubt[];
  readonly sunHere?: SunState;
  /** At the middle of the chosen path. */
  readonly sunBetween?: SunState;
  readonly profile?: FieldProfile;
  /** Whether land and sea were looked up. */
  readonly hasCoast: boolean;
}

/** @param coast undefined where it is not known or cannot matter. */
export function placeFigures(
  { place, when, date, chosen }: PlaceQuestion,
  coast: Coast | undefined,
  memory: ArrivalMemory,
): PlaceFigures {
  const at = (time: When) => arrivals(place, place.stations, arrivalOptions({ time, coast, memory }, place.sunspots));
  const day = at('day');
  const night = at('night');
  const ranged = (of: readonly Arrival[], time: When) => rangedArrivals(place, of, { time, coast, memory });
  const now = when === 'day' ? day : when === 'night' ? night : at(when);
  const moment = when instanceof Date ? when : date;
  const one = chosen === undefined ? undefined : now[chosen];
  return {
    day: ranged(day, 'day'),
    night: ranged(night, 'night'),
    now,
    doubts: checkStations(place.stations, { site: place.position }),
    sunHere: place.position && sunState(moment, place.position),
    sunBetween: one && sunBetween(place, one, moment),
    profile: one && profileOf(place, one),
    hasCoast: coast !== undefined,
  };
}

function sunBetween({ position }: PlaceDescription, { station, bearing, distance }: Arrival, moment: Date) {
  if (!position) return undefined;
  if (station.position) return sunState(moment, midpoint(position, station.position));
  if (bearing === undefined || distance === undefined) return undefined;
  const there = destination(position, bearing, distance);
  return sunState(moment, greatCircle(position, there).at(distance / 2));
}

const POINTS = 160;

function profileOf(place: PlaceDescription, { station, sections, ground, distance, noise }: Arrival) {
  if (!ground || !distance || !station.power || !(ground.fieldStrength > 0)) return undefined;
  const { points, boundaries } = pathProfile({
    frequency: station.frequency,
    sections,
    power: station.power * 10 ** (groundGain(station) / 10),
    points: POINTS,
  });
  const ends = [0, ...boundaries.map((b) => b.distance), distance];
  const first = typeof sections[0].ground === 'string' ? GROUND_KINDS[sections[0].ground] : sections[0].ground;
  const grounds = [boundaries[0]?.from ?? first, ...boundaries.map((b) => b.to)];
  const profile: FieldProfile = {
    station,
    points: points.map((p) => ({ distance: p.distance, field: p.fieldStrength })),
    ground: grounds.map((kind, i) => ({
      from: ends[i],
      to: ends[i + 1],
      name: nameOf(kind),
      sea: sameGround(kind, GROUND_KINDS.sea),
    })),
    site: { distance, field: ground.fieldStrength, name: place.name || undefined },
    noise: noise.fieldStrength,
  };
  return profile;
}

const GROUND_IDS = Object.keys(GROUND_KINDS) as (keyof typeof GROUND_KINDS)[];

const nameOf = (ground: GroundConstants): string => {
  const kind = GROUND_IDS.find((id) => sameGround(GROUND_KINDS[id], ground));
  return kind ? pathWords.ground[kind] : pathWords.ownGround;
};
