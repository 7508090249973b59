import { build } from '../built/build.ts';
import { builtSet } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import type { Edit } from '../kinds/adjustment.ts';
import { lazily, once } from '../numerics/lazily.ts';
import { audioLimits } from '../reception/detection/audio-limits.ts';
import { receiveOnDial, type TuningCurve, tuningCurve } from '../reception/dial/dial.ts';
import {
  type Arriving,
  bandwidthOf,
  disturbancesAt,
  interferenceAmong,
} from '../reception/interference/interference.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { type Receiver, receiver, type TunedStation } from '../reception/path/receive-station.ts';
import type { Disturbance } from '../reception/path/types.ts';
import { isHeard, verdictOf, worstOf } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { editedSet } from '../set/edit.ts';
import { overlaps } from '../set/keep.ts';
import { valueAtPath } from '../set/write.ts';
import { attempt } from '../uncertainty/attempt.ts';
import { type DrawnHearing, type DrawnStation, drawnSet } from '../uncertainty/drawn-set.ts';
import { type FieldDraws, fieldDraws } from '../uncertainty/field-draws.ts';
import { usualHearing } from '../uncertainty/ranged-reception.ts';
import type { Decibels, Hertz, Ratio } from '../units/quantities.ts';
import type { Figures } from './question.ts';

/** What a set gives of the stations of its place. */
export interface SetFigures {
  readonly figures: (station: number) => Figures;
  /** How far a station stands over another, dB; infinite where that one is not heard with it. */
  readonly clearanceFrom: (station: number, other: number) => Decibels;
  /** Tones of a station up to here are less than 3 dB down. */
  readonly audioBandwidth: (station: number) => Hertz;
  /** How far a station lies beyond the dial, nepers of frequency; 0 within. */
  readonly beyondDial: (station: number) => number;
  /** How far it lies from the nearer end of the dial, nepers; negative beyond it. */
  readonly insideDial: (station: number) => number;
  /** Things that somebody buys, winds or fits. */
  readonly parts: () => number;
  /** −3 dB, the pointer left where it is. */
  readonly bandwidth: (station: number) => Hertz;
  readonly curve: () => TuningCurve;
  /** The stations heard, and not for another, by their places in the list. */
  readonly stationsHeard: () => readonly number[];
}

/**
 * A set ready to be tuned to any station of its place; each is followed once. Its own figures are those with every input
 * in its middle, by which a search goes.
 */
export interface Trial extends SetFigures {
  readonly set: SetDescription;
  readonly receiver: Receiver;
  readonly tuned: (station: number) => TunedStation;
  readonly interference: (station: number) => readonly Disturbance[];
  /** Of what `parts` counts. */
  readonly partIds: () => readonly string[];
  /** Medians of all sets built like this one: what a reception shows, and what a change is judged by. */
  readonly medians: SetFigures;
  /** A station in all of those; undefined where nothing arrives. */
  readonly drawnStation: (station: number) => DrawnStation | undefined;
}

/** Edits that leave nothing to be tried. */
export interface NotBuildable {
  readonly notBuildable: string;
}

/** A set and what becomes of it with edits made; each is built once, whichever station is asked about. */
export interface Trials {
  readonly now: Trial;
  readonly with: (edits: readonly Edit[]) => Trial | NotBuildable;
  /** The same of another set at this place: what arrives, and parts that are the same, are shared. */
  readonly about: (changed: SetDescription) => Trials;
  /** How many different sets were built. */
  readonly built: () => number;
}

export const isBuilt = (outcome: Trial | NotBuildable): outcome is Trial => !('notBuildable' in outcome);

/** Of more stations than this, only so many are evaluated as interference at a station: those that disturb it most now. */
const WATCHED = 24;
/** Sets kept; more are forgotten, the oldest first. */
const MOST_KEPT = 2000;
/** Sets whose draws are kept, each with some twenty receivers. */
const MOST_DRAWN = 24;
/** A station this far over or under the hearing threshold is so in the median too, dB. */
const BEYOND_DOUBT = 15;

/**
 * A set to be tried with changes: what they leave as it is, is worked out once.
 * @param set as read
 * @param when time and coastline
 * @returns the set as it is, and a way to try any change of it
 * @throws RangeError when the set itself cannot be built; `readValue` names the reasons.
 */
export function trialsOf(set: SetDescription, when: FieldOptions = {}): Trials {
  return trialsAt(set, {
    fieldOf: fieldsAtSite(set.place, when),
    fieldDrawsOf: lazily((station) => fieldDraws(set, set.place.stations[station], when)),
  });
}

