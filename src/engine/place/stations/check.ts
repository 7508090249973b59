import type { Coded, NoFigures } from '../../units/coded.ts';
import type { Hertz, Metres, Watts } from '../../units/quantities.ts';
import { distanceBetween, FARTHEST, type Position } from '../geodesy.ts';
import { bandOf, guessRaster, nearestChannel, onRaster, type Raster } from './channels.ts';
import { readHours } from './hours.ts';
import type { Station } from './station.ts';

/** What is probably a slip. Figures SI. */
export interface StationDoubtFacts {
  readonly 'outside-the-bands': { readonly frequency: Hertz };
  readonly 'off-the-raster': { readonly frequency: Hertz; readonly raster: Raster; readonly nearest: Hertz };
  /** In the list twice. @param other what the first of them is called by, such as its row. */
  readonly 'listed-twice': { readonly frequency: Hertz; readonly other: number };
  readonly 'no-power': { readonly power: Watts };
  readonly 'power-too-large': { readonly power: Watts };
  readonly 'power-too-small': { readonly power: Watts };
  readonly 'impossible-depth': { readonly modulation: number };
  readonly 'impossible-mast': { readonly height: Metres };
  readonly 'hours-not-understood': { readonly hours: string };
  readonly 'not-on-earth': NoFigures;
  readonly 'too-far': { readonly farthest: Metres };
  readonly nowhere: NoFigures;
  readonly 'position-against-distance': { readonly byPosition: Metres; readonly given: Metres };
}

/** Something about a station that is probably a slip. */
export interface StationDoubt {
  /** Place in the list. */
  readonly index: number;
  /** Of the station. */
  readonly name: string;
  readonly kind: 'band' | 'raster' | 'duplicate' | 'power' | 'modulation' | 'mast' | 'place' | 'hours';
  readonly fact: Coded<StationDoubtFacts>;
}

/**
 * Look for slips in a list of stations: frequencies off the raster or outside the bands, the same station twice, powers
 * nobody uses, depths and places that cannot be. Nothing is changed.
 * @param stations as read, SI
 * @param options the raster (Hz) if known, the site, and the line numbers of a table
 * @param raster default: the one most of the list lies on.
 * @param site to compare a distance given with the position given.
 * @param numbers what to call each station by, such as its row in a table; default its place in the list, from 1.
 * @returns doubts, each with the station it is about
 */
export function checkStations(
  stations: readonly Station[],
  {
    raster = guessRaster(stations.map(({ frequency }) => frequency)),
    site,
    numbers,
  }: { raster?: Raster; site?: Position; numbers?: readonly number[] } = {},
): StationDoubt[] {
  const doubts: StationDoubt[] = [];
  for (const [index, station] of stations.entries()) {
    const { name, frequency, power, modulation, mastHeight, hours } = station;
    const doubt = (kind: StationDoubt['kind'], fact: Coded<StationDoubtFacts>) =>
      doubts.push({ index, name, kind, fact });
    if (!bandOf(frequency)) doubt('band', { code: 'outside-the-bands', frequency });
    else if (!onRaster(frequency, raster))
      doubt('raster', { code: 'off-the-raster', frequency, raster, nearest: nearestChannel(frequency, raster) });
    const twin = stations.findIndex((other, n) => n < index && isTwin(other, station));
    if (twin >= 0) doubt('duplicate', { code: 'listed-twice', frequency, other: numbers?.[twin] ?? twin + 1 });
    if (power !== undefined && station.fieldStrength === undefined) {
      if (!(power > 0)) doubt('power', { code: 'no-power', power });
      else if (power > 2.5e6) doubt('power', { code: 'power-too-large', power });
      else if (power < 1) doubt('power', { code: 'power-too-small', power });
    }
    if (modulation !== undefined && !(modulation > 0 && modulation <= 1.25))
      doubt('modulation', { code: 'impossible-depth', modulation });
    if (mastHeight !== undefined && !(mastHeight > 0 && mastHeight <= 700))
      doubt('mast', { code: 'impossible-mast', height: mastHeight });
    if (hours !== undefined && readHours(hours) === undefined)
      doubt('hours', { code: 'hours-not-understood', hours: hours.slice(0, 40) });
    const place = placeDoubt(station, site);
    if (place) doubt('place', place);
  }
  return doubts;
}

function placeDoubt(
  { position, distance, fieldStrength }: Station,
  site?: Position,
): Coded<StationDoubtFacts> | undefined {
  if (position && !(Math.abs(position.latitude) <= 90 && Math.abs(position.longitude) <= 360))
    return { code: 'not-on-earth' };
  if (distance !== undefined && !(distance >= 0 && distance <= FARTHEST))
    return { code: 'too-far', farthest: FARTHEST };
  if (!position && distance === undefined && fieldStrength === undefined) return { code: 'nowhere' };
  if (position && distance !== undefined && site) {
    const real = distanceBetween(site, position);
    if (Math.abs(real - distance) > 0.1 * real + 1000)
      return { code: 'position-against-distance', byPosition: real, given: distance };
  }
  return undefined;
}

/** Same frequency, and the same name or the same place within a kilometre. */
function isTwin(a: Station, b: Station): boolean {
  if (!(Math.abs(a.frequency - b.frequency) < 500)) return false;
  if (a.name.trim().toLowerCase() === b.name.trim().toLowerCase()) {
    // One programme from several masts on one channel is ordinary.
    return !(a.position && b.position && apart(a.position, b.position) > 1000);
  }
  return Boolean(a.position && b.position && apart(a.position, b.position) <= 1000);
}

const apart = (a: Position, b: Position): number => {
  const valid = (p: Position) => Math.abs(p.latitude) <= 90 && Number.isFinite(p.longitude);
  return valid(a) && valid(b) ? distanceBetween(a, b) : Number.POSITIVE_INFINITY;
};
