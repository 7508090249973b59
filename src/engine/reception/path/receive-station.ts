import type { SetCircuit } from '../../built/set-circuit.ts';
import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Complex, hypotenuse, magnitude, multiply, scale, subtract } from '../../numerics/complex.ts';
import { lazily } from '../../numerics/lazily.ts';
import { type AudioDetection, audioDetection, type DetectorSource } from '../../parts/detector/audio.ts';
import { standingPoint } from '../../parts/detector/standing.ts';
import { type SteadyDetection, steadyDetector } from '../../parts/detector/steady.ts';
import type { StationDescription } from '../../set/place.ts';
import { type LinearSolver, linearSolver } from '../../solvers/linear/solve.ts';
import { tunedNetwork } from '../../solvers/linear/tuned.ts';
import type { CarrierView, Peak, TunedNetwork } from '../../solvers/linear/views.ts';
import {
  type Decibels,
  type Degrees,
  decibels,
  type Hertz,
  type Metres,
  type Ohms,
  type Ratio,
  type Volts,
  type Watts,
} from '../../units/quantities.ts';
import { type WorkingPoint, workingPoint } from '../detection/working-point.ts';
import { type Heard, heard, LISTENERS, PEAKS } from '../hearing/index.ts';
import { directionShare } from './direction.ts';
import { type FieldAtSite, fieldsAtSite } from './field.ts';

/** The tone that stands for the programme where one figure must do. */
export const TEST_TONE: Hertz = 1000;

/** Stands for no sound at all, so that levels stay numbers. */
const SILENCE: Decibels = -200;

/** Less is lost in rounding; what so faint a signal leaves in the phones is silence many times over. Peak volts. */
const NO_SIGNAL: Volts = 1e-9;

/** A set ready to be tuned: what is the same for all stations is worked out once. */
export interface Receiver {
  readonly circuit: SetCircuit;
  readonly network: TunedNetwork;
  /** Effective height of the aerial, m, calculated once for each frequency. */
  readonly heightAt: (frequency: Hertz) => Metres;
  /** What of a station arrives. */
  readonly fieldOf: (station: StationDescription) => FieldAtSite;
  /** Place of a station in the set's list; −1 for one that is not in it. */
  readonly indexOf: (station: StationDescription) => number;
  /** From the detector's output port, with nothing tuned that matters: direct and audio load. */
  readonly dcResistance: Ohms;
  readonly audioLoadAt: (frequency: Hertz) => Complex;
  /** Voltage across the transducer for a current of 1 A out of the detector. */
  readonly transducerAt: (frequency: Hertz) => Complex;
  /** dB SPL of a tone of 1 V across the transducer. */
  readonly soundPressureOfVoltAt: (frequency: Hertz) => Decibels;
  /** Direct voltage with no station at all: a bias or a hot cathode sends it. */
  readonly standing: Volts;
  /** Of the detector where it stands with no station: what it loads the tuned circuit with while faint. */
  readonly smallConductance: number;
}

/**
 * A set ready to receive station after station: what does not depend on the station, once.
 * @param circuit as `setCircuit` has it
 * @param fieldOf what arrives; default by day, with no coastline.
 * @returns what `receiveStation` takes
 */
export function receiver(circuit: SetCircuit, fieldOf = fieldsAtSite(circuit.set.place)): Receiver {
  const { assembly } = circuit;
  // At audio the tuned circuit is a short piece of wire wherever its pointer stands.
  const audio: LinearSolver = linearSolver(assembly.circuitAt(0.5), [assembly.outputPort, circuit.transducer]);
  const cache = new Map<Hertz, { load: Complex; transducer: Complex }>();
  const look = (frequency: Hertz) => {
    let entry = cache.get(frequency);
    if (!entry) {
      const { z } = audio.look(frequency);
      // The detector drives its current out of the port's far end, hence the sign.
      cache.set(frequency, (entry = { load: z[0][0], transducer: scale(z[1][0], -1) }));
    }
    return entry;
  };
  const soundPressure = new Map<Hertz, Decibels>();
  const indices = new Map(circuit.set.place.stations.map((station, index) => [station, index]));
  const dcResistance = Math.min(Math.max(audio.look(0).z[0][0].re, 0), 1e12);
  const standing = standingPoint(circuit.averaged, dcResistance, circuit.bias);
  return {
    circuit,
    network: tunedNetwork(assembly),
    heightAt: heightsOf(circuit),
    fieldOf,
    indexOf: (station) => indices.get(station) ?? -1,
    dcResistance,
    standing: standing.directVoltage,
    audioLoadAt: (f) => look(f).load,
    transducerAt: (f) => look(f).transducer,
    soundPressureOfVoltAt: (f) => {
      let level = soundPressure.get(f);
      if (level === undefined) soundPressure.set(f, (level = circuit.load.soundPressureAt(f, 1)));
      return level;
    },
    smallConductance: standing.conductance,
  };
}

