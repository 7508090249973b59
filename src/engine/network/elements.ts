import type { Complex } from '../numerics/complex.ts';
import type { Farads, Henries, Hertz, Ohms, Volts } from '../units/quantities.ts';
import type { ElementId, Owner } from './ids.ts';

/** A value that may depend on frequency: a coil's resistance, a card former's loss. */
export type AtFrequency<T> = T | ((frequency: Hertz) => T);

interface TwoTerminal {
  /** Unique in the circuit. */
  readonly id: ElementId;
  readonly owner: Owner;
  readonly from: string;
  readonly to: string;
}

export interface Resistor extends TwoTerminal {
  readonly kind: 'resistor';
  readonly resistance: AtFrequency<Ohms>;
}
export interface Capacitor extends TwoTerminal {
  readonly kind: 'capacitor';
  readonly capacitance: Farads;
  /** tan δ of its dielectric; default 0. */
  readonly lossTangent?: AtFrequency<number>;
}
/** Inductance in series with its own resistance. */
export interface Inductor extends TwoTerminal {
  readonly kind: 'inductor';
  readonly inductance: Henries;
  readonly resistance: AtFrequency<Ohms>;
}
/** Mutual inductance between two inductors; positive when both `from` ends are dotted. */
export interface Mutual {
  readonly kind: 'mutual';
  readonly id: ElementId;
  readonly first: ElementId;
  readonly second: ElementId;
  readonly mutual: Henries;
}
/** Anything known only by its impedance: a long aerial, a measured one. */
export interface Impedance extends TwoTerminal {
  readonly kind: 'impedance';
  readonly impedance: (frequency: Hertz) => Complex;
}
/** Where the emf of the field enters: `to` is driven positive of `from`. Its impedance is zero. */
export interface Source extends TwoTerminal {
  readonly kind: 'source';
  readonly emf: Complex;
}
/** Constant voltage, `to` positive: a bias cell. Zero impedance at every other frequency. */
export interface Cell extends TwoTerminal {
  readonly kind: 'cell';
  readonly voltage: Volts;
}
/** The one-way device, conducting from `from` (anode) to `to` (cathode). Open circuit to the linear solver. */
export interface DetectorElement extends TwoTerminal {
  readonly kind: 'detector';
}

export type LinearElement = Resistor | Capacitor | Inductor | Impedance | Source | Cell;
/** One element of a circuit, between two nodes or between two inductors. */
export type Element = LinearElement | Mutual | DetectorElement;

/** The node all voltages are counted from. */
export const EARTH = 'earth';

/** A list of elements between named nodes; everything the solvers need and nothing about radio. */
export interface Circuit {
  readonly elements: readonly Element[];
}

export const valueAt = <T>(value: AtFrequency<T>, frequency: Hertz): T =>
  typeof value === 'function' ? (value as (f: Hertz) => T)(frequency) : value;
