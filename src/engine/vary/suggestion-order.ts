import type { Decibels } from '../units/quantities.ts';
import { costOfChanges } from './optimise.ts';
import type { Change } from './question.ts';
import type { Trial } from './trial.ts';

/** Names of stations, as the list has them. */
export interface HeardNames {
  readonly lost: readonly string[];
  readonly gained: readonly string[];
}

/**
 * Stations that a change takes away, and those it adds: places in the list of those heard before and not after, and the
 * other way. Of a set with a band switch only what the band that it stands on receives is looked at.
 */
export interface HeardChange {
  readonly lost: readonly number[];
  readonly gained: readonly number[];
  readonly names: HeardNames;
}

/**
 * Of two sets at one place, in the median; of a set with a band switch, on the band that it stands on.
 * @param stopped a station that is meant to go, by its place in the list
 */
export function heardChange(before: Trial, after: Trial, stopped?: number): HeardChange {
  const [was, is] = [before.medians.stationsHeard(), after.medians.stationsHeard()];
  const lost = was.filter((station) => station !== stopped && !is.includes(station));
  const gained = is.filter((station) => !was.includes(station));
  const named = (places: readonly number[]): string[] => places.map((at) => before.set.place.stations[at].name);
  return { lost, gained, names: { lost: named(lost), gained: named(gained) } };
}

/** What the order of suggestions goes by. */
interface Ordered extends HeardChange {
  readonly changes: readonly Change[];
}

/** A turn of a knob that loses no station comes before all that takes more. */
const KNOB_FIRST = 1e6;

/** How many stations are lost that are not to be lost. */
const missedOf = ({ lost }: Pick<HeardChange, 'lost'>, unwanted: readonly number[] = []): number =>
  lost.filter((station) => !unwanted.includes(station)).length;

/**
 * The place of a suggestion in the order, the greatest first: the gain divided by one more than the effort (knob 0, tap 1,
 * rewire 2, rewind 4, buy 5, outdoors 8; of several changes their sum), and by one more than the stations that are lost;
 * what gains less than nothing is multiplied by both. What takes only a turn of a knob and loses no station comes before all
 * others.
 * @param suggestion its changes and stations lost
 * @param gain dB
 * @param unwanted stations whose loss is none, such as the one that disturbs
 */
export function gainForEffort(
  { changes, lost }: Pick<Ordered, 'changes' | 'lost'>,
  gain: Decibels,
  unwanted: readonly number[] = [],
): number {
  const missed = missedOf({ lost }, unwanted);
  const cost = costOfChanges(changes);
  const by = (1 + cost) * (1 + missed);
  return (gain < 0 ? gain * by : gain / by) + (cost === 0 && missed === 0 ? KNOB_FIRST : 0);
}

interface OrderOptions {
  /** So many at most. */
  readonly most: number;
  /** Stations whose loss is none. */
  readonly unwanted?: readonly number[];
  /** Whether all that loses no station comes before all that loses one, as where no want says what a loss may buy. */
  readonly lossesLast?: boolean;
}

/**
 * The first few in the order of `gainForEffort`; what stations are lost is worked out only for those that may be among
 * them, for a loss only takes a suggestion back.
 * @param list with the gain of each, dB; among equals its order stands
 */
export function firstInOrder<S extends { readonly changes: readonly Change[] }>(
  list: readonly { readonly suggestion: S; readonly gain: Decibels }[],
  heardOf: (suggestion: S) => HeardChange,
  { most, unwanted, lossesLast = false }: OrderOptions,
): (S & HeardChange)[] {
  interface Waiting {
    readonly suggestion: S & Partial<HeardChange>;
    readonly gain: Decibels;
    readonly place: number;
  }
  const waiting = list.map(({ suggestion, gain }): Waiting => {
    return { suggestion, gain, place: gainForEffort({ ...suggestion, lost: [] }, gain) };
  });
  const order: (S & HeardChange)[] = [];
  while (waiting.length > 0 && order.length < most) {
    const at = waiting.reduce((best, one, i) => (one.place > waiting[best].place ? i : best), 0);
    const { suggestion, gain } = waiting[at];
    if (suggestion.lost !== undefined) {
      order.push(suggestion as S & HeardChange);
      waiting.splice(at, 1);
      continue;
    }
    const judged = { ...suggestion, ...heardOf(suggestion) };
    const setBack = lossesLast && missedOf(judged, unwanted) > 0 ? KNOB_FIRST : 0;
    waiting[at] = { suggestion: judged, gain, place: gainForEffort(judged, gain, unwanted) - setBack };
  }
  return order;
}