/**
 * The same with another detector of as much capacitance: all around it is shared.
 * @param circuit that differs in its detector alone.
 */
export function withDetector(set: Receiver, circuit: SetCircuit): Receiver {
  const { directVoltage, conductance } = standingPoint(circuit.averaged, set.dcResistance, circuit.bias);
  return { ...set, circuit, standing: directVoltage, smallConductance: conductance };
}

/**
 * The same with another aerial, earth or coils: at audio a coil is a short piece of wire and lies across aerial and earth,
 * so that little of them is left there.
 * @param circuit that differs in aerial, earth and coils alone.
 */
export function withRadioParts(set: Receiver, circuit: SetCircuit): Receiver {
  return { ...set, circuit, network: tunedNetwork(circuit.assembly), heightAt: heightsOf(circuit) };
}

/** Effective height at a frequency, calculated once for each. */
const heightsOf = (circuit: SetCircuit): Receiver['heightAt'] =>
  lazily((frequency: Hertz) => effectiveHeight(circuit, frequency));

/** One station with the set tuned to it, as figures; words come after. */
export interface TunedStation {
  readonly station: StationDescription;
  readonly field: FieldAtSite;
  /** Peak volts. */
  readonly emf: Volts;
  readonly position: number;
  readonly other: number;
  readonly within: boolean;
  /** Of a separate aerial tuning: whether it reaches the station. */
  readonly otherWithin?: boolean;
  readonly view: CarrierView;
  readonly steady: SteadyDetection;
  readonly audio: AudioDetection;
  readonly tunedVoltage: Volts;
  /** Of the audio at the transducer, by the loaded Q and the load: what the level at the ear is calculated with. */
  readonly audioResponseAt: (frequency: Hertz) => Ratio;
  readonly loadedQ: number;
  /** Of the coil itself, with the capacitor's loss: what is left when nothing is joined to it. */
  readonly unloadedQ: () => number;
  readonly aerialPower: Watts;
  readonly availableAtDetector: Watts;
  readonly audioPower: Watts;
  /** Peak volts of the tone at the usual depth, across the load. */
  readonly audioVoltage: Volts;
  readonly distortion: Ratio;
  readonly work: WorkingPoint;
  readonly phonesPower: Watts;
  readonly heard: Heard;
}

/** Where a station lies from the set: as worked out, or as given. */
export const bearingOf = (station: StationDescription, field: FieldAtSite): Degrees | undefined =>
  field.bearing ?? station.bearing;

/**
 * Effective height of the set's aerial, whatever its kind.
 * @param options the circuit of a set
 * @param frequency Hz
 * @returns m
 */
export const effectiveHeight = ({ aerial, loop }: SetCircuit, frequency: Hertz): number =>
  (aerial ?? loop)!.effectiveHeightAt(frequency);

/**
 * What a station's field sends through the aerial, peak volts.
 * @param facing where a frame that is turned faces. @param height effective height at the station, m, where it is known.
 */
export function emfOf(
  circuit: SetCircuit,
  station: StationDescription,
  field: FieldAtSite,
  facing: Degrees | undefined,
  height: Metres = effectiveHeight(circuit, station.frequency),
): Volts {
  const share = directionShare(circuit.set.aerial, bearingOf(station, field), facing);
  return Math.SQRT2 * field.fieldStrength * height * share;
}

/**
 * Tune the set to a station and follow it to the ear.
 * @param set ready to receive
 * @param station as read
 * @param at where the pointers stand (0 open to 1 meshed); default where the station is loudest
 * @returns voltages, currents and level of each stage, and where the pointer stands
 * @throws RangeError where the detector's equations cannot be solved for so strong a signal.
 */
