import type { BuiltSet } from '../built/built-set.ts';
import { changedDetector } from '../built/changed-parts.ts';
import { type SetCircuit, setCircuit } from '../built/set-circuit.ts';
import { PART } from '../network/part-ids.ts';
import { gaussian, uniform } from '../numerics/random.ts';
import { textHash } from '../numerics/text-hash.ts';
import type { Decibels, Farads, Ratio } from '../units/quantities.ts';
import { withWinding } from './coil-faults.ts';
import { bySeverity, type PartFault } from './fault.ts';
import type { Meter } from './ohmmeter.ts';
import { eachBranch, editedElements, type Planted, sound, withCapacitance, withDevice } from './planting.ts';

/** What is not known of a set and its listener, whatever the fault: all observations of one set share it. */
export interface Nuisance {
  readonly inductance: Ratio;
  /** Of every coil at radio frequency. */
  readonly coilLoss: Ratio;
  /** And what the coil's own capacitance differs by. */
  readonly strays: Farads;
  readonly earth: Ratio;
  readonly saturationCurrent: Ratio;
  /** Of ear, phones and field together. */
  readonly level: Decibels;
  /** Of each station listened for. */
  readonly stations: readonly Decibels[];
  readonly meter: Meter;
}

/** σ of what is not known of ear, phones and field together, and of each station by itself. */
export const COMMON_LEVEL: Decibels = 6;
export const STATION_LEVEL: Decibels = 4;

/** σ of stray capacitance, and of the share by which a coil's own capacitance differs from what is calculated. */
const STRAYS: Farads = 4e-12;
const COIL_CAPACITANCE: Ratio = 0.2;

/**
 * One standard deviation of each; common practice, no source.
 * @param circuit of the set
 * @param seed of the draws
 * @param stations how many are listened for
 * @param spread multiplies every deviation but the meter's
 */
export function nuisances(
  { tuningCoil }: Pick<SetCircuit, 'tuningCoil'>,
  seed: number,
  stations: number,
  spread: number,
): () => Nuisance {
  const strays = Math.hypot(STRAYS, COIL_CAPACITANCE * (tuningCoil?.selfCapacitance ?? 0));
  const random = uniform(seed);
  const normal = gaussian(random);
  return () => ({
    inductance: Math.exp(0.015 * spread * normal()),
    coilLoss: Math.exp(0.2 * spread * normal()),
    strays: strays * spread * normal(),
    earth: Math.exp(0.45 * spread * normal()),
    saturationCurrent: Math.exp(0.6 * spread * normal()),
    level: COMMON_LEVEL * spread * normal(),
    stations: Array.from({ length: stations }, () => STATION_LEVEL * spread * normal()),
    meter: { voltage: 0.25 + 0.35 * random(), resistance: bySeverity(1e3, 3e4, random()) },
  });
}

/** The set of a fault before it is planted: as described, or as it was really built. */
export const circuitWith = (built: BuiltSet, { describe }: PartFault): SetCircuit =>
  describe ? setCircuit(describe(built.set)) : built.circuit;

/**
 * A set with a fault planted.
 * @param circuit of the set as really built, from `circuitWith`
 * @param faults in the order in which they are planted, each with its severity 0…1
 * @param nuisance what else is otherwise; left out: nothing
 * @param heard places in the description of the stations listened for
 */
export function planted(
  circuit: SetCircuit,
  faults: readonly { readonly fault: PartFault; readonly severity: number }[],
  heard: readonly number[],
  nuisance?: Nuisance,
): Planted {
  let set = sound(nuisance ? otherwise(circuit, nuisance) : circuit);
  if (nuisance) {
    const { level, stations } = nuisance;
    const own = new Map(heard.map((index, i) => [index, stations[i]] as const));
    set = { ...set, level: (station) => level + (own.get(station) ?? 0) };
  }
  for (const { fault, severity } of faults) set = fault.change?.(set, severity) ?? set;
  return set;
}

function otherwise(
  circuit: SetCircuit,
  { inductance, coilLoss, strays, earth, saturationCurrent }: Nuisance,
): SetCircuit {
  const windings = new Set(
    circuit.assembly
      .baseAt(0.5)
      .elements.flatMap((e) => (e.kind === 'inductor' && e.owner.role === 'winding' ? [e.owner.part] : [])),
  );
  let changed = circuit;
  for (const part of windings) changed = withWinding(changed, part, { inductance, loss: coilLoss });
  const { from, to } = circuit.assembly.tunedPort;
  changed = withCapacitance(changed, PART.tuning, [from, to], strays);
  changed = editedElements(
    changed,
    eachBranch((e) =>
      e.kind === 'resistor' && e.owner.part === PART.earth && typeof e.resistance === 'number'
        ? { ...e, resistance: earth * e.resistance }
        : e,
    ),
  );
  return withDevice(changed, changedDetector(circuit.detector, { saturationCurrent }));
}

/** A number that is always the same for a set. */
export const seedOfSet = (built: BuiltSet): number => textHash(JSON.stringify(built.set));
