import { setCircuit } from '../../built/set-circuit.ts';
import { hasHeater } from '../../kinds/detectors/detector-traits.ts';
import type { Detector } from '../../parts/detector/detector.ts';
import {
  cold,
  type Heater,
  type HeaterState,
  heatCathode,
  heatedThrough,
  heaterFor,
  heaterPower,
} from '../../parts/detector/thermionic/heater.ts';
import { type HeaterTimes, heaterTimes } from '../../parts/detector/thermionic/heater-times.ts';
import { emission, thermionicDetector } from '../../parts/detector/thermionic/thermionic.ts';
import type { SetDescription } from '../../set/description.ts';
import type { Amperes, Decibels, Kelvins, Ratio, Seconds, Volts, Watts } from '../../units/quantities.ts';
import { type FieldOptions, fieldsAtSite } from '../path/field.ts';
import { type Receiver, receiver, receiveStation } from '../path/receive-station.ts';
import type { Loudness } from '../path/types.ts';

export interface HeaterPoint {
  /** Since it was switched. */
  readonly time: Seconds;
  readonly temperature: Kelvins;
  readonly soundPressureLevel: Decibels;
  /** Mean current through the valve, that which flows with no signal included. */
  readonly current: Amperes;
}

/** A station on a set with a valve, from switching the heater on and from switching it off. */
export interface HeaterRun {
  readonly voltage: Volts;
  readonly power: Watts;
  /** When the valve works, whatever the station; undefined where this voltage does not make it. */
  readonly times: HeaterTimes | undefined;
  readonly warm: HeaterPoint;
  readonly heard: Loudness;
  readonly on: readonly HeaterPoint[];
  readonly off: readonly HeaterPoint[];
  /** From switching on until within 6 dB, and within 1 dB, of the loudest it comes to. */
  readonly halfAfter: Seconds;
  readonly fullAfter: Seconds;
  /** From switching off until it is 3 dB, and 20 dB, down. */
  readonly lastsFor: Seconds;
  readonly goneAfter: Seconds;
}

export interface HeaterOptions extends FieldOptions {
  /** Default the set's own. */
  readonly voltage?: Volts;
}

/** Followed for so long after each switching. */
export const HEATER_WATCHED: Seconds = 60;
/** Finer where things move: at first seconds, then stretching out. */
const TIMES = Array.from({ length: 61 }, (_, k) => HEATER_WATCHED * (k / 60) ** 1.6);

/** A set with a valve as its cathode's temperature goes: how a station is heard at any of them. */
export interface HeatedSet {
  readonly heater: Heater;
  readonly voltage: Volts;
  /** Warmed through. */
  readonly warm: HeaterState;
  readonly heard: Loudness;
  /** Worked out once for every kelvin asked for. */
  readonly pointAt: (temperature: Kelvins) => Omit<HeaterPoint, 'time'>;
  readonly detectorAt: (temperature: Kelvins) => Detector;
}

/** @returns undefined for a set whose detector is no valve. @throws RangeError for a station there is not. */
export function heatedSet(set: SetDescription, station: number, options: HeaterOptions = {}): HeatedSet | undefined {
  const { detector } = set;
  if (!hasHeater(detector)) return undefined;
  const target = set.place.stations[station];
  if (!target) throw new RangeError(`there is no station ${station}`);
  const heater = heaterFor(detector.ratedHeaterVoltage);
  const voltage = options.voltage ?? detector.heaterVoltage;
  const fieldOf = fieldsAtSite(set.place, options);
  const detectorAt = (temperature: Kelvins): Detector =>
    thermionicDetector({ temperature: Math.max(temperature, 250), capacitance: detector.junctionCapacitance });
  const like = setCircuit(set);
  const at = (temperature: Kelvins): Receiver =>
    receiver(setCircuit(set, { detector: detectorAt(temperature), like }), fieldOf);
  const warm = heatedThrough(voltage, heater);
  // Tuned once, when warm; the dial stays while the valve warms.
  const tuned = receiveStation(at(warm.cathode), target);
  const dial = { position: tuned.position, other: tuned.other };
  const cache = new Map<number, Omit<HeaterPoint, 'time'>>();
  const pointAt = (T: Kelvins): Omit<HeaterPoint, 'time'> => {
    const key = Math.round(T);
    let point = cache.get(key);
    if (!point) {
      const s = receiveStation(at(T), target, dial);
      point = { temperature: T, soundPressureLevel: s.heard.spl, current: s.steady.directCurrent };
      cache.set(key, point);
    }
    return point;
  };
  return { heater, voltage, warm, heard: tuned.heard.loudness, pointAt, detectorAt };
}

