import { fewOfEach } from '../numerics/few-of-each.ts';
import type { Position } from '../place/geodesy.ts';
import { sunState } from '../place/sun.ts';
import type { Verdict } from '../reception/path/types.ts';
import { isHeard } from '../reception/verdict.ts';
import { hasRanges, type RangedReception } from '../uncertainty/ranged-reception.ts';
import { brief } from '../units/brief.ts';
import type { Decibels, Degrees, Hertz, Ratio } from '../units/quantities.ts';
import type { HeardAs, LogEntry, LogProblem } from './entry.ts';

/** Both lights, in the order in which they are shown. */
export const LIGHTS = ['day', 'night'] as const;
/** By day, or with the sun down at the listener; dusk and dawn are night, for sky waves arrive by then. */
export type Light = (typeof LIGHTS)[number];

/** What was predicted of a station by day or by night, beside what was heard. */
export interface LoggedLight {
  readonly verdict: Verdict;
  /** Median at the ear; undefined out of range. */
  readonly level?: Decibels;
  /** Of sets built like this one, the share in which it is heard; undefined where it has no ranges. */
  readonly chance?: Ratio;
  /** How often it was heard so. */
  readonly heard: Readonly<Partial<Record<HeardAs, number>>>;
  readonly last?: Date;
  /** What does not fit: likely now, and heard at no time; or unlikely, and heard on several days. */
  readonly surprise?: 'never-heard' | 'heard-though-unlikely';
  /** Days on which anything was logged in this light. */
  readonly days: number;
}

/** A station of the place with its entries. */
export interface LoggedStation {
  readonly index: number;
  readonly name: string;
  readonly frequency: Hertz;
  readonly lights: Readonly<Record<Light, LoggedLight>>;
}

/** An entry with the station that it is taken for. */
export interface PlacedEntry {
  readonly entry: LogEntry;
  readonly light: Light;
  /** Undefined: none of the place. */
  readonly station?: number;
}

/** A log beside what was predicted. */
export interface LogAgainstPrediction {
  /** In the order of the place. */
  readonly stations: readonly LoggedStation[];
  readonly entries: readonly PlacedEntry[];
  /** Days (UTC) on which anything was logged. */
  readonly days: number;
  readonly problems: readonly LogProblem[];
}

/** Frequencies farther apart than half a 9 kHz channel are of different stations. */
const HALF_CHANNEL: Hertz = 4.5e3;
/** A pointer is read to this, or to the doubt of the dial where that is more. */
const POINTER: Degrees = 2;
/** Fewer days say nothing. */
const ENOUGH_DAYS = 3;
/** Nine of ten such sets, and one of ten. */
const LIKELY: Ratio = 0.9;
const UNLIKELY: Ratio = 0.1;
const DAY_MS = 86_400_000;

/**
 * A log beside what the set should give: for each station by day and by night, what was predicted and what was heard, and
 * what does not fit. An entry is taken for the station of its name, or else of its frequency (within half a channel), or
 * else of its pointer.
 * @param receptions of the set with ranges, by day and by night; each station on its best band
 * @param position of the place; without it the hour of the entry's own clock decides, 6 to 18 being day
 * @param entries of the log
 * @returns stations in the order of the place; entries that no station of the place fits are in `problems`
 */
