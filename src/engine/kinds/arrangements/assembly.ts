import type { Warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { ElementId, Owner } from '../../network/ids.ts';
import type { Port } from '../../network/port.ts';
import type { Farads, Ratio } from '../../units/quantities.ts';

/** A variable capacitor in the circuit, kept out of `base` so that turning it costs no new solution. */
export interface TuningPort {
  readonly id: ElementId;
  readonly owner: Owner;
  readonly port: Port;
  /** At a pointer position, 0 open … 1 meshed. */
  readonly capacitanceAt: (position: Ratio) => Farads;
  readonly lossTangentAt: (position: Ratio) => number;
  readonly min: Farads;
  readonly max: Farads;
  /** The position for a capacitance, or undefined beyond its ends. */
  readonly positionFor: (capacitance: Farads) => Ratio | undefined;
}

/** A set as a circuit: what arrangements make and solvers take. */
export interface Assembly {
  /** The circuit with the pointer at a position, tuning capacitors included; what the time-domain engines take. */
  readonly circuitAt: (position: Ratio, other?: Ratio) => Circuit;
  /** Everything but the tuning capacitors; follows the position only where a coil does the tuning. */
  readonly baseAt: (position: Ratio) => Circuit;
  /** None where a coil does the tuning. The first is the pointer's. */
  readonly tuning: readonly TuningPort[];
  /** The second capacitor follows the first; otherwise it is peaked for each station. */
  readonly ganged: boolean;
  /** Where the carrier meets the detector. */
  readonly carrierPort: Port;
  /** Where the detector's direct and audio current flow. */
  readonly outputPort: Port;
  readonly wiring: 'single' | 'full-wave' | 'doubler';
  /** Across the whole tuned circuit. */
  readonly tunedPort: Port;
  /** Sentences about the arrangement itself. */
  readonly warnings: readonly Warning[];
}

/** The detector's cathode and the load's live end. */
export const OUT = 'out';
/** Where the aerial's lead-in reaches the set. */
export const AERIAL = 'aerial';
