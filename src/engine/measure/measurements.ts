import {
  aerialReplacement,
  aerialResistance,
  aerialSubstitution,
  earthComparison,
  earthElectrodes,
  fieldStrength,
} from './kinds/aerial-kinds.ts';
import {
  analyserAerial,
  analyserCapacitor,
  analyserCoil,
  analyserEarpiece,
  analyserPeak,
  analyserTransformer,
} from './kinds/analyser-kinds.ts';
import {
  capacitanceWidth,
  decay,
  decayRecord,
  dial,
  doubleHump,
  equalLevels,
  mutualInductance,
  resonance,
  width,
} from './kinds/coil-kinds.ts';
import { detector, detectorBridge, detectorLeakage, detectorVoltmeter } from './kinds/detector-kinds.ts';
import { audibility, phonesImpedance, phonesResistance, phonesSoundCard } from './kinds/phones-kinds.ts';
import type { Measurement } from './measurement.ts';

const KINDS = {
  resonance,
  dial,
  detector,
  width,
  decay,
  'decay-record': decayRecord,
  'equal-levels': equalLevels,
  'capacitance-width': capacitanceWidth,
  'detector-leakage': detectorLeakage,
  'detector-voltmeter': detectorVoltmeter,
  'detector-bridge': detectorBridge,
  'mutual-inductance': mutualInductance,
  'double-hump': doubleHump,
  'aerial-substitution': aerialSubstitution,
  'aerial-replacement': aerialReplacement,
  'aerial-resistance': aerialResistance,
  'earth-electrodes': earthElectrodes,
  'earth-comparison': earthComparison,
  'phones-resistance': phonesResistance,
  'phones-impedance': phonesImpedance,
  'phones-sound-card': phonesSoundCard,
  audibility,
  'field-strength': fieldStrength,
  'analyser-coil': analyserCoil,
  'analyser-capacitor': analyserCapacitor,
  'analyser-aerial': analyserAerial,
  'analyser-earpiece': analyserEarpiece,
  'analyser-transformer': analyserTransformer,
  'analyser-peak': analyserPeak,
};

/** Id of a kind of measurement, as files of readings have it. */
export type MeasurementKind = keyof typeof KINDS;

/** Every kind of measurement, by its id. */
export const MEASUREMENTS: Readonly<Record<MeasurementKind, Measurement>> = KINDS;
