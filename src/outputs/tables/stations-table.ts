import type { Warning } from '../../engine/facts/warning.ts';
import { compassPoint } from '../../engine/place/geodesy.ts';
import type { Arrival, Estimate, Neighbour } from '../../engine/place/stations/arrival.ts';
import type { OutOfRange, Reception, StationReception, Verdict } from '../../engine/reception/path/types.ts';
import { isHeard } from '../../engine/reception/verdict.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { interferenceWords, verdictWords, warningSentences } from '../words/index.ts';
import { clean, table } from './table.ts';

/** What can be had of one station, by day and by night, and what this set makes of it. */
export interface StationRow {
  /** Place in the description's list. */
  readonly index: number;
  readonly name: string;
  readonly frequency: number;
  /** m, and degrees clockwise from north toward it. */
  readonly distance?: number;
  readonly bearing?: number;
  readonly day: Estimate;
  readonly night: Estimate;
  /** How it comes by day and by night: "ground wave", "both" … */
  readonly dayBy: Arrival['source'];
  readonly nightBy: Arrival['source'];
  /** How it comes and goes by night. */
  readonly fading: Arrival['fading'];
  /** Within 20 kHz at the time asked for, by what they arrive with, strongest first. */
  readonly neighbours: readonly Neighbour[];
  /** The same verdict as the list of stations has: a masked station is not called quiet. */
  readonly heard: Verdict;
  readonly outOfRange?: OutOfRange;
  /** Whether the set keeps it apart from the rest. */
  readonly separated: boolean;
  /** Who disturbs it most, and how: "Radio Corvale: troublesome". */
  readonly disturbedBy?: string;
  /** The sensible first station to try for. */
  readonly first: boolean;
  readonly warnings: readonly Warning[];
}

/** Arrivals of the same stations, in the description's order. */
export interface DayAndNight {
  readonly day: readonly Arrival[];
  readonly night: readonly Arrival[];
  /** At the time asked for: one of the two, or a moment. */
  readonly now: readonly Arrival[];
}

/** What to try first: the best for this set that comes through and is kept apart from the rest. */
const firstChoice = ({ best, stations }: Reception): number | undefined =>
  best.find((index) => isHad(stations[index]) && isSeparated(stations[index])) ??
  best.find((index) => isHad(stations[index]));

const isHad = (s: StationReception): boolean => isHeard(s.verdict);
const isSeparated = (s: StationReception): boolean =>
  s.disturbance === undefined || s.disturbance.effect === 'none' || s.disturbance.effect === 'behind';

/** Rows in the order best for this set. */
export function stationRows(reception: Reception, { day, night, now }: DayAndNight): StationRow[] {
  const first = firstChoice(reception);
  return reception.best.map((index): StationRow => {
    const station = reception.stations[index];
    const { disturbance } = station;
    const heard = station.verdict;
    const others = disturbance && disturbance.effect !== 'none' && (isHeard(heard) || heard === 'masked');
    return {
      index,
      name: station.name,
      frequency: station.frequency,
      distance: now[index].distance,
      bearing: now[index].bearing,
      day: day[index].total,
      night: night[index].total,
      dayBy: day[index].source,
      nightBy: night[index].source,
      fading: night[index].fading,
      neighbours: now[index].neighbours.toSorted((a, b) => b.difference - a.difference),
      heard,
      outOfRange: station.outOfRange,
      separated: isSeparated(station),
      disturbedBy: others ? `${disturbance.by}: ${interferenceWords[disturbance.effect]}` : undefined,
      first: index === first,
      warnings: now[index].warnings,
    };
  });
}

/** Fields below this, V/m, are under any noise there is; their figures would only look like knowledge. */
const LEAST_SHOWN = 1e-6;

/** "1.2 mV/m ±5 dB"; a dash for nothing. */
export const estimateText = ({ fieldStrength, spread }: Estimate): string =>
  fieldStrength > 0 && fieldStrength < LEAST_SHOWN
    ? 'under 1 µV/m'
    : fieldStrength > 0
      ? `${formatQuantity(fieldStrength, 'field strength', 2)} ±${Math.round(spread)} dB`
      : '—';

/** "74° east": degrees for the frame, the point of the compass for the mind. */
export const bearingText = (bearing: number | undefined): string =>
  bearing === undefined ? '' : `${Math.round(bearing) % 360}° ${compassPoint(bearing)}`;

/** "ground, sky at night". */
export function comesBy({ dayBy, nightBy, fading }: Pick<StationRow, 'dayBy' | 'nightBy' | 'fading'>): string {
  if (dayBy === 'measured') return 'as measured';
  if (dayBy === 'nothing' && nightBy === 'nothing') return 'not known';
  if (fading === 'deep') return 'ground; with sky at night, fading';
  return nightBy === 'sky wave' ? 'ground; sky at night' : 'ground';
}

/** "Radio Corvale −9 kHz, +12 dB". */
export const neighbourText = ({ name, offset, difference }: Neighbour): string =>
  `${name} ${offset === 0 ? 'same channel' : `${signed(offset / 1e3)} kHz`}, ${signed(Math.round(difference))} dB`;

const signed = (x: number): string => `${x > 0 ? '+' : ''}${formatNumber(x, 3)}`;

/** Nothing to say of a station that is not heard at all. */
const keptApart = ({ disturbedBy, heard }: StationRow): string =>
  disturbedBy ? clean(disturbedBy) : isHeard(heard) ? 'yes' : '';

/** What can be had here, as a table for a terminal. */
export function placeTable(rows: readonly StationRow[], width?: number): string {
  return table(
    [
      { title: '', text: (r) => (r.first ? '►' : '') },
      { title: 'station', text: (r) => r.name },
      { title: 'kHz', text: (r) => formatNumber(r.frequency / 1e3, 5), align: 'right' },
      {
        title: 'distance',
        text: (r) => (r.distance === undefined ? '' : formatQuantity(r.distance, 'length', 3)),
        align: 'right',
      },
      { title: 'bearing', text: (r) => bearingText(r.bearing) },
      { title: 'by day', text: (r) => estimateText(r.day), align: 'right' },
      { title: 'by night', text: (r) => estimateText(r.night), align: 'right' },
      { title: 'comes by', text: comesBy },
      { title: 'this set', text: (r) => verdictWords[r.heard] },
      { title: 'kept apart', text: keptApart },
      { title: 'beside it', text: (r) => r.neighbours.slice(0, 1).map(neighbourText).join() },
    ],
    rows,
    width,
  );
}

/** Each warning once, with the stations it is about: "Radio Corvale, Quayside: It comes by way of the sky …". */
export function warningsTogether(rows: readonly Pick<StationRow, 'name' | 'warnings'>[]): string[] {
  const names = new Map<string, string[]>();
  for (const { name, warnings } of rows)
    for (const warning of warningSentences(warnings)) names.set(warning, [...(names.get(warning) ?? []), name]);
  return [...names].map(
    ([warning, who]) => `${who.length === rows.length && who.length > 2 ? 'All' : who.join(', ')}: ${warning}`,
  );
}
