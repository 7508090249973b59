import { setCircuit } from '../built/set-circuit.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { receiver, receiveStation } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import { formatNumber } from '../units/format.ts';
import type { Decibels } from '../units/quantities.ts';

/** The best value of one thing for one station, and what others lose against it. */
export interface Best {
  /** Turns of a tap, ratio of a transformer. */
  readonly value: number;
  /** Sound with it, dB SPL. */
  readonly level: Decibels;
  /** What the set has now loses against the best, dB; undefined where it has none. */
  readonly lostNow?: Decibels;
  /** What those at hand lose, in the order given. */
  readonly atHand: readonly { readonly value: number; readonly lost: Decibels }[];
  /** "Best tapped at 14 turns; at 18 it loses 0.6 dB." */
  readonly sentence: string;
}

/** The best value, and the set as it would be with it. */
export interface BestOfSet extends Best {
  readonly set: SetDescription;
}

/** When and over which coast the station comes in: default by day, and no coast. */
export interface FindOptions extends FieldOptions {
  /** Those one has already: what each loses is told. */
  readonly atHand?: readonly number[];
}

/** Sound of a station, dB SPL, with the set tuned to it; undefined when the set cannot be built so. */
export function levelOf(set: SetDescription, station: number, when: FieldOptions = {}): Decibels | undefined {
  try {
    const ready = receiver(setCircuit(set), fieldsAtSite(set.place, when));
    return receiveStation(ready, set.place.stations[station]).heard.spl;
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

/** What a search for the best value of one thing needs to know. */
export interface Search {
  readonly low: number;
  readonly high: number;
  /** Whole numbers only. */
  readonly whole: boolean;
  readonly with: (value: number) => SetDescription;
  readonly now?: number;
  /** How a value is said: "tapped at 14 turns". */
  readonly say: (value: number) => string;
}

/** Where the hill may have its top, tried first; a ratio scale. */
const FIRST_LOOK = 12;

/** Look along a ratio scale, then close in on the top. @returns undefined when nothing can be built. */
export function bestOf(search: Search, station: number, options: FindOptions = {}): BestOfSet | undefined {
  const known = new Map<number, Decibels>();
  const level = (value: number): Decibels => {
    let found = known.get(value);
    if (found === undefined)
      known.set(value, (found = levelOf(search.with(value), station, options) ?? Number.NEGATIVE_INFINITY));
    return found;
  };
  const at = (share: number): number => {
    const value = search.low * (search.high / search.low) ** share;
    return search.whole ? Math.round(value) : Number(value.toPrecision(3));
  };
  let top = 0;
  for (let i = 0; i <= FIRST_LOOK; i++) if (level(at(i / FIRST_LOOK)) > level(at(top / FIRST_LOOK))) top = i;
  let [low, high] = [Math.max(0, top - 1) / FIRST_LOOK, Math.min(FIRST_LOOK, top + 1) / FIRST_LOOK];
  for (let i = 0; i < 10 && at(low) !== at(high); i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (level(at(a)) < level(at(b))) low = a;
    else high = b;
  }
  for (const value of [search.now, ...(options.atHand ?? [])]) if (value !== undefined) level(value);
  const [value, best] = [...known].reduce((a, b) => (b[1] > a[1] ? b : a));
  if (best === Number.NEGATIVE_INFINITY) return undefined;
  const lost = (x: number): Decibels => best - level(x);
  const lostNow = search.now === undefined ? undefined : lost(search.now);
  const atHand = (options.atHand ?? []).map((x) => ({ value: x, lost: lost(x) }));
  const others = [
    ...(search.now === undefined || search.now === value ? [] : [{ value: search.now, lost: lostNow! }]),
    ...atHand.filter((x) => x.value !== value && x.value !== search.now),
  ].map((x) => `${search.say(x.value)} it loses ${formatNumber(x.lost, x.lost < 1 ? 1 : 2)} dB`);
  const said = search.say(value);
  return {
    value,
    set: search.with(value),
    level: best,
    lostNow,
    atHand,
    sentence: `Best ${said}${others.length > 0 ? `; ${others.join(', ')}` : search.now === value ? ', as it is' : ''}.`,
  };
}

/** @throws RangeError when the set has no such station. */
export function checkStation(set: SetDescription, station: number): void {
  if (!(Number.isInteger(station) && station >= 0 && station < set.place.stations.length))
    throw new RangeError(`station ${station} is not one of the set's ${set.place.stations.length}`);
}
