import type { Warning } from '../../engine/facts/warning.ts';
import type { Arrival, Neighbour } from '../../engine/place/stations/arrival.ts';
import type { OutOfRange, StationReception, Verdict } from '../../engine/reception/path/types.ts';
import { isHeard } from '../../engine/reception/verdict.ts';
import type { RangedArrival } from '../../engine/uncertainty/ranged-field.ts';
import type { ReceivedOnBestBands } from '../../engine/uncertainty/receive-on-best-bands.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import {
  arrivalWarning,
  bearingText,
  disturbedByText,
  estimateText,
  neighbourText,
  placeTableWords,
  propagationText,
  verdictWords,
  warningSentences,
} from '../words/index.ts';
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
  readonly day: RangedArrival['total'];
  readonly night: RangedArrival['total'];
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
  /** Of a set with a band switch the band in which it is received best; undefined where none reaches it. */
  readonly band?: string;
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
  readonly day: readonly RangedArrival[];
  readonly night: readonly RangedArrival[];
  /** At the time asked for: one of the two, or a moment. */
  readonly now: readonly Arrival[];
}

/** What to try first: the best for this set that comes through and is kept apart from the rest. */
const firstChoice = ({ best, stations }: ReceivedOnBestBands): number | undefined =>
  best.find((index) => isHad(stations[index]) && isSeparated(stations[index])) ??
  best.find((index) => isHad(stations[index]));

const isHad = (s: StationReception): boolean => isHeard(s.verdict);
const isSeparated = (s: StationReception): boolean =>
  s.disturbance === undefined || s.disturbance.effect === 'none' || s.disturbance.effect === 'behind';

/**
 * Rows in the order best for this set.
 * @param reception of a set
 * @param options what arrives by day and by night, and now
 * @returns field strengths (V/m), directions (degrees) and verdicts
 */
export function stationRows(reception: ReceivedOnBestBands, { day, night, now }: DayAndNight): StationRow[] {
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
      band: reception.bands?.[index],
      separated: isSeparated(station),
      disturbedBy: others ? disturbedByText(disturbance) : undefined,
      first: index === first,
      warnings: now[index].warnings,
    };
  });
}

/** Nothing to say of a station that is not heard at all. */
const interferenceText = ({ disturbedBy, heard }: StationRow): string =>
  disturbedBy ? clean(disturbedBy) : isHeard(heard) ? placeTableWords.noInterference : '';

/**
 * The stations received here, as a table for a terminal.
 * @param rows as `stationRows` has them
 * @param width characters in a line; default as many as it takes
 * @returns text of several lines
 */
export function placeTable(rows: readonly StationRow[], width?: number): string {
  const { columns } = placeTableWords;
  return table(
    [
      { title: '', text: (r) => (r.first ? '►' : '') },
      { title: columns.station, text: (r) => r.name },
      ...(rows.some(({ band }) => band !== undefined)
        ? [{ title: columns.band, text: (r: StationRow) => clean(r.band ?? '') }]
        : []),
      { title: columns.frequency, text: (r) => formatNumber(r.frequency / 1e3, 5), align: 'right' },
      {
        title: columns.distance,
        text: (r) => (r.distance === undefined ? '' : formatQuantity(r.distance, 'length', 3)),
        align: 'right',
      },
      { title: columns.bearing, text: (r) => bearingText(r.bearing) },
      { title: columns.day, text: (r) => estimateText(r.day), align: 'right' },
      { title: columns.night, text: (r) => estimateText(r.night), align: 'right' },
      { title: columns.propagation, text: propagationText },
      { title: columns.verdict, text: (r) => verdictWords[r.heard] },
      { title: columns.interference, text: interferenceText },
      { title: columns.neighbour, text: (r) => r.neighbours.slice(0, 1).map(neighbourText).join() },
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
  return [...names].map(([warning, who]) =>
    arrivalWarning(who.length === rows.length && who.length > 2 ? undefined : who, warning),
  );
}