/** @returns undefined for a set whose detector is no valve. @throws RangeError for a station there is not. */
export function heaterRun(set: SetDescription, station: number, options: HeaterOptions = {}): HeaterRun | undefined {
  const heated = heatedSet(set, station, options);
  if (!heated) return undefined;
  const { heater, voltage, pointAt } = heated;
  const warm = { time: Number.POSITIVE_INFINITY, ...pointAt(heated.warm.cathode) };
  const follow = (from: HeaterState, volts: Volts): HeaterPoint[] => {
    let state = from;
    return TIMES.map((time, k) => {
      if (k > 0) state = heatCathode(state, volts, time - TIMES[k - 1], heater);
      return { time, ...pointAt(state.cathode) };
    });
  };
  const on = follow(cold(heater), voltage);
  const off = follow(heated.warm, 0);
  const rises = (by: Decibels) => crossing(on, (p) => p.soundPressureLevel - (warm.soundPressureLevel - by));
  const falls = (by: Decibels) => crossing(off, (p) => warm.soundPressureLevel - by - p.soundPressureLevel);
  return {
    voltage,
    power: heaterPower(heater, voltage, heated.warm.wire),
    times: heaterTimes(voltage, heater),
    warm,
    heard: heated.heard,
    on,
    off,
    halfAfter: rises(6),
    fullAfter: rises(1),
    lastsFor: falls(3),
    goneAfter: falls(20),
  };
}

/** The last time a rising difference passes zero; beyond what was watched: infinity. */
function crossing(points: readonly HeaterPoint[], difference: (p: HeaterPoint) => number): Seconds {
  for (let k = points.length - 1; k >= 0; k--) {
    const d = difference(points[k]);
    if (d >= 0) continue;
    const after = points[k + 1];
    if (!after) return Number.POSITIVE_INFINITY;
    const share = -d / (difference(after) - d);
    return points[k].time + (after.time - points[k].time) * share;
  }
  return 0;
}

/** Volts that a heater is run at to spare it, as a share of the rated: 5 V on a 6.3 V heater. */
const SPARING = 5 / 6.3;

/**
 * The set's own heater voltage, and a lower one for comparison (or the rated one, where it is run low already).
 * @param set as read
 * @param station its place in the list, from 0
 * @param options time and coastline
 * @returns loudness (dB SPL) and current (A) over time (s); undefined for a set without a heater, or a station beyond
 * its dial
 */
export function heaterRuns(
  set: SetDescription,
  station: number,
  options: FieldOptions = {},
):
  | {
      readonly own: HeaterRun;
      readonly full: HeaterRun;
      /** `emissionShare`: of the current the cathode can emit at the full voltage. */
      readonly less: HeaterRun & { readonly emissionShare: Ratio };
    }
  | undefined {
  const own = heaterRun(set, station, options);
  if (!own || !hasHeater(set.detector)) return undefined;
  const rated = set.detector.ratedHeaterVoltage;
  const isLow = own.voltage < 0.9 * rated;
  const other = heaterRun(set, station, { ...options, voltage: isLow ? rated : SPARING * rated })!;
  const [full, less] = isLow ? [other, own] : [own, other];
  const emissionShare = emission(less.warm.temperature) / emission(full.warm.temperature);
  return { own, full, less: { ...less, emissionShare } };
}