export function receiveStation(
  set: Receiver,
  station: StationDescription,
  at?: { position: number; other: number },
): TunedStation {
  const { circuit, network } = set;
  const f = station.frequency;
  const field = set.fieldOf(station);
  const emf = emfOf(circuit, station, field, bearingOf(station, field), set.heightAt(f));
  const views = network.at(f);
  const g = set.smallConductance;
  let peak: Peak = at ? { ...at, within: true } : views.peak(g);
  let view = views.at(peak.position, peak.other);
  const steadyAt = (v: CarrierView): SteadyDetection =>
    steadyDetector({
      averaged: circuit.averaged,
      openCircuit: Math.max(emf * magnitude(v.open), NO_SIGNAL),
      sourceImpedance: positive(v.z),
      dcResistance: set.dcResistance,
      bias: circuit.bias,
    });
  let steady = steadyAt(view);
  // A strong signal loads the circuit otherwise than a faint one: retune with its input conductance.
  const input = 1 / steady.inputResistance;
  if (!at && Math.abs(input - g) > 0.2 * g) {
    peak = views.peak(input);
    view = views.at(peak.position, peak.other);
    steady = steadyAt(view);
  }
  const lower = network.at(f - TEST_TONE).at(peak.position, peak.other);
  const upper = network.at(f + TEST_TONE).at(peak.position, peak.other);
  const audio = toneThrough(
    set,
    { carrier: sourceAt(emf, view), upper: sourceAt(emf, upper), lower: sourceAt(emf, lower) },
    { tone: TEST_TONE, depth: Math.min(station.modulation, 1), steady },
  );
  if (!audio.settled) {
    throw new ImpossibleValues({
      code: 'station.too-strong',
      station: station.name,
      voltage: steady.junctionVoltage,
      fieldStrength: field.fieldStrength,
    });
  }
  const work = workingPoint(
    circuit.averaged,
    steady,
    view.z,
    set.dcResistance,
    emf * magnitude(view.open),
    set.standing,
  );
  const conductance = 1 / steady.inputResistance;
  const loadedQ = qFromSidebands(view, lower, upper, conductance, f);
  const current = scale(multiply(view.open, steady.ratio), emf * conductance);
  const tunedVoltage = magnitude(subtract(scale(view.tunedOpen, emf), multiply(view.tunedByDetector, current)));
  const aerialResistance = seriesResistance(circuit, f);
  const transducerVolts = audio.audioCurrent * magnitude(set.transducerAt(TEST_TONE));
  const { load } = circuit;
  const rms = transducerVolts / Math.SQRT2;
  const usual = rms * 10 ** (-PEAKS[station.programme] / 20);
  const source = work.outputResistance;
  const toTransducer = (frequency: Hertz): number => {
    const Z = set.audioLoadAt(frequency);
    return (
      (sidebandTrim(loadedQ, f, frequency) * magnitude(set.transducerAt(frequency))) / hypotenuse(source + Z.re, Z.im)
    );
  };
  const reference = toTransducer(TEST_TONE);
  const how = heard({
    soundPressureLevelAt: (frequency) =>
      reference > 0
        ? Math.max(
            SILENCE,
            set.soundPressureOfVoltAt(frequency) + decibels((usual * toTransducer(frequency)) / reference),
          )
        : SILENCE,
    programme: station.programme,
    room: circuit.set.ear.room,
    listening: load.listening,
    ears: load.ears,
    hearingLoss: LISTENERS[1],
  });
  return {
    station,
    field,
    emf,
    position: peak.position,
    other: peak.other,
    within: peak.within,
    otherWithin: peak.otherWithin,
    view,
    steady,
    audio,
    tunedVoltage,
    loadedQ,
    unloadedQ: () => unloadedQ(circuit, station.frequency, peak.position),
    audioResponseAt: toTransducer,
    aerialPower: (emf * emf) / (8 * aerialResistance),
    availableAtDetector: (emf * magnitude(view.open)) ** 2 / (8 * Math.max(view.z.re, 1e-12)),
    audioPower: audio.audioPower,
    audioVoltage: audio.audioVoltage,
    distortion: hypotenuse(audio.secondHarmonic, audio.thirdHarmonic),
    work,
    phonesPower: load.powerAt(TEST_TONE, rms),
    heard: how,
  };
}

