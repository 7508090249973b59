import { magnitude } from '../../numerics/complex.ts';
import { root } from '../../numerics/roots.ts';
import type { StationDescription } from '../../set/place.ts';
import type { FrequencyView } from '../../solvers/linear/views.ts';
import type { Decibels, Degrees, Hertz, Metres, Volts } from '../../units/quantities.ts';
import { isTurned } from '../path/direction.ts';
import type { FieldAtSite } from '../path/field.ts';
import {
  bearingOf,
  emfOf,
  type Receiver,
  TEST_TONE,
  type ToneSource,
  type TunedStation,
  toneSource,
} from '../path/receive-station.ts';
import type { Disturbance } from '../path/types.ts';
import { candidatesAmong, SHORT_LIST, samplesAmong } from './candidates.ts';
import { carrierLaw } from './carrier-law.ts';
import { type CarrierAtDetector, disturbances, HIGHEST_WHISTLE, NEGLIGIBLE } from './separation.ts';
import { type CarrierBalance, carrierBalance } from './two-carriers.ts';
import { type ReceivedProgramme, toneRatio } from './two-programmes.ts';

/** A station as it arrives at the site, whatever the set is tuned to. */
export interface Arriving {
  readonly station: StationDescription;
  readonly field: FieldAtSite;
}

/** A station's share in interference that is the same whichever other station the set is tuned to. */
interface Interferer {
  readonly arriving: Arriving;
  readonly index: number;
  readonly height: Metres;
  readonly view: FrequencyView;
  readonly signal: Signal;
}

/** Interference at a station: the stations that matter most, and how many more are heard. */
export interface StationInterference {
  /** Strongest first. */
  readonly disturbances: readonly Disturbance[];
  /** Wanted over unwanted programme of those and of all others that were evaluated, strongest first. */
  readonly audioRatios: readonly Decibels[];
  /** Stations within 40 dB of the wanted one at the detector that are left out; of a long list an estimate. */
  readonly more: number;
}

/** Stations kept for each: the strongest in the phones, */
const KEPT = 12;
/** and in addition so many of least separation, for their whistle. */
const LEAST_CLEAR = 4;
/** Stations whose programme is evaluated in full at each: those of least estimated separation. */
const IN_FULL = 4;

/**
 * Interference at any station of a place: what is the same for all of them is calculated once for each station. Of more
 * than 64 others only those that can matter are evaluated, about a hundred and fifty evaluations however many there are.
 * @param keep the strongest kept for each station; four of least separation among them or in addition
 * @param inFull so many at most are evaluated in full at each station, the others estimated
 */
export function interferenceAmong(
  set: Receiver,
  others: readonly Arriving[],
  keep = KEPT,
  inFull = IN_FULL,
): (tuned: TunedStation) => StationInterference {
  const ready = others.map(
    (arriving): Interferer => ({
      arriving,
      index: set.indexOf(arriving.station),
      height: set.heightAt(arriving.station.frequency),
      view: set.network.at(arriving.station.frequency),
      signal: signalOf(arriving.station),
    }),
  );
  const emfsFacing = (facing: Degrees | undefined): Float64Array =>
    Float64Array.from(ready, ({ arriving: { station, field }, height }) =>
      emfOf(set.circuit, station, field, facing, height),
    );
  // A frame without a fixed direction is turned to the wanted station, away from others.
  const facingAny = isTurned(set.circuit.set.aerial) ? undefined : emfsFacing(undefined);
  const frequencies = others.map(({ station }) => station.frequency);
  const balance = carrierBalance();
  const sampled = others.length > SHORT_LIST ? samplesAmong(frequencies) : undefined;
  return (tuned) => {
    const g = 1 / tuned.steady.inputResistance;
    const emfs = facingAny ?? emfsFacing(bearingOf(tuned.station, tuned.field));
    const isOwn = (i: number): boolean => ready[i].arriving.station === tuned.station;
    const { indices, others: further } = sampled
      ? candidatesAmong({
          frequencies,
          sampled,
          carrier: tuned.station.frequency,
          emfs,
          isOwn,
          levelAt: (f) => set.network.at(f).level(g, tuned.position, tuned.other),
          audible: NEGLIGIBLE * tuned.steady.junctionVoltage,
          highestWhistle: HIGHEST_WHISTLE,
        })
      : { indices: [...ready.keys()], others: 0 };
    const places: number[] = [];
    const carriers: CarrierAtDetector[] = [];
    for (const i of indices) {
      const { index, view, signal } = ready[i];
      const voltage = emfs[i] * view.level(g, tuned.position, tuned.other);
      if (!(voltage > NEGLIGIBLE * tuned.steady.junctionVoltage) || isOwn(i)) continue;
      const { name, frequency, modulation } = signal;
      places.push(i);
      carriers.push({ index, name, frequency, modulation, voltage });
    }
    const otherAt = (place: number) => {
      const { arriving, view } = ready[places[place]];
      return { arriving, view, emf: emfs[places[place]] };
    };
    const audioLoad = Math.max(magnitude(set.audioLoadAt(TEST_TONE)), 1);
    const all = disturbances({ ...signalOf(tuned.station), voltage: tuned.steady.junctionVoltage }, carriers, {
      slopeVoltage: set.circuit.averaged.detector.slopeVoltage,
      loadTime: (set.circuit.set.load.bypass + 30e-12) / (1 / audioLoad + g / 2),
      inFull: audioRatiosAt(set, tuned, otherAt, balance),
      mostInFull: inFull,
    });
    const list = mostRelevant(all, keep);
    return {
      disturbances: list,
      audioRatios: all.map(({ audioRatio }) => audioRatio),
      more: all.length - list.length + further,
    };
  };
}

