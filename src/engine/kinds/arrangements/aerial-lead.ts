import type { Farads } from '../../units/quantities.ts';
import { type ByKind, byKind } from '../by-kind.ts';
import type { ArrangementDescription, TrapDescription } from './arrangement-schema.ts';

/** What lies between the aerial and the tuned circuit, without the coils. */
export interface AerialLead {
  /** Those in the lead, and those coupled to the coil. */
  readonly traps: readonly TrapDescription[];
  readonly seriesCapacitor?: Farads;
}

interface Fed {
  readonly traps?: readonly TrapDescription[];
  readonly seriesCapacitor?: Farads;
}
const lead = ({ traps = [], seriesCapacitor }: Fed): AerialLead => ({ traps, seriesCapacitor });

const LEADS: ByKind<ArrangementDescription, AerialLead> = {
  direct: lead,
  'series capacitor': lead,
  tapped: lead,
  coupled: lead,
  'two circuits': lead,
  slider: lead,
  variometer: lead,
  // Of a loop only traps coupled to its coil.
  frame: lead,
  'ferrite rod': lead,
  // Whatever there is stands in the list itself.
  elements: () => ({ traps: [] }),
};

/** Traps and series capacitor of an arrangement. */
export const aerialLead = (arrangement: ArrangementDescription): AerialLead => byKind(LEADS, arrangement);
