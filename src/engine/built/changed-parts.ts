import { isLoop } from '../kinds/loops.ts';
import { earthTimes } from '../kinds/measured/parts-as-measured.ts';
import { earthModel, loadModel, resistivityOf } from '../kinds/models.ts';
import { stretched } from '../parts/capacitor/stretched.ts';
import type { Detector, DevicePoint } from '../parts/detector/detector.ts';
import { exponentialDetector } from '../parts/detector/exponential.ts';
import type { EarthModel } from '../parts/earth/earth.ts';
import type { Load } from '../parts/load/model.ts';
import type { SetDescription } from '../set/description.ts';
import { type Decibels, type Ratio, temperatureVoltage, type Volts } from '../units/quantities.ts';
import type { AerialInCircuit } from './aerial-elements.ts';
import { type CoilFactors, type CoilPart, scaledCoil } from './coil-parts.ts';
import type { LoopAerial } from './loop-parts.ts';
import { aerialOver, type SetParts, workingFrequency } from './set-parts.ts';
import { changedAerial } from './surrounded-aerial.ts';

/** What of a set's parts is otherwise than described. Left out: as described. */
export interface PartChanges {
  /** Factor on the resistivity of the soil that the earth lies in. */
  readonly soilResistivity?: Ratio;
  /** Factor on the resistance of an earth as a whole. */
  readonly earthResistance?: Ratio;
  /** Factors. */
  readonly effectiveHeight?: Ratio;
  readonly aerialCapacitance?: Ratio;
  /** Factor on what trees, walls and insulators around the wire lose. */
  readonly aerialLoss?: Ratio;
  /** Of coils, by their place in the set's list. */
  readonly coils?: Readonly<Record<number, CoilFactors>>;
  readonly loop?: CoilFactors;
  /** Factor on the coupling of the two coils that an arrangement has. */
  readonly coupling?: Ratio;
  /** Factors on what the tuning capacitor has at the ends of its scale. */
  readonly tuningMinimum?: Ratio;
  readonly tuningMaximum?: Ratio;
  /** Factors on an exponential detector; `ideality` is added. */
  readonly saturationCurrent?: Ratio;
  readonly ideality?: number;
  readonly seriesResistance?: Ratio;
  readonly leakage?: Ratio;
  /** Moves the curve of a valve along its voltage. */
  readonly contactPotential?: Volts;
  /** Factor on the inductance of phones, or the capacitance of an earpiece. */
  readonly loadImpedance?: Ratio;
  /** Added to what the phones or the loudspeaker give. */
  readonly sensitivity?: Decibels;
}

/** Two sets of changes made together: of what both change, the second stands. */
export function together(first: PartChanges, second: PartChanges): PartChanges {
  const both = { ...first, ...second };
  if (!first.coils && !first.loop) return both;
  const coils = { ...first.coils };
  for (const [i, changes] of Object.entries(second.coils ?? {})) coils[Number(i)] = { ...coils[Number(i)], ...changes };
  return { ...both, coils: first.coils && coils, loop: first.loop && { ...first.loop, ...second.loop } };
}

/** The parts of a set with changes made: what is not changed is shared. @throws RangeError where no such part can be. */
export function changedParts(set: SetDescription, parts: SetParts, changes: PartChanges): SetParts {
  const earth = changedEarth(set, parts.earth, changes);
  return {
    ...parts,
    earth,
    aerial: aerialWith(set, parts, earth, changes),
    tuning: stretched(parts.tuning, { minimum: changes.tuningMinimum, maximum: changes.tuningMaximum }),
    loop: parts.loop && changedLoop(parts.loop, changes),
    coils: changes.coils ? parts.coils.map((coil, i) => changedCoil(coil, changes.coils?.[i])) : parts.coils,
    coupling: (parts.coupling ?? 1) * (changes.coupling ?? 1),
    detector: changedDetector(parts.detector, changes),
    load: changedLoad(set, parts.load, changes),
  };
}