/**
 * Wanted over unwanted tone of any other station at a tuned one, evaluated in full.
 * @param otherAt a station by its place, with its emf, V
 */
export function audioRatiosAt(
  set: Receiver,
  tuned: TunedStation,
  otherAt: (place: number) => Pick<Interferer, 'arriving' | 'view'> & { readonly emf: Volts },
  balance: CarrierBalance,
): (place: number) => Decibels | undefined {
  const { circuit, dcResistance } = set;
  const law = carrierLaw(circuit.averaged, circuit.assembly.wiring);
  let own: ReceivedProgramme | undefined;
  return (place) => {
    own ??= programmeOf(toneSource(set, tuned), tuned.station);
    const { arriving, view, emf } = otherAt(place);
    const { station } = arriving;
    const { position, other } = tuned;
    const beat = station.frequency - tuned.station.frequency;
    return toneRatio(
      {
        law,
        own,
        other: programmeOf(toneSource(set, { emf, position, other, station, view: view.at(position, other) }), station),
        isOtherBelow: beat < 0,
        dcResistance,
        beatLoad: set.audioLoadAt(Math.max(Math.abs(beat), SLOWEST_BEAT)),
        bias: circuit.bias,
        audioLoad: magnitude(set.audioLoadAt(TEST_TONE)),
        conductance: 1 / tuned.steady.inputResistance,
      },
      balance,
    );
  };
}

const programmeOf = ({ carrier, upper, lower }: ToneSource, { modulation }: StationDescription): ReceivedProgramme => ({
  carrier,
  upper,
  lower,
  depth: Math.min(modulation, 1),
});

/** Of two stations on one frequency; direct current has a load of its own. */
const SLOWEST_BEAT: Hertz = 20;

/** The first so many, and those of least separation, in the same order. */
function mostRelevant(all: readonly Disturbance[], keep: number): readonly Disturbance[] {
  if (all.length <= keep) return all;
  const leastClear = new Set([...all].sort((a, b) => a.separation - b.separation).slice(0, LEAST_CLEAR));
  return all.filter((one, k) => k < keep || leastClear.has(one));
}

/** With the set tuned to one station, what each other one leaves at the detector, strongest first. */
export const disturbancesAt = (
  set: Receiver,
  tuned: TunedStation,
  others: readonly Arriving[],
  keep?: number,
  inFull?: number,
): readonly Disturbance[] => interferenceAmong(set, others, keep, inFull)(tuned).disturbances;

/** What a station sends, as far as it interferes. */
type Signal = Pick<StationDescription, 'name' | 'frequency' | 'modulation'>;

