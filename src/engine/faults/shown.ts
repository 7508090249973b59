import type { SetCircuit } from '../built/set-circuit.ts';
import { lazilyOf } from '../numerics/lazily.ts';
import { onDial, tuningCurve } from '../reception/dial/dial.ts';
import type { FieldAtSite } from '../reception/path/field.ts';
import { type Receiver, receiver, receiveStation, type TunedStation } from '../reception/path/receive-station.ts';
import type { StationDescription } from '../set/place.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import type { Decibels, Degrees, Farads, Hertz, Ohms, Ratio, Volts } from '../units/quantities.ts';
import { type Meter, type OhmPlace, ohmReadings } from './ohmmeter.ts';
import { PHONES, type Planted } from './planting.ts';

/** What a set shows a person with ears and a meter. One figure for each station listened for, one for each place. */
export interface SetShows {
  /** Above the hearing threshold, where the station is loudest. */
  readonly margins: readonly Decibels[];
  /** Reading of the scale there. */
  readonly scale: readonly Degrees[];
  /** Of the pointer there, 0 open to 1 meshed. */
  readonly positions: readonly Ratio[];
  /** The peak lies within the scale. */
  readonly within: readonly boolean[];
  readonly loadedQ: readonly number[];
  readonly distortion: readonly Ratio[];
  /** Across the phones on the strongest station. */
  readonly directVoltage: Volts;
  /** Ω; infinite: open. */
  readonly ohms: Float64Array;
  /** The same where the fault is a little less and a little more severe: a meter tells finer steps than cases have. */
  readonly ohmsBetween?: readonly Float64Array[];
  /** Margins with one of the faults mended, in the order in which they are planted: what each costs is heard. */
  readonly mended?: readonly (readonly Decibels[])[];
}

/** What stays the same while faults are planted in a set. */
export interface TestBench {
  readonly circuit: SetCircuit;
  /** Places in the description of the stations listened for. */
  readonly stations: readonly number[];
  readonly fieldOf: (station: StationDescription) => FieldAtSite;
  readonly places: readonly OhmPlace[];
}

/** Nothing at all is heard. */
const SILENT: Decibels = -150;
const VOLTMETER: Ohms = 1e7;

/**
 * What a set shows.
 * @param planted the set, with its faults
 * @param bench stations, fields and places of readings
 * @param meter of the readings
 * @returns levels (dB above the threshold), scale readings (degrees), volts and ohms
 */
export function setShows(planted: Planted, bench: TestBench, meter?: Meter): SetShows {
  const { circuit } = planted;
  const { ready, tuned, margins } = listened(planted, bench);
  const strongest = margins.indexOf(Math.max(...margins));
  const scaleOf = (s: TunedStation | undefined): Degrees => circuit.tuning.angleAt(s?.position ?? 0);
  return {
    margins,
    scale: tuned.map(scaleOf),
    positions: tuned.map((s) => s?.position ?? 0),
    within: tuned.map((s) => s?.within ?? false),
    loadedQ: tuned.map((s) => s?.loadedQ ?? Number.NaN),
    distortion: tuned.map((s) => s?.distortion ?? 0),
    directVoltage: directAcrossPhones(ready, tuned, strongest, planted.touchesFrom),
    ohms: ohmReadings(planted, bench.places, bench.circuit, meter),
  };
}

/**
 * How loud each station is, and no more.
 * @param planted the set, with its faults
 * @param bench stations and fields
 * @returns dB above the threshold, of each station listened for
 */
export const marginsOf = (planted: Planted, bench: TestBench): readonly Decibels[] => listened(planted, bench).margins;

/** Every station tuned in where it is loudest. */
function listened(planted: Planted, bench: TestBench) {
  const { circuit } = planted;
  const ready = receiver(circuit, bench.fieldOf);
  const end = endOfDial(bench.circuit);
  const tuned = bench.stations.map((index) => tunedTo(ready, circuit.set.place.stations[index], end));
  const margins = tuned.map((s, i) => {
    if (!s || s.position > planted.touchesFrom) return SILENT;
    const margin = s.heard.margin + planted.level(bench.stations[i]);
    return margin > SILENT ? margin : SILENT;
  });
  return { ready, tuned, margins };
}