export function logAgainstPrediction(
  receptions: Readonly<Record<Light, Pick<RangedReception, 'stations'>>>,
  position: Position | undefined,
  entries: readonly LogEntry[],
): LogAgainstPrediction {
  const few = fewOfEach<Omit<LogProblem, 'more'>>();
  const placed = entries.map((entry): PlacedEntry => {
    const light = lightOf(position, entry);
    const station = stationOf(entry, receptions[light]);
    if (station === undefined) {
      const { row, station: given, frequency } = entry;
      few.add('unknown-station', () => ({
        row,
        column: given !== undefined ? 'station' : frequency !== undefined ? 'frequency' : 'pointer',
        given: given && brief(given),
        fact: { code: 'unknown-station' },
        isLeftOut: false,
      }));
    }
    return { entry, light, station };
  });
  const days = { day: daysOf(placed, 'day'), night: daysOf(placed, 'night') };
  const stations = receptions.day.stations.map(({ index, name, frequency }): LoggedStation => {
    const all = placed.filter((one) => one.station === index);
    const isSilent = !all.some(({ entry }) => isHeard(entry.heard));
    const lightOfStation = (light: Light): LoggedLight => {
      const own = all.filter((one) => one.light === light).map(({ entry }) => entry);
      return loggedLight(receptions[light].stations[index], own, { days: days[light], isSilent });
    };
    return { index, name, frequency, lights: { day: lightOfStation('day'), night: lightOfStation('night') } };
  });
  const problems = few.all().map(({ item, more }) => ({ ...item, more }));
  return { stations, entries: placed, days: distinctDays(entries), problems };
}

function loggedLight(
  predicted: RangedReception['stations'][number],
  entries: readonly LogEntry[],
  { days, isSilent }: { readonly days: number; readonly isSilent: boolean },
): LoggedLight {
  const heard: Partial<Record<HeardAs, number>> = {};
  for (const entry of entries) heard[entry.heard] = (heard[entry.heard] ?? 0) + 1;
  const times = entries.filter((entry) => isHeard(entry.heard));
  const chance = hasRanges(predicted) ? predicted.chance : undefined;
  const last = times.reduce<Date | undefined>(
    (latest, { time }) => (latest && latest > time ? latest : time),
    undefined,
  );
  const surprise =
    chance === undefined
      ? undefined
      : chance >= LIKELY && isSilent && days >= ENOUGH_DAYS
        ? 'never-heard'
        : chance <= UNLIKELY && distinctDays(times) >= ENOUGH_DAYS
          ? 'heard-though-unlikely'
          : undefined;
  return { verdict: predicted.verdict, level: predicted.soundPressureLevel, chance, heard, last, surprise, days };
}

const distinctDays = (entries: readonly LogEntry[]): number =>
  new Set(entries.map(({ time }) => Math.floor(time.getTime() / DAY_MS))).size;

const daysOf = (placed: readonly PlacedEntry[], light: Light): number =>
  distinctDays(placed.filter((one) => one.light === light).map(({ entry }) => entry));

function lightOf(position: Position | undefined, { time, localHour }: LogEntry): Light {
  if (position) return sunState(time, position).state === 'day' ? 'day' : 'night';
  return localHour >= 6 && localHour < 18 ? 'day' : 'night';
}

function stationOf(entry: LogEntry, { stations }: Pick<RangedReception, 'stations'>): number | undefined {
  const name = entry.station?.toLowerCase();
  const named = name === undefined ? [] : stations.filter((one) => one.name.toLowerCase() === name);
  const { frequency, pointer } = entry;
  if (named.length === 1) return named[0].index;
  const among = named.length > 0 ? named : stations;
  if (frequency !== undefined) return nearest(among, (one) => Math.abs(one.frequency - frequency), HALF_CHANNEL);
  // Under a name that is not in the list the pointer may stand on anybody.
  if (name !== undefined || pointer === undefined) return named[0]?.index;
  return nearest(
    among.filter(({ dial, verdict }) => dial && isHeard(verdict)),
    ({ dial }) => Math.abs((dial?.scale ?? Infinity) - pointer) / reach(dial?.range),
    1,
  );
}

const reach = (range: readonly [Degrees, Degrees] | undefined): Degrees =>
  Math.max(POINTER, range ? (range[1] - range[0]) / 2 : 0);

/** Of those as near as any, the one first in the list. */
function nearest<T extends { readonly index: number }>(
  among: readonly T[],
  distance: (one: T) => number,
  farthest: number,
): number | undefined {
  let best: number | undefined;
  let least = farthest;
  for (const one of among) {
    const d = distance(one);
    if (d > least || (d === least && best !== undefined)) continue;
    least = d;
    best = one.index;
  }
  return best;
}