/** What the detector of a tuned set is joined to, at the carrier and at the sidebands of a tone. */
export interface ToneSource {
  readonly carrier: DetectorSource;
  readonly upper: DetectorSource;
  readonly lower: DetectorSource;
}

function sourceAt(emf: Volts, { open, z }: CarrierView): DetectorSource {
  const isThere = emf * magnitude(open) > NO_SIGNAL;
  return { openCircuit: isThere ? scale(open, emf) : { re: NO_SIGNAL, im: 0 }, impedance: positive(z) };
}

export function toneSource(
  set: Receiver,
  { emf, position, other, station, view }: Pick<TunedStation, 'emf' | 'position' | 'other' | 'station' | 'view'>,
  tone: Hertz = TEST_TONE,
): ToneSource {
  const sideband = (f: Hertz) => sourceAt(emf, set.network.at(f).at(position, other));
  return {
    carrier: sourceAt(emf, view),
    upper: sideband(station.frequency + tone),
    lower: sideband(station.frequency - tone),
  };
}

/** A tone through the detector of a tuned set. @param steady where it is known already what the carrier alone does. */
export const toneThrough = (
  set: Pick<Receiver, 'circuit' | 'audioLoadAt' | 'dcResistance'>,
  { carrier, upper, lower }: ToneSource,
  { tone, depth, steady }: { tone: Hertz; depth: Ratio; steady?: SteadyDetection },
): AudioDetection =>
  audioDetection({
    carrier,
    upper,
    lower,
    averaged: set.circuit.averaged,
    audioFrequency: tone,
    depth,
    loadAt: set.audioLoadAt,
    dcResistance: set.dcResistance,
    bias: set.circuit.bias,
    steady,
    leaveOut: 0.06,
  });

/** Rounding may leave a hair of negative resistance on a lossless network; a detector joined to nothing sees no end of it. */
const positive = (z: Complex): Complex =>
  z.re >= 0 && z.re < OPEN && Math.abs(z.im) < OPEN
    ? z
    : { re: Math.max(0, Math.min(OPEN, z.re || 0)), im: Math.max(-OPEN, Math.min(OPEN, z.im || 0)) };
const OPEN: Ohms = 1e12;

/** Resistance the aerial's emf acts through before the set. */
function seriesResistance({ aerial, loop, earth }: SetCircuit, f: Hertz): Ohms {
  return Math.max(aerial ? aerial.resistanceAt(f) + earth.impedanceAt(f).re : loop!.resistanceAt(f), 1e-3);
}

/** 1/V is a straight line in frequency about a resonance; its slope is the loaded Q. */
export function qFromSidebands(
  view: CarrierView,
  lower: CarrierView,
  upper: CarrierView,
  conductance: number,
  f: Hertz,
): number {
  const inverse = (v: CarrierView): Complex => {
    const loadedBy = { re: 1 + conductance * v.z.re, im: conductance * v.z.im };
    // A circuit that no signal reaches still resonates: then its impedance shows it.
    const response = view.open.re === 0 && view.open.im === 0 ? v.z : v.open;
    const d = response.re ** 2 + response.im ** 2;
    return {
      re: (loadedBy.re * response.re + loadedBy.im * response.im) / d,
      im: (loadedBy.im * response.re - loadedBy.re * response.im) / d,
    };
  };
  const slope = magnitude(subtract(inverse(upper), inverse(lower)));
  return (f * slope) / (4 * TEST_TONE * magnitude(inverse(view)));
}

function unloadedQ({ tuningCoil, tuning }: SetCircuit, frequency: Hertz, position: Ratio): number {
  if (!tuningCoil) return Number.NaN;
  const coilQ = (2 * Math.PI * frequency * tuningCoil.inductance) / tuningCoil.resistanceAt(frequency);
  return 1 / (1 / coilQ + tuning.lossTangentAt(position));
}

/** How much of a sideband pair comes through a circuit of this loaded Q, over the carrier's share: the trimming of high notes. */
const sidebandTrim = (loadedQ: number, carrier: Hertz, audio: Hertz): number =>
  1 / hypotenuse(1, (2 * loadedQ * audio) / carrier);