/** What one listener, and one making of the coil, changes of what a set shows: no circuit is solved for it. */
export interface Hearer {
  /** Of ear, phones and field together. */
  readonly level: Decibels;
  readonly inductance: Ratio;
  readonly strays: Farads;
}

/**
 * The same set for another ear, with a little more or less inductance and stray capacitance: where a capacitor tunes,
 * its pointer makes up for both, and nothing else changes.
 * @param shown as it is for the usual listener
 * @param planted the set that shows it
 * @param bench stations listened for
 * @param hearer the other one
 */
export function shownTo(shown: SetShows, { circuit }: Planted, { stations }: TestBench, hearer: Hearer): SetShows {
  const [main] = circuit.assembly.tuning;
  const coil = circuit.tuningCoil;
  const louder = (margin: Decibels): Decibels => (margin > SILENT ? margin + hearer.level : margin);
  const levels = {
    margins: shown.margins.map(louder),
    ...(shown.mended ? { mended: shown.mended.map((margins) => margins.map(louder)) } : {}),
  };
  if (!main || !coil || !(main.max > main.min)) return { ...shown, ...levels };
  const scale = [...shown.scale];
  const within = [...shown.within];
  shown.within.forEach((isWithin, i) => {
    if (!isWithin) return;
    const w = 2 * Math.PI * circuit.set.place.stations[stations[i]].frequency;
    const whole = 1 / (w * w * coil.inductance);
    const position = shown.positions[i];
    const wanted = main.capacitanceAt(position) + whole * (1 / hearer.inductance - 1) - hearer.strays;
    const to = main.positionFor(wanted);
    within[i] = to !== undefined;
    if (to !== undefined) scale[i] = circuit.tuning.angleAt(to);
  });
  return { ...shown, ...levels, scale, within };
}

/**
 * Where the dial of a set as described ends. Past the aerial's own resonance, which lies above it, a set may tune once
 * more; a fault hardly moves that, and to find where each faulty dial ends takes half as long again as all the rest.
 */
const endOfDial = lazilyOf((circuit: SetCircuit): Hertz => tuningCurve(receiver(circuit)).highest);

/** A circuit so far from what is built that its detector has no working point gives no sound. */
function tunedTo(ready: Receiver, station: StationDescription, end: Hertz): TunedStation | undefined {
  try {
    const tuned = receiveStation(ready, station);
    return station.frequency > end ? onDial(ready, tuned) : tuned;
  } catch (problem) {
    if (problem instanceof RangeError) return undefined;
    throw problem;
  }
}

/** On the loudest station; a meter of 10 MΩ takes its share. */
function directAcrossPhones(
  { circuit, dcResistance }: Receiver,
  tuned: readonly (TunedStation | undefined)[],
  loudest: number,
  touchesFrom: Ratio,
): Volts {
  const best = tuned.reduce<TunedStation | undefined>(
    (a, b) => (b && b.position <= touchesFrom && (!a || b.steady.directVoltage > a.steady.directVoltage) ? b : a),
    tuned[loudest] && tuned[loudest]!.position <= touchesFrom ? tuned[loudest] : undefined,
  );
  return best ? meteredVoltage({ circuit, dcResistance }, best.steady.directVoltage, best.work.outputResistance) : 0;
}

/**
 * What a meter of 10 MΩ shows of a direct voltage that the detector makes.
 * @param receiver of the set
 * @param voltage V, with no meter
 * @param outputResistance Ω, of the detector as it works
 */
export function meteredVoltage(
  { circuit, dcResistance }: Pick<Receiver, 'circuit' | 'dcResistance'>,
  voltage: Volts,
  outputResistance: Ohms,
): Volts {
  const { z } = linearSolver(circuit.assembly.circuitAt(0.5), [circuit.assembly.outputPort, PHONES]).look(0);
  const share = z[0][0].re > 0 ? Math.min(1, Math.abs(z[1][0].re) / z[0][0].re) : 0;
  const behind = Math.min(outputResistance, dcResistance);
  return (voltage * share * VOLTMETER) / (VOLTMETER + behind);
}
