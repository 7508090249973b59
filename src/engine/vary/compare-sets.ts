import { setCircuit } from '../built/set-circuit.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { TrapDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { COIL_KEYS } from '../kinds/arrangements/coil-names.ts';
import { isLoop } from '../kinds/loops.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import { turnToBest } from '../reception/path/receive-bands.ts';
import { standingBand, turnSwitch } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import { attempt } from '../uncertainty/attempt.ts';
import type { RangedReception, RangedStation } from '../uncertainty/ranged-reception.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import type { Decibels, Hertz, Ratio } from '../units/quantities.ts';
import { type Trial, type Trials, trialsOf } from './trial.ts';

/** Parts that are exchanged together, or one setting of an arrangement that both sets have. */
export type ExchangedPart =
  | 'aerial'
  | 'earth'
  | 'coils'
  | 'tuning'
  | 'arrangement'
  | 'detector'
  | 'load'
  /** Coils and the way they are connected, where one does not go with the other's. */
  | 'coils-arrangement'
  /** Those and the aerial, where it is its own coil in one set, or another such coil in the other. */
  | 'aerial-coils-arrangement';

/** What one set has otherwise than another, and what that does on a station: retuned each time. */
export interface Exchange {
  readonly part: ExchangedPart;
  /** Of an arrangement that is the same but for this: its key, and both values in SI units where they are given. */
  readonly setting?: { readonly key: string; readonly from?: unknown; readonly to?: unknown };
  /** Mean of putting it into the first set and of leaving it in the second; undefined out of range of the dial. */
  readonly level?: Decibels;
  /** The same of the bandwidth: how many times as wide. */
  readonly bandwidth?: Ratio;
}

/** How a set differs from the first on a station. */
export interface SetDifference {
  /** Sound at the ear, of the medians; undefined where either does not tune so far. */
  readonly level?: Decibels;
  /** Bandwidth at the detector (−3 dB) over that of the first. */
  readonly bandwidth?: Ratio;
  /** What is otherwise, that with the most effect on the level first. */
  readonly exchanges: readonly Exchange[];
}

/** One of several sets compared on a station. */
export interface ComparedSet {
  /** At the place of the first. */
  readonly set: SetDescription;
  /** Every level from field to ear, medians with ranges. */
  readonly station: RangedStation;
  /** Of the tuning range and of every station: where it is on the scale and how it is heard. */
  readonly dial: RangedReception['dial'];
  /** Against the first set; none of the first. */
  readonly difference?: SetDifference;
}

/** Several sets on one station of the first one's place. */
export interface ComparedSets {
  readonly sets: readonly ComparedSet[];
  /** Sets whose descriptions name another place or room, which is not used here. */
  readonly moved: readonly number[];
}

/**
 * Sets side by side on one station, at the place and in the room of the first, and what makes the difference: parts are
 * exchanged one group at a time, in both directions.
 * @param sets two or more, as read; the band switch of the first stays where it stands, that of any other is turned to the
 * band that receives the station best
 * @param station index in the place of the first
 * @param when time and coastline
 * @returns levels (V, A, W; dB SPL at the ear), bandwidths (Hz), differences against the first set
 * @throws RangeError for parts that cannot be built, and for a station that is not there
 */
export function compareSets(sets: readonly SetDescription[], station: number, when: FieldOptions = {}): ComparedSets {
  const [first] = sets;
  if (!(station in first.place.stations))
    throw new RangeError(`station must be 0 to ${first.place.stations.length - 1}, not ${station}`);
  const here = sets.map((set, i): SetDescription => {
    const carried = { ...withAllTrapsAsSet(set, first), place: first.place, ear: first.ear };
    return i === 0 ? carried : turnToBest(carried, station, when);
  });
  const trials = trialsOf(first, when);
  const compared = here.map((set, i): ComparedSet => {
    const { stations, dial } = receiveRanged(set, { ...when, stations: [station] });
    const ranged = stations[station] as RangedStation;
    return i === 0
      ? { set, station: ranged, dial }
      : { set, station: ranged, dial, difference: differenceOf(trials, named(set, first), station) };
  });
  const moved = sets.flatMap(({ place, ear }, i) => (isSame(place, first.place) && isSame(ear, first.ear) ? [] : [i]));
  return { sets: compared, moved };
}

/** A set that is carried to another place with its wave traps tuned as they are, to stations that may not be there. */
function withTrapsAsSet(set: SetDescription, { place }: SetDescription): SetDescription {
  if (isSame(set.place, place)) return set;
  const { traps } = aerialLead(set.arrangement);
  const carrier = ({ stations }: SetDescription['place'], text: string): Hertz | undefined =>
    stations[stationNamed(stations, text) ?? -1]?.frequency;
  const isOther = ({ stops }: TrapDescription): boolean =>
    stops !== undefined && carrier(set.place, stops) !== carrier(place, stops);
  if (!traps.some(isOther)) return set;
  const tuned = setCircuit(set).traps;
  const kept = traps.map((trap, i) =>
    isOther(trap) ? { ...trap, stops: undefined, capacitance: tuned[i].capacitance } : trap,
  );
  return { ...set, arrangement: { ...set.arrangement, traps: kept } as SetDescription['arrangement'] };
}

/** The same of every band, the switch left where it stands. */
function withAllTrapsAsSet(set: SetDescription, first: SetDescription): SetDescription {
  if (!set.bands) return withTrapsAsSet(set, first);
  const carried = set.bands.reduce<SetDescription>((now, _, band) => withTrapsAsSet(turnSwitch(now, band), first), set);
  return turnSwitch(carried, standingBand(set) ?? 0);
}

interface Heard {
  readonly level: Decibels;
  readonly bandwidth: Hertz;
}

