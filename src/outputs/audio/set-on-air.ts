import { type SetCircuit, setCircuit } from '../../engine/built/set-circuit.ts';
import { magnitude } from '../../engine/numerics/complex.ts';
import { uniform } from '../../engine/numerics/random.ts';
import { textHash } from '../../engine/numerics/text-hash.ts';
import { type TuningCurve, tuningCurve } from '../../engine/reception/dial/dial.ts';
import { type FieldAtSite, type FieldOptions, fieldsAtSite } from '../../engine/reception/path/field.ts';
import {
  bearingOf,
  effectiveHeight,
  emfOf,
  type Receiver,
  receiver,
} from '../../engine/reception/path/receive-station.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { StationDescription } from '../../engine/set/place.ts';
import type { HeardStation } from '../../engine/solvers/envelope/listener-types.ts';
import type { Hertz, Ratio, Volts } from '../../engine/units/quantities.ts';

/** Most stations followed: those strongest at the aerial. */
const MOST_STATIONS = 40;
/** Between these shares of its lowest and highest frequency the pointer is taken to stand. */
const [BELOW, ABOVE] = [0.98, 1.02];

/** A station that is followed. */
export interface OnAir {
  readonly station: StationDescription;
  /** In the description's list. */
  readonly index: number;
  readonly field: FieldAtSite;
  /** The most it sends through the aerial: a frame faces it. */
  readonly emf: Volts;
}

/** What of the set has to be worked out anew when a part changes. */
export interface SetOnAir {
  readonly circuit: SetCircuit;
  readonly ready: Receiver;
  readonly curve: TuningCurve;
  readonly onAir: readonly OnAir[];
}

/** Where the dial stands. */
export interface Pointed {
  readonly position: Ratio;
  /** Place of a second capacitor. */
  readonly other: Ratio;
  readonly pointer: Hertz;
}

export function setOnAir(set: SetDescription, options: FieldOptions): SetOnAir {
  const circuit = setCircuit(set);
  const fieldOf = fieldsAtSite(set.place, options);
  const ready = receiver(circuit, fieldOf);
  const onAir = set.place.stations
    .map((station, index): OnAir => {
      const field = fieldOf(station);
      const emf = emfOf(circuit, station, field, bearingOf(station, field));
      return { station, index, field, emf };
    })
    .sort((a, b) => b.emf - a.emf)
    .slice(0, MOST_STATIONS)
    .sort((a, b) => a.index - b.index);
  return { circuit, ready, curve: tuningCurve(ready), onAir };
}

/** The frequency that a place of the dial tunes. */
export function pointerAt({ curve }: SetOnAir, position: Ratio): Hertz {
  const f = curve.frequencyAt(position);
  return Math.max(curve.lowest * BELOW, Math.min(curve.highest * ABOVE, f));
}

/** A second capacitor is peaked by the other hand; looked for on a grid, since every answer is kept. */
export function otherAt({ circuit: { assembly }, ready }: SetOnAir, position: Ratio, pointer: Hertz): Ratio {
  if (assembly.tuning.length < 2 || assembly.ganged) return position;
  return ready.network.at(2000 * Math.round(pointer / 2000)).peak(ready.smallConductance).other;
}

/** The station nearest to a frequency. */
const nearestTo = ({ onAir }: SetOnAir, pointer: Hertz): OnAir | undefined =>
  onAir.reduce<OnAir | undefined>(
    (b, s) => (!b || Math.abs(s.station.frequency - pointer) < Math.abs(b.station.frequency - pointer) ? s : b),
    undefined,
  );

/** What a listener is joined to: while it is the same, the listener goes on when parts change. */
export const portsOf = ({ circuit: { transducer, assembly }, onAir }: SetOnAir): string =>
  JSON.stringify([
    transducer,
    assembly.outputPort,
    assembly.carrierPort,
    assembly.wiring,
    onAir.map((s) => s.station.name),
  ]);

/** A station keeps its voice wherever it stands in a list. */
export const seedOf = ({ name }: StationDescription, seed: number): number => textHash(name, seed);

/** The stations as they come through the aerial. A frame without a fixed direction is turned to the one the pointer is at. */
export function sourcesOf(set: SetOnAir, pointer: Hertz, seed: number): HeardStation[] {
  const wanted = nearestTo(set, pointer);
  const facing = wanted && bearingOf(wanted.station, wanted.field);
  return set.onAir.map(({ station, field }) => ({
    frequency: station.frequency,
    emf: emfOf(set.circuit, station, field, facing),
    phase: 2 * Math.PI * uniform(seedOf(station, seed))(),
  }));
}

/** Voltage of each station at the detector while nothing loads it. */
export const openLevels = ({ onAir, ready }: SetOnAir, { position, other }: Pointed): number[] =>
  onAir.map((s) => s.emf * magnitude(ready.network.at(s.station.frequency).at(position, other).open));

/** Noise that comes through the aerial about the pointer. */
export function noiseAt(set: SetOnAir, pointer: Hertz): Volts {
  const here = nearestTo(set, pointer);
  return here ? here.field.noise * effectiveHeight(set.circuit, here.station.frequency) : 0;
}
