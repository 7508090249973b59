import { setCircuit } from '../built/set-circuit.ts';
import { detectorId } from '../kinds/models.ts';
import type { Station } from '../place/stations/station.ts';
import type { SetDescription } from '../set/description.ts';
import { loaded } from '../solvers/linear/views.ts';
import type { Amperes, Decibels, Hertz, Ratio, Volts } from '../units/quantities.ts';
import { type AudioLimits, audioLimits } from './detection/audio-limits.ts';
import { bandwidthOf } from './interference/interference.ts';
import { type FieldOptions, fieldsAtSite } from './path/field.ts';
import {
  effectiveHeight,
  qFromSidebands,
  type Receiver,
  receiver,
  receiveStation,
  TEST_TONE,
  type TunedStation,
} from './path/receive-station.ts';
import type { StationReception } from './path/types.ts';

/** Level at the detector for the same field strength at every frequency: carrier in dB relative to 1 V for 1 V/m, both rms. */
export interface LevelPoint {
  readonly frequency: Hertz;
  readonly level: Decibels;
}

/** The set tuned to a station and left there: what it passes around the station's frequency. */
export interface ResonanceCurve {
  readonly station: Station;
  /** Rising frequency, as far on either side. */
  readonly points: readonly LevelPoint[];
  readonly loadedQ: Ratio;
  /** −3 dB. */
  readonly bandwidth: Hertz;
  readonly neighbours: readonly Station[];
}

/** The same over the whole tuning range, with every station as it arrives. */
export interface BandResponse {
  /** Rising frequency. */
  readonly points: readonly LevelPoint[];
  /** Carrier at the detector, dB relative to 1 V rms, in the order of the description. */
  readonly stations: readonly { readonly name: string; readonly frequency: Hertz; readonly level: Decibels }[];
  readonly wanted: number;
  /** Where the traps of the set resonate, by their places in the description. */
  readonly traps: readonly { readonly trap: number; readonly frequency: Hertz }[];
}

/** Q of a coil alone, with its range (90 %). */
export interface CoilQ {
  readonly name: string;
  /** Rising frequency. */
  readonly points: readonly CoilQPoint[];
  /** At the station's own frequency. */
  readonly atStation: CoilQPoint;
}

/** Q at a frequency; `low` and `high` are the ends of its range (90 %). */
export interface CoilQPoint {
  readonly frequency: Hertz;
  readonly q: Ratio;
  readonly low: Ratio;
  readonly high: Ratio;
}

/** Current of the detector against voltage, and what the station's carrier sweeps of it. */
export interface DetectorCharacteristic {
  /** Of the library, or the kind of one with figures of its own. */
  readonly id: string;
  /** Rising voltage. */
  readonly points: readonly { readonly voltage: Volts; readonly current: Amperes }[];
  /** The carrier swings by `amplitude` (peak) about `voltage`; `current` is the mean. */
  readonly operating: { readonly voltage: Volts; readonly amplitude: Volts; readonly current: Amperes };
}

/** The curves of a set tuned to one station. */
export interface StationCurves {
  /** What the detector and what follows it do to the programme. */
  readonly audio: AudioLimits;
  readonly resonance: ResonanceCurve;
  readonly band: BandResponse;
  /** For each coil. */
  readonly q: readonly CoilQ[];
  readonly detector: DetectorCharacteristic;
}

/** Figures of the station that its curves are drawn to, so that both agree: those of its reception. */
type CurveFigures = Pick<StationReception, 'loadedQ' | 'bandwidth' | 'detectorVoltage' | 'directVoltage'>;

/** Fields at the site, and the figures that curves are drawn to. */
export interface CurveOptions extends FieldOptions {
  /** Default those of the set with every input in its middle. */
  readonly figures?: CurveFigures;
  /** Drawn on either side of the station; default as far as `resonanceSpan` says. */
  readonly span?: Hertz;
}