function differenceOf(trials: Trials, other: SetDescription, station: number): SetDifference {
  const heard = ({ figures, bandwidth }: Trial): Heard | undefined =>
    attempt(() =>
      figures(station).isWithin ? { level: figures(station).level, bandwidth: bandwidth(station) } : undefined,
    );
  const heardWith = (set: SetDescription): Heard | undefined => attempt(() => heard(trials.about(set).now));
  const then = trials.about(other).now;
  const first = trials.now.set;
  const [a, b] = [trials.now.medians, then.medians];
  const bothWithin = a.figures(station).isWithin && b.figures(station).isWithin;
  const ends = { a: heard(trials.now), b: heard(then) };
  return {
    ...(bothWithin && {
      level: b.figures(station).level - a.figures(station).level,
      bandwidth: b.bandwidth(station) / a.bandwidth(station),
    }),
    exchanges: exchangesOf(first, other)
      .map((exchange) => effectOf(exchange, { first, other, ends, heardWith }))
      .sort((x, y) => Math.abs(y.level ?? 0) - Math.abs(x.level ?? 0)),
  };
}

interface Planned {
  readonly part: ExchangedPart;
  readonly setting?: Exchange['setting'];
  /** A set with this of another. */
  readonly into: (set: SetDescription, from: SetDescription) => SetDescription;
}

function effectOf(
  { part, setting, into }: Planned,
  {
    first,
    other,
    ends,
    heardWith,
  }: {
    readonly first: SetDescription;
    readonly other: SetDescription;
    readonly ends: { readonly a?: Heard; readonly b?: Heard };
    readonly heardWith: (set: SetDescription) => Heard | undefined;
  },
): Exchange {
  const put = heardWith(into(first, other));
  const left = heardWith(into(other, first));
  const steps = [
    [ends.a, put],
    [left, ends.b],
  ].flatMap(([before, after]) => (before && after ? [{ before, after }] : []));
  if (steps.length === 0) return { part, setting };
  const mean = (of: (step: { before: Heard; after: Heard }) => number): number =>
    steps.reduce((sum, step) => sum + of(step), 0) / steps.length;
  return {
    part,
    setting,
    level: mean(({ before, after }) => after.level - before.level),
    bandwidth: Math.exp(mean(({ before, after }) => Math.log(after.bandwidth / before.bandwidth))),
  };
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const ALONE = ['aerial', 'earth', 'tuning', 'detector', 'load'] as const;

/** What two sets have otherwise, in pieces that each leave a set that can be built wherever that is so. */
function exchangesOf(a: SetDescription, b: SetDescription): Planned[] {
  const whole = (part: ExchangedPart, keys: readonly (keyof SetDescription)[]): Planned[] =>
    keys.every((key) => isSame(a[key], b[key]))
      ? []
      : [
          {
            part,
            into: (set, from) => ({ ...set, ...Object.fromEntries(keys.map((key) => [key, from[key]])) }),
          },
        ];
  const loops = (isLoop(a.aerial) || isLoop(b.aerial)) && a.aerial.kind !== b.aerial.kind;
  const alone = ALONE.filter((key) => !loops || (key !== 'aerial' && key !== 'earth')).flatMap((key) =>
    whole(key, [key]),
  );
  if (loops) return [...alone, ...whole('aerial-coils-arrangement', ['aerial', 'earth', 'coils', 'arrangement'])];
  const together = whole('coils-arrangement', ['coils', 'arrangement']);
  if (a.arrangement.kind !== b.arrangement.kind) return [...alone, ...together];
  const pieces = [...whole('coils', ['coils']), ...settingsOf(a, b)];
  const fits = pieces.every(({ into }) => canBeBuilt(into(a, b)) && canBeBuilt(into(b, a)));
  return [...alone, ...(fits ? pieces : together)];
}

const canBeBuilt = (set: SetDescription): boolean =>
  attempt(() => trialsOf({ ...set, place: { ...set.place, stations: [] } })) !== undefined;

function settingsOf(a: SetDescription, b: SetDescription): Planned[] {
  const [from, to] = [entriesOf(a), entriesOf(b)];
  return [...new Set([...from.keys(), ...to.keys()])]
    .filter((key) => !isSame(from.get(key), to.get(key)))
    .map((key) => ({
      part: 'arrangement',
      setting: { key, from: from.get(key), to: to.get(key) },
      into: (set, other) => {
        const entries = entriesOf(set);
        const value = entriesOf(other).get(key);
        if (value === undefined) entries.delete(key);
        else entries.set(key, value);
        return { ...set, arrangement: Object.fromEntries(entries) as SetDescription['arrangement'] };
      },
    }));
}

const entriesOf = ({ arrangement }: SetDescription): Map<string, unknown> => new Map(Object.entries(arrangement));

/** A set whose coils have the names that those in the same use have in another, for a name alone makes no difference. */
function named(set: SetDescription, like: SetDescription): SetDescription {
  const [own, others] = [entriesOf(set), entriesOf(like)];
  if (set.arrangement.kind !== like.arrangement.kind) return set;
  const names = new Map<unknown, unknown>();
  for (const key of COIL_KEYS) if (own.has(key) && others.has(key)) names.set(own.get(key), others.get(key));
  if (new Set(names.values()).size < names.size) return set;
  const renamed = (name: string): string => String(names.get(name) ?? (isTaken(name) ? `${name} (2)` : name));
  const isTaken = (name: string): boolean => [...names.values()].includes(name);
  for (const key of COIL_KEYS) if (own.has(key)) own.set(key, renamed(String(own.get(key))));
  return {
    ...set,
    coils: set.coils.map((coil) => ({ ...coil, name: renamed(coil.name) })),
    arrangement: Object.fromEntries(own) as SetDescription['arrangement'],
  };
}