const signalOf = ({ name, frequency, modulation }: StationDescription): Signal => ({
  name,
  frequency,
  modulation: Math.min(modulation, 1),
});

/** Frequencies tried on each side of a response, and steps of its expected width between them. */
const OUTWARD = 40;
const STRIDE = 0.2;
/** Of a step. */
const CLOSING = 1e-3;
/** Share by which levels between solved frequencies may be out and still be made good in one step. */
const NEAR = 3e-3;

type LevelAt = (frequency: Hertz) => Volts;

/** Two tuned circuits, or one so broad that its sides are not alike, are not f/Q wide: then the width is measured. */
const BROAD = 20;

/** How broadly a set receives a station, −3 dB, the pointer left where it is. */
export const bandwidthOf = (set: Receiver, s: TunedStation): Hertz =>
  set.circuit.set.arrangement.kind === 'two circuits' || !(s.loadedQ >= BROAD)
    ? measuredWidth(set, s)
    : s.station.frequency / s.loadedQ;

/** Between the points 3 dB under the top of what reaches the detector, the pointer left where it is for the station. */
export function measuredWidth(set: Receiver, s: TunedStation): Hertz {
  const f = s.station.frequency;
  const g = 1 / s.steady.inputResistance;
  const solved: LevelAt = (at) => set.network.at(at).level(g, s.position, s.other);
  const expected = f / s.loadedQ;
  const step = STRIDE * Math.min(expected, 0.5 * f);
  // The carrier and its sidebands are solved already; what lies about them follows, and where it does not is solved too.
  const about = set.network.about?.(f, TEST_TONE);
  const between: LevelAt | undefined = about && ((at) => about(at, g, s.position, s.other));
  return (between && widthNear(between, solved, f, step)) ?? widthOf(responseOf(solved, f, step)) ?? expected;
}

interface Response {
  readonly top: Hertz;
  readonly height: Volts;
  /** Where it has fallen 3 dB below its top. */
  readonly low: Hertz;
  readonly high: Hertz;
}

const widthOf = (response: Response | undefined): Hertz | undefined => response && response.high - response.low;

/** The width by levels that are nearly right, its ends put right by solving there; undefined where they are not so near. */
function widthNear(near: LevelAt, solved: LevelAt, f: Hertz, step: Hertz): Hertz | undefined {
  const response = responseOf(near, f, step);
  if (response === undefined) return undefined;
  const height = solved(response.top);
  const atEnds = [response.low, response.high].map((end) => {
    const short = height * Math.SQRT1_2 - solved(end);
    const slope = (near(end + CLOSING * step) - near(end - CLOSING * step)) / (2 * CLOSING * step);
    return { isNear: Math.abs(short) < NEAR * height, end: end + short / slope };
  });
  return atEnds.every(({ isNear }) => isNear) ? atEnds[1].end - atEnds[0].end : undefined;
}

/** Undefined where it does not fall so far within what is looked at. */
function responseOf(level: LevelAt, f: Hertz, step: Hertz): Response | undefined {
  const top = topNear(level, f, step);
  const low = edge(level, top, -step);
  const high = edge(level, top, step);
  return low === undefined || high === undefined ? undefined : { top: top.at, height: top.height, low, high };
}

/** The highest point uphill of a frequency, step by step. */
function topNear(level: LevelAt, f: Hertz, step: Hertz): { at: Hertz; height: Volts } {
  let top = { at: f, height: level(f) };
  for (const way of [step, -step])
    for (let k = 0; k < OUTWARD && top.at + way > step; k++) {
      const height = level(top.at + way);
      if (!(height > top.height)) break;
      top = { at: top.at + way, height };
    }
  return top;
}

/** Where a response has fallen 3 dB below its top on one side; undefined where it does not within what is looked at. */
function edge(level: LevelAt, top: { at: Hertz; height: Volts }, step: Hertz): Hertz | undefined {
  const threshold = top.height * Math.SQRT1_2;
  for (let k = 1; k <= OUTWARD; k++) {
    const outside = top.at + k * step;
    if (!(outside > 0)) return undefined;
    if (level(outside) > threshold) continue;
    return root((at) => level(at) - threshold, outside - step, outside, CLOSING * Math.abs(step));
  }
  return undefined;
}