/** What arrives at a place, and how it is drawn: no change of a set changes that. */
interface FieldsOfPlace {
  readonly fieldOf: ReturnType<typeof fieldsAtSite>;
  readonly fieldDrawsOf: (station: number) => FieldDraws | undefined;
}

/** @param like whose parts serve where they are the same. */
function trialsAt(set: SetDescription, fields: FieldsOfPlace, like?: SetCircuit): Trials {
  const { fieldOf, fieldDrawsOf } = fields;
  const drawings = new Map<Receiver, Trial['drawnStation']>();
  const drawnOf = (ready: Receiver): Trial['drawnStation'] => {
    const entry = drawings.get(ready) ?? latest(drawnSet(ready.circuit, fieldOf, fieldDrawsOf));
    drawings.delete(ready);
    drawings.set(ready, entry);
    if (drawings.size > MOST_DRAWN) drawings.delete(drawings.keys().next().value!);
    return entry;
  };
  const arriving = set.place.stations.map((station): Arriving => ({ station, field: fieldOf(station) }));
  const amongAll = once(() => interferenceAmong(now.receiver, arriving, WATCHED));
  const watched = lazily((station: number): readonly Arriving[] => {
    if (arriving.length <= WATCHED) return arriving;
    const strongest = amongAll()(now.tuned(station)).disturbances.slice(0, WATCHED);
    return strongest.map(({ index }) => arriving[index]);
  });
  const trialOf = (changed: SetDescription, like?: SetCircuit): Trial | NotBuildable => {
    const result = build(changed, { like });
    if (!result.ok) return { notBuildable: result.reason };
    return trial(changed, receiver(result.circuit, fieldOf), { watched, arriving, drawnOf });
  };
  const first = trialOf(set, like);
  if (!isBuilt(first)) throw new RangeError(first.notBuildable);
  const now = first;
  const known = new Map<string, Trial | NotBuildable>();
  let built = 1;
  return {
    now,
    built: () => built,
    about: (changed) => trialsAt(changed, fields, now.receiver.circuit),
    with: (all) => {
      const inAnyOrder = isAnyOrder(all);
      const edits = inAnyOrder ? changesAmong(set, all) : all;
      if (edits.length === 0) return now;
      const key = keyOf(edits, inAnyOrder);
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

/** Whether edits come to the same set in whatever order they are made: none at or within the place of another. */
const isAnyOrder = (edits: readonly Edit[]): boolean =>
  edits.every(({ path }, i) => edits.every((other, k) => k === i || !overlaps(path, other.path)));

/** Those that write something else than stands there. */
const changesAmong = (set: SetDescription, edits: readonly Edit[]): readonly Edit[] =>
  edits.filter(({ path, to }) => typeof to !== 'number' || valueAtPath(set, path) !== to);

/** The same for edits that come to the same set. */
function keyOf(edits: readonly Edit[], inAnyOrder: boolean): string {
  const texts = edits.map(({ path, to }) => JSON.stringify([path, to]));
  return (inAnyOrder ? texts.sort() : texts).join();
}

/** What all sets tried at a place share. */
interface Shared {
  readonly watched: (station: number) => readonly Arriving[];
  readonly arriving: readonly Arriving[];
  readonly drawnOf: (ready: Receiver) => Trial['drawnStation'];
}

function trial(set: SetDescription, ready: Receiver, { watched, arriving, drawnOf }: Shared): Trial {
  const tuned = lazily((station: number) => receiveOnDial(ready, set.place.stations[station]));
  const interference = lazily((station: number) => disturbancesAt(ready, tuned(station), watched(station), WATCHED));
  const curve = () => tuningCurve(ready);
  const { stations } = set.place;
  const bandwidth = lazily((station: number) => bandwidthOf(ready, tuned(station)));
  const figures = lazily((station: number): Figures => figuresOf(tuned, interference, station));
  const drawnStation = (station: number) => drawnOf(ready)(station);
  const heardAmong = (of: (station: number) => Figures): readonly number[] =>
    [...arriving.keys()].filter((station) => isHeard(of(station).verdict));
  const insideDial = (station: number): number => {
    const { lowest, highest } = curve();
    const { frequency } = stations[station];
    return Math.min(Math.log(frequency / lowest), Math.log(highest / frequency));
  };
  /** What no draw changes. */
  const fixed = {
    curve,
    clearanceFrom: (station: number, other: number) => clearanceFrom(interference(station), other),
    audioBandwidth: lazily((station: number) => audioBandwidth(ready, tuned(station))),
    insideDial,
    beyondDial: (station: number) => Math.max(0, -insideDial(station)),
    parts: () => builtSet(set).parts.size,
    partIds: () => [...builtSet(set).parts.keys()],
  };
  const inMedian = lazily((station: number): Figures => {
    const usual = figures(station);
    if (!usual.isWithin) return usual;
    return medianFigures(usual, tuned(station), {
      hearing: () => drawnStation(station)?.hearing(),
      interference: () => attempt(() => interference(station)),
    });
  });
  const widthInMedian = lazily((station: number): Ratio => {
    const loadedQ = drawnStation(station)?.figure('loadedQ');
    return loadedQ ? loadedQ.middle / loadedQ.median : 1;
  });
  return {
    set,
    receiver: ready,
    tuned,
    interference,
    ...fixed,
    bandwidth,
    figures,
    stationsHeard: () => heardAmong(figures),
    drawnStation,
    medians: {
      ...fixed,
      figures: inMedian,
      bandwidth: (station) => bandwidth(station) * widthInMedian(station),
      stationsHeard: () =>
        heardAmong((station) => {
          const usual = figures(station);
          return Math.abs(usual.margin) < BEYOND_DOUBT ? inMedian(station) : usual;
        }),
    },
  };
}

const clearanceFrom = (disturbances: readonly Disturbance[], other: number): Decibels =>
  disturbances.find(({ index }) => index === other)?.separation ?? Number.POSITIVE_INFINITY;

/** Programmes go no higher, Hz. */
const HIGHEST_TONE = 20e3;

function audioBandwidth(ready: Receiver, tuned: TunedStation): Hertz {
  const { throughTunedCircuit = HIGHEST_TONE, throughLoad = HIGHEST_TONE } = audioLimits(ready, tuned);
  return Math.min(throughTunedCircuit, throughLoad);
}

/** A function of one argument whose latest answer is kept. */
function latest<K, V>(work: (key: K) => V): (key: K) => V {
  let known: { readonly key: K; readonly value: V } | undefined;
  return (key) => {
    if (known?.key !== key) known = { key, value: work(key) };
    return known.value;
  };
}

/**
 * Figures of a station in the median of its draws, which are drawn when one of them is asked for. Clearance is that of
 * the set with every input in its middle, as a reception states its separations: of those the draws only give the range.
 */
function medianFigures(
  usual: Figures,
  { heard }: TunedStation,
  {
    hearing,
    interference,
  }: { hearing: () => DrawnHearing | undefined; interference: () => readonly Disturbance[] | undefined },
): Figures {
  const median = once(() => {
    const draws = hearing();
    const { spl: level, splA: levelA, margin, marginInSilence } = heard;
    return draws && usualHearing({ level, levelA, margin, marginInSilence }, draws);
  });
  return {
    isWithin: usual.isWithin,
    get level() {
      return median()?.level ?? usual.level;
    },
    get margin() {
      return median()?.margin ?? usual.margin;
    },
    get heard() {
      return median()?.loudness ?? usual.heard;
    },
    get verdict() {
      const loudness = median()?.loudness;
      const disturbances = loudness && interference();
      return loudness && disturbances ? verdictOf(true, loudness, disturbances) : usual.verdict;
    },
    get clearance() {
      return usual.clearance;
    },
    get worst() {
      return usual.worst;
    },
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

/** Interference is calculated only when it is read: a search often does not. */
function figuresOf(
  tuned: (station: number) => TunedStation,
  interference: (station: number) => readonly Disturbance[],
  station: number,
): Figures {
  const reception = attempt(() => tuned(station));
  if (!reception) return UNSOLVED;
  const { within, heard } = reception;
  const disturbances = once(() => attempt(() => interference(station)));
  const worst = once(() => worstOf(disturbances() ?? []));
  return {
    isWithin: within,
    level: heard.spl,
    margin: heard.margin,
    heard: heard.loudness,
    get verdict() {
      const all = disturbances();
      return all ? verdictOf(within, heard.loudness, all) : UNSOLVED.verdict;
    },
    get clearance() {
      return disturbances() ? (worst()?.separation ?? Number.POSITIVE_INFINITY) : UNSOLVED.clearance;
    },
    get worst() {
      return worst()?.by;
    },
  };
}
