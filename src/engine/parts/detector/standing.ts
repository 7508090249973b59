import type { Ohms, Siemens, Volts } from '../../units/quantities.ts';
import { type AveragedDetector, averagedCurrents } from './averaged.ts';
import { steadyDetector } from './steady.ts';

/** Where a detector stands with no carrier: a bias cell or a hot cathode sends its current through the load. */
export interface StandingPoint {
  /** Across the load; 0 where nothing flows of itself. */
  readonly directVoltage: Volts;
  /** Across the detector. */
  readonly deviceVoltage: Volts;
  /** What it offers a faint carrier there. */
  readonly conductance: Siemens;
  /** Of its mean current by the direct voltage across it. */
  readonly directConductance: Siemens;
}

/** Less current than this, A, moves nothing. */
const NOTHING = 1e-15;
const NO_SOURCE = { re: 0, im: 0 };

/** @param dcResistance what the mean current flows through, from 0 Ω. @throws RangeError for values outside `steadyDetector`'s. */
export function standingPoint(averaged: AveragedDetector, dcResistance: Ohms, bias: Volts): StandingPoint {
  const out = averagedCurrents();
  averaged.at(0, bias, out);
  const directVoltage =
    Math.abs(out.mean) > NOTHING
      ? steadyDetector({ averaged, openCircuit: 0, sourceImpedance: NO_SOURCE, dcResistance, bias }).directVoltage
      : 0;
  averaged.at(0, bias - directVoltage, out);
  return {
    directVoltage,
    deviceVoltage: bias - directVoltage,
    conductance: out.fundamentalByAmplitude,
    directConductance: out.meanByDirect,
  };
}