const RESONANCE_POINTS = 121;
const BAND_POINTS = 161;
const Q_POINTS = 25;
const DETECTOR_POINTS = 161;

const decibels = (x: number): Decibels => 20 * Math.log10(Math.max(x, 1e-15));

/**
 * The set tuned to one station: what it passes near it and across the band, Q of its coils, and where its detector works.
 * @param set as described, SI units.
 * @param index of the station in the description, from 0.
 * @param covered ends of the tuning range, lowest first, Hz.
 * @param options of the fields at the site, default none; `figures` that the curves are drawn to.
 * @returns the curves, levels in dB; undefined where there is no such station.
 * @throws RangeError for a set that cannot be built.
 */
export function stationCurves(
  set: SetDescription,
  index: number,
  covered: readonly [Hertz, Hertz],
  { figures, span: asked, ...options }: CurveOptions = {},
): StationCurves | undefined {
  const station = set.place.stations[index];
  if (!station) return undefined;
  const ready = receiver(setCircuit(set), fieldsAtSite(set.place, options));
  const tuned = receiveStation(ready, station);
  const { stations } = set.place;
  const { loadedQ, bandwidth, detectorVoltage } = figures ?? {
    loadedQ: tuned.loadedQ,
    bandwidth: bandwidthOf(ready, tuned),
    detectorVoltage: tuned.steady.junctionVoltage,
  };
  const input = 1 / tuned.steady.inputResistance;
  const level = levelAt(ready, tuned, figures ? conductanceFor(ready, tuned, bandwidth) : input);
  const received = decibels(detectorVoltage / tuned.steady.junctionVoltage);
  const above = received - (level(station.frequency) - levelAt(ready, tuned, input)(station.frequency));
  const point = (frequency: Hertz): LevelPoint => ({ frequency, level: level(frequency) });
  const span = asked ?? resonanceSpan(station.frequency, loadedQ);
  return {
    audio: audioLimits(ready, tuned),
    resonance: {
      station,
      points: withNotches(
        ready,
        sampled(station.frequency - span, station.frequency + span, RESONANCE_POINTS, point),
        point,
      ),
      loadedQ,
      bandwidth,
      neighbours: stations.filter((one) => one !== station),
    },
    band: {
      points: withNotches(ready, sampled(covered[0], covered[1], BAND_POINTS, point), point),
      traps: ready.circuit.traps.map(({ frequency }, trap) => ({ trap, frequency })),
      stations: stations.map((one) => ({
        name: one.name,
        frequency: one.frequency,
        level: level(one.frequency) + above + decibels(ready.fieldOf(one).fieldStrength),
      })),
      wanted: index,
    },
    q: coilQ(ready, covered, station),
    detector: detectorCharacteristic(ready, operatingPoint(ready, tuned, figures)),
  };
}

/** Beside the bottom of a notch, as shares of its frequency. */
const NOTCH_SIDES = [-0.02, -0.01, -0.005, -0.002, 0, 0.002, 0.005, 0.01, 0.02];

/** A trap's notch is narrower than the steps between points: points of its own show how deep it is. */
function withNotches(
  { circuit }: Receiver,
  points: readonly LevelPoint[],
  point: (frequency: Hertz) => LevelPoint,
): readonly LevelPoint[] {
  const [first, last] = [points[0].frequency, points[points.length - 1].frequency];
  const own = circuit.traps.flatMap(({ frequency }) =>
    NOTCH_SIDES.map((side) => frequency * (1 + side)).filter((f) => f > first && f < last),
  );
  return own.length === 0 ? points : [...points, ...own.map(point)].sort((a, b) => a.frequency - b.frequency);
}

/** How far a resonance curve goes on either side of a station: nearly two bandwidths, at least 30 kHz, at most a third of its frequency. */
export const resonanceSpan = (frequency: Hertz, loadedQ: Ratio): Hertz =>
  Math.min(frequency / 3, Math.max(30e3, (1.8 * frequency) / loadedQ));

