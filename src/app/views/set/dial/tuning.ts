import type { Reception, StationReception } from '../../../../engine/index.ts';
import type { SetView } from '../../../state/set-view.ts';
import { type DialScale, dialScale } from './dial-scale.ts';
import { stationThere } from './there.ts';

/** What of a set's view the dial moves. */
type Pointed = Pick<SetView, 'chooseStation' | 'pointer' | 'pointBeside'>;

/** Stations the dial reaches, by frequency. */
export const reachable = (reception: Reception): StationReception[] =>
  reception.stations.filter((station) => station.dial !== undefined).sort((a, b) => a.frequency - b.frequency);

/** Put the pointer between stations: the one that is strongest there is what the page is about, as the dial says. */
function pointBeside(view: Pointed, reception: Reception, scale: DialScale | undefined, position: number): void {
  view.pointBeside(position, scale && stationThere(reception, position, scale.frequencyAt(position)));
}

/** Put the pointer somewhere, on the nearest station if one lies within `near` (share of the dial's length). */
export function pointAt(view: Pointed, reception: Reception, scale: DialScale, along: number, near: number): void {
  const at = Math.min(1, Math.max(0, along));
  let nearest: { station: StationReception; distance: number } | undefined;
  for (const station of reachable(reception)) {
    const distance = Math.abs(scale.alongAt(station.dial!.position) - at);
    if (distance <= near && (!nearest || distance < nearest.distance)) nearest = { station, distance };
  }
  if (nearest) view.chooseStation(nearest.station.index);
  else pointBeside(view, reception, scale, scale.positionAlong(at));
}

/** Put the pointer at a position; on a station if it is exactly there. */
export function pointTo(view: Pointed, reception: Reception, position: number): void {
  const station = reachable(reception).find((one) => Math.abs(one.dial!.position - position) < 1e-9);
  if (station) view.chooseStation(station.index);
  else pointBeside(view, reception, dialScale(reception.dial), Math.min(1, Math.max(0, position)));
}

/** Tune to a frequency, on to a station if one is there within half a step. */
export function tuneTo(view: Pointed, reception: Reception, scale: DialScale, frequency: number, step: number): void {
  const wanted = Math.min(reception.dial.highest, Math.max(reception.dial.lowest, frequency));
  const station = reachable(reception).find((one) => Math.abs(one.frequency - wanted) < step / 2);
  if (station) view.chooseStation(station.index);
  else pointBeside(view, reception, scale, scale.positionOf(wanted));
}

/** The next station up (1) or down (−1) from a frequency, round past the end. */
export function nextStation(view: Pointed, reception: Reception, frequency: number, direction: 1 | -1): void {
  const stations = reachable(reception);
  if (stations.length === 0) return;
  const beyond = stations.filter((station) => (station.frequency - frequency) * direction > 1);
  const next =
    direction === 1 ? (beyond[0] ?? stations[0]) : (beyond[beyond.length - 1] ?? stations[stations.length - 1]);
  view.chooseStation(next.index);
}

/** Channels are 9 kHz apart in most of the world and 10 kHz in the Americas; the stations show which. */
export function channelStep(reception: Reception): number {
  const on = (raster: number) => reception.stations.filter((one) => one.frequency % raster === 0).length;
  return on(9000) >= on(10_000) ? 9000 : 10_000;
}
