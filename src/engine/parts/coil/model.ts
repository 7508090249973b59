import type { Warning } from '../../facts/warning.ts';
import type { Farads, Henries, Hertz, Kilograms, Metres, Ohms, Ratio } from '../../units/quantities.ts';
import type { CoilShape } from './spec.ts';
import type { Winding } from './winding.ts';

/** Part of a coil, in turns from its start. */
export type TurnSpan = readonly [from: number, to: number];

/** Everything the rest of the tool asks of a coil. Costly things are worked out when first asked for and kept. */
/**
 * Where a self-capacitance comes from: Medhurst's measurements of single-layer coils with one end earthed; the energy of the
 * field with the voltage rising evenly along the wire; what is typical; what was given.
 */
export type SelfCapacitanceMethod = 'single-layer-table' | 'field-energy' | 'typical' | 'given';

/** What a coil does in a circuit: inductance, resistance and self-capacitance, with their spread. */
export interface CoilModel {
  readonly shape: CoilShape;
  readonly turns: number;
  /** At low frequency, current spread evenly over the wire. */
  readonly inductance: Henries;
  readonly dcResistance: Ohms;
  readonly wireLength: Metres;
  /** Along the axis: turns × pitch of a layer, or the thickness of a disc. */
  readonly windingLength: Metres;
  /** Over the covering. */
  readonly outerDiameter: Metres;
  /** Wire with its covering. */
  readonly weight: Kilograms;
  readonly selfCapacitance: Farads;
  /** How the self-capacitance was found. */
  readonly selfCapacitanceMethod: SelfCapacitanceMethod;
  /** tan δ of the self-capacitance: that of former and covering, by the share of the field in them. */
  readonly selfCapacitanceLoss: Ratio;
  readonly selfResonance: Hertz;
  /** True inductance with the current crowded as it is at this frequency; self-capacitance left out. */
  inductanceAt(frequency: Hertz): Henries;
  /** Of the wire alone. */
  wireResistanceAt(frequency: Hertz): Ohms;
  /** Series resistance that stands for the loss in former and covering: ω³L²C·tan δ. */
  dielectricResistanceAt(frequency: Hertz): Ohms;
  /** Both together: resistance in series with the inductance, self-capacitance left out. */
  resistanceAt(frequency: Hertz): Ohms;
  /** ωL/R of the coil by itself. */
  qAt(frequency: Hertz): Ratio;
  /** Of the built coil, 90 %: winding length and hand decide. */
  readonly inductanceRange: readonly [Henries, Henries];
  readonly selfCapacitanceRange: readonly [Farads, Farads];
  /** Where Q of the built coil may lie, 90 %. */
  qRangeAt(frequency: Hertz): readonly [Ratio, Ratio];
  /** Inductance of a part by itself. */
  partial(from: number, to: number): Henries;
  /** Mutual inductance of two parts. */
  mutual(first: TurnSpan, second: TurnSpan): Henries;
  /** Wire from the start to a turn. */
  wireLengthTo(turn: number): Metres;
  /** The turns in space; none for a core or a measured coil. */
  readonly winding?: Winding;
  readonly warnings: readonly Warning[];
}