function changedEarth(set: SetDescription, earth: EarthModel, changes: PartChanges): EarthModel {
  const { soilResistivity = 1, earthResistance = 1 } = changes;
  let changed = earth;
  const { earth: written } = set;
  if (soilResistivity !== 1 && written.kind !== 'measured') {
    const usualResistivity = resistivityOf(written);
    const resistivity = Math.min(1e6, usualResistivity * soilResistivity);
    changed = earthModel(
      { ...written, soil: 'as its resistivity', soilResistivity: resistivity },
      { frequency: workingFrequency(set), usualResistivity },
    );
  }
  return earthTimes(changed, earthResistance);
}

function aerialWith(
  set: SetDescription,
  parts: SetParts,
  earth: EarthModel,
  changes: PartChanges,
): AerialInCircuit | undefined {
  if (isLoop(set.aerial) || !parts.aerial) return parts.aerial;
  const { effectiveHeight = 1, aerialCapacitance = 1, aerialLoss = 1 } = changes;
  const aerial = earth === parts.earth ? parts.aerial : aerialOver(set, set.aerial, earth);
  const lossTangent = aerial.lossTangent * aerialLoss;
  return changedAerial(aerial, { effectiveHeight, capacitance: aerialCapacitance, lossTangent });
}

function changedCoil(coil: CoilPart, changes: CoilFactors | undefined): CoilPart {
  if (!changes) return coil;
  const inductanceFactor = (changes.inductance ?? 1) * (coil.inductanceFactor ?? 1);
  return { ...scaledCoil(coil, changes), inductanceFactor };
}

function changedLoop(loop: LoopAerial, { effectiveHeight = 1, loop: changes }: PartChanges): LoopAerial {
  if (effectiveHeight === 1 && !changes) return loop;
  return {
    ...(changes ? scaledCoil(loop, changes) : loop),
    effectiveHeightAt: (f) => effectiveHeight * loop.effectiveHeightAt(f),
  };
}

/** A detector with changes made. @throws RangeError where no such device can be. */
export function changedDetector(detector: Detector, changes: PartChanges): Detector {
  const { saturationCurrent = 1, ideality = 0, seriesResistance = 1, leakage = 1, contactPotential = 0 } = changes;
  const { law, temperature } = detector;
  if (law && !(saturationCurrent === 1 && ideality === 0 && seriesResistance === 1 && leakage === 1)) {
    const changed = exponentialDetector({
      saturationCurrent: Math.min(0.5, law.saturationCurrent * saturationCurrent),
      ideality: Math.max(0.9, law.slopeVoltage / temperatureVoltage(temperature) + ideality),
      seriesResistance: law.seriesResistance * seriesResistance,
      leakage: law.leakage * leakage,
      junctionCapacitance: detector.junctionCapacitance,
      temperature,
      reverseLimit: detector.reverseLimit,
    });
    return { ...changed, warnings: detector.warnings };
  }
  if (detector.kind !== 'thermionic' || contactPotential === 0) return detector;
  const { current, conductance, evaluate } = detector;
  return {
    ...detector,
    current: (v) => current(v - contactPotential),
    conductance: (v) => conductance(v - contactPotential),
    evaluate: (v, out: DevicePoint) => evaluate(v - contactPotential, out),
    currentScale: Math.max(current(-contactPotential), 1e-15),
  };
}

function changedLoad(set: SetDescription, load: Load, { loadImpedance = 1, sensitivity = 0 }: PartChanges): Load {
  const changed = loadImpedance === 1 ? load : withImpedance(set, load, loadImpedance);
  if (sensitivity === 0) return changed;
  const { soundPressureAt } = changed;
  return { ...changed, soundPressureAt: (f, volts) => soundPressureAt(f, volts) + sensitivity };
}

function withImpedance({ load: written }: SetDescription, load: Load, factor: Ratio): Load {
  if (written.kind === 'crystal earpiece') {
    const capacitance = written.measured?.capacitance?.value ?? written.capacitance;
    const measured = { ...written.measured, capacitance: undefined };
    return loadModel({ ...written, measured, capacitance: capacitance * factor });
  }
  if (written.kind !== 'phones') return load;
  const winding = loadModel({ ...written, transformer: undefined })
    .elements('from', 'to')
    .elements.find((e) => e.kind === 'inductor');
  if (winding?.kind !== 'inductor') return load;
  const measured = { ...written.measured, impedance: undefined };
  return loadModel({ ...written, measured, inductance: winding.inductance * factor });
}
