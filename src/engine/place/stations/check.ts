import { formatQuantity } from '../../units/format.ts';
import { distanceBetween, FARTHEST, type Position } from '../geodesy.ts';
import { bandOf, guessRaster, nearestChannel, onRaster, type Raster } from './channels.ts';
import { readHours } from './hours.ts';
import type { Station } from './station.ts';

/** Something about a station that is probably a slip. */
export interface StationDoubt {
  /** Place in the list. */
  readonly index: number;
  readonly kind: 'band' | 'raster' | 'duplicate' | 'power' | 'modulation' | 'mast' | 'place' | 'hours';
  /** A whole sentence. */
  readonly message: string;
}

/**
 * Look for slips in a list of stations: frequencies off the raster or outside the bands, the same station twice, powers
 * nobody uses, depths and places that cannot be. Nothing is changed.
 * @param raster default: the one most of the list lies on.
 * @param site to compare a distance given with the position given.
 * @param numbers what to call each station by, such as its row in a table; default its place in the list, from 1.
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
    const say = (kind: StationDoubt['kind'], message: string) => doubts.push({ index, kind, message });
    const { name, frequency, power } = station;
    const f = formatQuantity(frequency, 'frequency', 4);
    if (!bandOf(frequency)) {
      say('band', `${name}: ${f} is in neither the long-wave nor the medium-wave band.`);
    } else if (!onRaster(frequency, raster)) {
      const nearest = formatQuantity(nearestChannel(frequency, raster), 'frequency', 4);
      say('raster', `${name}: ${f} is off the ${raster / 1000} kHz raster; the nearest channel is ${nearest}.`);
    }
    const twin = stations.findIndex((other, n) => n < index && isTwin(other, station));
    if (twin >= 0)
      say('duplicate', `${name} at ${f} seems to be in the list twice (row ${numbers?.[twin] ?? twin + 1} too).`);
    if (power !== undefined && station.fieldStrength === undefined) {
      const p = formatQuantity(power, 'power');
      if (!(power > 0)) say('power', `${name}: a power of ${p} gives no signal.`);
      else if (power > 2.5e6)
        say('power', `${name}: ${p} is more than any transmitter of these bands; was it meant in W?`);
      else if (power < 1) say('power', `${name}: ${p} is less than any broadcast transmitter; was it meant in kW?`);
    }
    if (station.modulation !== undefined && !(station.modulation > 0 && station.modulation <= 1.25))
      say(
        'modulation',
        `${name}: a depth of ${formatQuantity(station.modulation, 'ratio')} cannot be; 30 to 100 % is usual.`,
      );
    if (station.mastHeight !== undefined && !(station.mastHeight > 0 && station.mastHeight <= 700))
      say('mast', `${name}: no mast is ${formatQuantity(station.mastHeight, 'length')} high.`);
    if (station.hours !== undefined && readHours(station.hours) === undefined)
      say('hours', `${name}: the hours "${station.hours.slice(0, 40)}" are not understood; write them as 06:00-22:00.`);
    const placed = placeDoubt(station, site);
    if (placed) say('place', `${name}: ${placed}`);
  }
  return doubts;
}

function placeDoubt({ position, distance, fieldStrength }: Station, site?: Position): string | undefined {
  if (position && !(Math.abs(position.latitude) <= 90 && Math.abs(position.longitude) <= 360))
    return 'its position is not on the earth.';
  if (distance !== undefined && !(distance >= 0 && distance <= FARTHEST))
    return 'no place on earth is farther than 20 015 km.';
  if (!position && distance === undefined && fieldStrength === undefined)
    return 'it has neither a position, nor a distance, nor a measured field.';
  if (position && distance !== undefined && site) {
    const real = distanceBetween(site, position);
    if (Math.abs(real - distance) > 0.1 * real + 1000)
      return `its position is ${formatQuantity(real, 'length')} away, not ${formatQuantity(distance, 'length')}.`;
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
