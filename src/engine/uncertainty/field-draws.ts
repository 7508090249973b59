import type { MeasuredValue } from '../kinds/measured/measured-schema.ts';
import { standardErrorOf, USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import { groundConstants } from '../place/ground.ts';
import type { PathSection } from '../place/ground-wave/mixed-path.ts';
import { fieldLevel, sumOfTwo } from '../place/levels.ts';
import type { Arrival, ArrivalOptions } from '../place/stations/arrival.ts';
import { arrivals } from '../place/stations/arrivals.ts';
import { arrivalsAtPlace, type FieldOptions } from '../reception/path/field.ts';
import type { PlaceDescription, StationDescription } from '../set/place.ts';
import { type Decibels, decibels, type Ratio } from '../units/quantities.ts';
import { following } from './deviates-of.ts';
import { DRAWS, deviates } from './draws.ts';
import { type FieldFollowing, fieldFollows, type MeasuredAtPlace } from './fields-together.ts';
import { amountSpread } from './measured-spread.ts';
import { groundSpread } from './outdoor-spreads.ts';
import { between, COMMON_PRACTICE, NINETY, plusOrMinus, type Spread, valueAtDeviate } from './spread.ts';

/** A field strength given with the station: ± dB. */
export const GIVEN_FIELD = plusOrMinus(2, COMMON_PRACTICE);
/** Site and terrain above or below the curve of a smooth earth, by what most of the way is. */
const SITE: Readonly<Record<'land' | 'sea', Decibels>> = { land: 5, sea: 3 };
/** Readings of published ground-wave curves at known constants of the ground, against the calculated ones. */
const CURVE: Decibels = 1.5;
/** Of every coast on the way (reference/propagation-checks.json, "millington-2"). */
const COAST: Decibels = 2.5;
/** Sky wave of one evening, its fading by the minute included, against the yearly median by Rec. ITU-R P.1147. */
export const SKY_WAVE = between('difference', [-16, 0, 13], 'deciles of Rec. ITU-R P.1147 and Rayleigh fading');

/** ± dB of a ground wave apart from the constants of the ground: 90 %. */
export const siteSpread = (sections: readonly PathSection[]): Spread => {
  const land = sections.some(({ ground }) => groundConstants(ground).conductivity < 1);
  const coasts = sections.filter((s, i) => i > 0 && isSea(s) !== isSea(sections[i - 1])).length;
  return plusOrMinus(
    Math.hypot(SITE[land ? 'land' : 'sea'], CURVE, COAST * Math.sqrt(coasts)),
    `readings of published curves; ${COMMON_PRACTICE}`,
  );
};
const isSea = ({ ground }: PathSection): boolean => groundConstants(ground).conductivity >= 1;

/** Land with its conductivity times a factor; permittivity follows with its power 0.4, as moisture raises both. */
export const sectionsWith = (sections: readonly PathSection[], factor: Ratio): PathSection[] =>
  sections.map(({ length, ground }) => {
    const { conductivity, permittivity } = groundConstants(ground);
    if (conductivity >= 1) return { length, ground };
    return {
      length,
      ground: { conductivity: conductivity * factor, permittivity: Math.max(1, permittivity * factor ** 0.4) },
    };
  });

/**
 * What the draws of a station are called: its frequency, and which of the stations there it is. Its name and those of
 * the others play no part, so that a station under another name keeps every figure.
 */
export function stationDraw(stations: readonly StationDescription[], station: StationDescription): string {
  const channel = stations.filter(({ frequency }) => frequency === station.frequency);
  return `${station.frequency}/${Math.max(0, channel.indexOf(station))}`;
}

/** The field of a station and how it is drawn. */
export interface FieldDraws {
  /** dB(µV/m), with nothing unknown. */
  readonly level: Decibels;
  /** For every set drawn, dB above that. */
  readonly draws: Float64Array;
  /**
   * At standard normal deviates of ground, site and sky wave: what one set would meet. A measured field may follow the
   * phones' sensitivity and the own deviates of other stations' sites, by their places in the list.
   */
  readonly at: (deviate: (input: 'ground' | 'site' | 'sky wave' | FieldFollowing['other']) => number) => Decibels;
}

/** @returns undefined where nothing arrives. @throws RangeError for an impossible place. */
export function fieldDraws(
  set: MeasuredAtPlace,
  station: StationDescription,
  options: FieldOptions = {},
): FieldDraws | undefined {
  const { place } = set;
  const arrivalAt = arrivalsAtPlace(place, options);
  const [arrival] = arrivals(place, [station], arrivalAt);
  const { total, source } = arrival;
  if (arrival.onAir === false || !(total.fieldStrength > 0)) return undefined;
  const own = stationDraw(place.stations, station);
  const follows = source === 'measured' ? fieldFollows(set, place.stations.indexOf(station)) : [];
  const dB = source === 'measured' ? givenField(station) : computedField(place, station, arrival, arrivalAt);
  const siteOf = (site: number, other: (of: FieldFollowing['other']) => number): number =>
    follows.length === 0
      ? site
      : following(
          follows.map(({ other: of, share }) => ({ share, other: other(of) })),
          site,
        );
  const sites = deviates(`site/${own}`);
  const others = new Map(follows.map(({ other }) => [other, deviates(drawOf(place.stations, other))]));
  const skies = deviates(`sky wave/${own}`);
  const grounds = deviates('ground');
  return {
    level: total.level,
    at: (deviate) => dB(deviate('ground'), siteOf(deviate('site'), deviate), deviate('sky wave')),
    draws: Float64Array.from({ length: DRAWS }, (_, k) =>
      dB(
        grounds[k],
        siteOf(sites[k], (other) => others.get(other)![k]),
        skies[k],
      ),
    ),
  };
}

const drawOf = (stations: readonly StationDescription[], other: FieldFollowing['other']): string =>
  other === 'sensitivity' ? other : `site/${stationDraw(stations, stations[other])}`;

/** Of a field that was measured, with its error. */
export const measuredField = (field: MeasuredValue): Spread =>
  amountSpread(decibels(Math.exp(standardErrorOf(field, USUAL_ERROR.fieldStrength))));

function givenField({ measured }: StationDescription): (ground: number, site: number) => Decibels {
  const field = measured?.fieldStrength;
  const spread = field ? measuredField(field) : GIVEN_FIELD;
  return (_, site) => valueAtDeviate(spread, site);
}

function computedField(
  place: PlaceDescription,
  station: StationDescription,
  { ground, sky, sections, total }: Arrival,
  arrivalAt: ArrivalOptions,
): (ground: number, site: number, sky: number) => Decibels {
  const site = siteSpread(sections);
  const ways = ground ? groundWay(place, station, sections, arrivalAt) : undefined;
  return (g, s, n) => {
    const byGround = ground && ways ? ground.level + ways(g) + valueAtDeviate(site, s) : Number.NEGATIVE_INFINITY;
    const bySky = sky ? sky.level + valueAtDeviate(SKY_WAVE, n) : Number.NEGATIVE_INFINITY;
    return sumOfTwo(byGround, bySky) - total.level;
  };
}

/** dB of the ground wave over a deviate of the conductivity of the land: a parabola through its 90 % range. */
function groundWay(
  place: PlaceDescription,
  station: StationDescription,
  sections: readonly PathSection[],
  arrivalAt: ArrivalOptions,
): (deviate: number) => Decibels {
  const spread = groundSpread(place);
  const levelAt = (deviate: number): Decibels => {
    const changed = { ...station, sections: sectionsWith(sections, valueAtDeviate(spread, deviate)) };
    const strength = arrivals(place, [changed], arrivalAt)[0].ground?.fieldStrength ?? 0;
    return fieldLevel(strength);
  };
  const [low, middle, high] = [levelAt(-NINETY), levelAt(0), levelAt(NINETY)];
  if (!Number.isFinite(low + middle + high)) return () => 0;
  const slope = (high - low) / (2 * NINETY);
  const bend = (high + low - 2 * middle) / (2 * NINETY * NINETY);
  return (u) => u * (slope + u * bend);
}