/** The detector loads the set as it does on the station, and the dial stays where it is; the aerial's own slope is in it. */
function levelAt(ready: Receiver, tuned: TunedStation, conductance: number): (frequency: Hertz) => Decibels {
  const { position, other } = tuned;
  return (frequency) =>
    decibels(
      loaded(ready.network.at(frequency).at(position, other), conductance) * effectiveHeight(ready.circuit, frequency),
    );
}

/** Steps of the secant on the bandwidth, which runs nearly straight with the conductance. */
const SECANTS = 6;

/** What across the detector's terminals gives the circuit a bandwidth; where nothing does, what the detector draws. */
function conductanceFor(ready: Receiver, tuned: TunedStation, bandwidth: Hertz): number {
  const { station, view, position, other, steady } = tuned;
  const f = station.frequency;
  const input = 1 / steady.inputResistance;
  const [lower, upper] = [f - TEST_TONE, f + TEST_TONE].map((at) => ready.network.at(at).at(position, other));
  const off = (g: number): number => {
    const loadedQ = qFromSidebands(view, lower, upper, g, f);
    return bandwidthOf(ready, { ...tuned, loadedQ, steady: { ...steady, inputResistance: 1 / g } }) / bandwidth - 1;
  };
  let [a, b] = [input, 1.1 * input];
  let [offA, offB] = [off(a), off(b)];
  for (let k = 0; k < SECANTS && Math.abs(offA) > 1e-9; k++) {
    [a, b] = [a - (offA * (b - a)) / (offB - offA), a];
    [offA, offB] = [off(a), offA];
  }
  return Math.abs(offA) < 1e-3 ? a : input;
}

/** Somewhat beyond the tuning range on either side. */
const coilQ = ({ circuit }: Receiver, [lowest, highest]: readonly [Hertz, Hertz], station: Station): CoilQ[] =>
  circuit.coils.map(({ model }, i) => {
    const at = (frequency: Hertz): CoilQPoint => {
      const [low, high] = model.qRangeAt(frequency);
      return { frequency, q: model.qAt(frequency), low, high };
    };
    return {
      name: circuit.set.coils[i].name,
      points: sampled(lowest * 0.8, highest * 1.2, Q_POINTS, at),
      atStation: at(station.frequency),
    };
  });

/**
 * Where a carrier works on the detector's curve.
 * @param figures that the point is drawn to: its mean current and voltage follow the direct voltage.
 */
export function operatingPoint(
  { circuit }: Pick<Receiver, 'circuit'>,
  { steady }: Pick<TunedStation, 'steady'>,
  figures: Pick<CurveFigures, 'detectorVoltage' | 'directVoltage'> = {
    detectorVoltage: steady.junctionVoltage,
    directVoltage: steady.directVoltage,
  },
): DetectorCharacteristic['operating'] {
  const share = steady.directVoltage === 0 ? 1 : figures.directVoltage / steady.directVoltage;
  return {
    voltage: circuit.bias + share * (steady.deviceVoltage - circuit.bias),
    amplitude: figures.detectorVoltage,
    current: share * steady.directCurrent,
  };
}

function detectorCharacteristic(
  { circuit }: Receiver,
  operating: DetectorCharacteristic['operating'],
): DetectorCharacteristic {
  // Either side of zero: the bend and the whole swing.
  const reach = Math.min(5, Math.max(0.12, operating.amplitude * 2.5));
  return {
    id: detectorId(circuit.set.detector),
    points: sampled(-reach, reach, DETECTOR_POINTS, (voltage) => ({
      voltage,
      current: circuit.detector.current(voltage),
    })),
    operating,
  };
}

function sampled<T>(from: number, to: number, count: number, make: (x: number) => T): T[] {
  return Array.from({ length: count }, (_, i) => make(from + ((to - from) * i) / (count - 1)));
}
