import { build } from '../built/build.ts';
import { builtSet } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import type { Edit } from '../kinds/adjustment.ts';
import { audioLimits } from '../reception/detection/audio-limits.ts';
import { type TuningCurve, tuningCurve } from '../reception/dial/dial.ts';
import { type Arriving, besideStation, interferenceAmong, measuredWidth } from '../reception/interference/beside.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { type Receiver, receiver, receiveStation, type TunedStation } from '../reception/path/receive-station.ts';
import type { Disturbance } from '../reception/path/types.ts';
import { isHeard, verdictOf, worstOf } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { editedSet } from '../set/edit.ts';
import type { Decibels, Hertz } from '../units/quantities.ts';
import type { Figures } from './question.ts';

/** A set ready to be tuned to any station of its place; each is followed once. */
export interface Trial {
  readonly set: SetDescription;
  readonly receiver: Receiver;
  readonly tuned: (station: number) => TunedStation;
  readonly interference: (station: number) => readonly Disturbance[];
  readonly figures: (station: number) => Figures;
  /** How far a station stands over another, dB; infinite where that one is not heard with it. */
  readonly clearanceFrom: (station: number, other: number) => Decibels;
  /** Tones of a station up to here are less than 3 dB down. */
  readonly audioBandwidth: (station: number) => Hertz;
  /** How far a station lies beyond the dial, nepers of frequency; 0 within. */
  readonly beyondDial: (station: number) => number;
  /** Things that somebody buys, winds or fits. */
  readonly parts: () => number;
  /** −3 dB, the pointer left where it is. */
  readonly bandwidth: (station: number) => Hertz;
  readonly curve: () => TuningCurve;
  /** How many stations are heard, and not for another. */
  readonly stationsHeard: () => number;
}

/** Edits that leave nothing to be tried. */
export interface NotBuildable {
  readonly notBuildable: string;
}

/** A set and what becomes of it with edits made; each is built once, whichever station is asked about. */
export interface Trials {
  readonly now: Trial;
  readonly with: (edits: readonly Edit[]) => Trial | NotBuildable;
  /** How many different sets were built. */
  readonly built: () => number;
}

export const isBuilt = (outcome: Trial | NotBuildable): outcome is Trial => !('notBuildable' in outcome);

/** Of more stations than this, only so many are looked at beside a station: those that disturb it most now. */
const WATCHED = 24;
/** Sets kept; more are forgotten, the oldest first. */
const MOST_KEPT = 2000;

/**
 * A set to be tried with changes: what they leave as it is, is worked out once.
 * @param set as read
 * @param when time and coastline
 * @returns the set as it is, and a way to try any change of it
 * @throws RangeError when the set itself cannot be built; `readValue` names the reasons.
 */
export function trialsOf(set: SetDescription, when: FieldOptions = {}): Trials {
  const fieldOf = fieldsAtSite(set.place, when);
  const arriving = set.place.stations.map((station): Arriving => ({ station, field: fieldOf(station) }));
  const amongAll = once(() => interferenceAmong(now.receiver, arriving, WATCHED));
  const watched = lazily((station: number): readonly Arriving[] => {
    if (arriving.length <= WATCHED) return arriving;
    const strongest = amongAll()(now.tuned(station)).disturbances.slice(0, WATCHED);
    return strongest.map(({ index }) => arriving[index]);
  });
  const trialOf = (changed: SetDescription, like?: SetCircuit): Trial | NotBuildable => {
    const made = build(changed, { like });
    if (!made.ok) return { notBuildable: made.reason };
    return trial(changed, receiver(made.circuit, fieldOf), watched, arriving);
  };
  const first = trialOf(set);
  if (!isBuilt(first)) throw new RangeError(first.notBuildable);
  const now = first;
  const known = new Map<string, Trial | NotBuildable>();
  let built = 1;
  return {
    now,
    built: () => built,
    with: (edits) => {
      if (edits.length === 0) return now;
      const key = JSON.stringify(edits.map(({ path, to }) => [path, to]));
      let outcome = known.get(key);
      if (outcome === undefined) {
        const edited = editedSet(set, edits);
        outcome = edited.ok ? trialOf(edited.set, now.receiver.circuit) : { notBuildable: edited.reason };
        built++;
        known.set(key, outcome);
        if (known.size > MOST_KEPT) known.delete(known.keys().next().value!);
      }
      return outcome;
    },
  };
}

function trial(
  set: SetDescription,
  ready: Receiver,
  watched: (station: number) => readonly Arriving[],
  arriving: readonly Arriving[],
): Trial {
  const tuned = lazily((station: number) => receiveStation(ready, set.place.stations[station]));
  const interference = lazily((station: number) => besideStation(ready, tuned(station), watched(station), WATCHED));
  const curve = lazily((_: 0) => tuningCurve(ready));
  const { stations } = set.place;
  return {
    set,
    receiver: ready,
    tuned,
    interference,
    curve: () => curve(0),
    clearanceFrom: (station, other) => clearanceFrom(interference(station), other),
    audioBandwidth: lazily((station: number) => audioBandwidth(ready, tuned(station))),
    beyondDial: (station) => {
      const { lowest, highest } = curve(0);
      const { frequency } = stations[station];
      return Math.max(0, Math.log(lowest / frequency), Math.log(frequency / highest));
    },
    parts: () => builtSet(set).parts.size,
    bandwidth: lazily((station: number) => measuredWidth(ready, tuned(station))),
    figures: lazily((station: number): Figures => figuresOf(tuned, interference, station)),
    stationsHeard: () =>
      arriving.filter((_, station) => isHeard(figuresOf(tuned, interference, station).verdict)).length,
  };
}

const clearanceFrom = (beside: readonly Disturbance[], other: number): Decibels =>
  beside.find(({ index }) => index === other)?.separation ?? Number.POSITIVE_INFINITY;

/** Programmes go no higher, Hz. */
const HIGHEST_TONE = 20e3;

function audioBandwidth(ready: Receiver, tuned: TunedStation): Hertz {
  const { throughTunedCircuit = HIGHEST_TONE, throughLoad = HIGHEST_TONE } = audioLimits(ready, tuned);
  return Math.min(throughTunedCircuit, throughLoad);
}

const once = <V>(work: () => V): (() => V) => {
  const known = lazily((_: 0) => work());
  return () => known(0);
};

/** A function of one thing, worked out once for each. */
function lazily<K, V>(work: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, work(key));
    return known.get(key)!;
  };
}

/** A station whose audio no equation gives, as strong as it is, counts as one beyond the dial. */
const UNSOLVED: Figures = {
  isWithin: false,
  level: Number.NEGATIVE_INFINITY,
  margin: Number.NEGATIVE_INFINITY,
  heard: 'not heard',
  verdict: 'out of range',
  clearance: Number.NEGATIVE_INFINITY,
};

function figuresOf(
  tuned: (station: number) => TunedStation,
  interference: (station: number) => readonly Disturbance[],
  station: number,
): Figures {
  try {
    const { within, heard } = tuned(station);
    const beside = interference(station);
    const worst = worstOf(beside);
    return {
      isWithin: within,
      level: heard.spl,
      margin: heard.margin,
      heard: heard.loudness,
      verdict: verdictOf(within, heard.loudness, beside),
      clearance: worst?.separation ?? Number.POSITIVE_INFINITY,
      worst: worst?.by,
    };
  } catch (refusal) {
    if (refusal instanceof RangeError) return UNSOLVED;
    throw refusal;
  }
}
