import type { Farads, Henries, Ohms } from '../../units/quantities.ts';

/** A two-terminal element of a load; the same shape as the circuit's own, so that a list of them can be put into one. */
interface Between {
  /** Unique in the circuit: starts with the load's prefix. */
  readonly name: string;
  readonly from: string;
  readonly to: string;
}
export type LoadElement =
  | (Between & { readonly kind: 'resistor'; readonly resistance: Ohms })
  | (Between & { readonly kind: 'capacitor'; readonly capacitance: Farads; readonly lossTangent?: number })
  | (Between & { readonly kind: 'inductor'; readonly inductance: Henries; readonly resistance: Ohms })
  | {
      readonly kind: 'mutual';
      readonly name: string;
      readonly first: string;
      readonly second: string;
      readonly mutual: Henries;
    };

/** A load as elements between two nodes of a circuit, and where its sound comes from. */
export interface LoadNetwork {
  readonly elements: readonly LoadElement[];
  /** The voltage that makes the sound: of `from` over `to`, across (among others) the element named. */
  readonly output: { readonly from: string; readonly to: string; readonly element: string };
}
