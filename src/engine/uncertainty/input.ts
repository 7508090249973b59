import type { PartChanges } from '../built/changed-parts.ts';
import type { Spread } from './spread.ts';

/** What a builder can measure, or find out, and so be surer of. */
export type Measurable =
  | 'field strength'
  | 'modulation'
  | 'effective height'
  | 'aerial'
  | 'earth'
  | 'coil'
  | 'detector'
  | 'phones'
  | 'hearing';

/** What of the parts of a set is not known. */
export type PartInput =
  | 'soil'
  | 'contact with the soil'
  | 'effective height'
  | 'aerial capacitance'
  | 'aerial loss'
  | 'coil loss'
  | 'saturation current'
  | 'ideality'
  | 'series resistance'
  | 'leakage'
  | 'contact potential'
  | 'load impedance'
  | 'sensitivity'
  | 'transformer loss';

/** One unmeasured figure of a set: how it is spread, what would settle it, and what it changes in the parts. */
export interface SetInput {
  readonly id: PartInput;
  readonly settledBy: Measurable;
  readonly spread: Spread;
  /** The change of a part for a value of it; of one that only adds decibels at the ear, none. */
  readonly changes?: (value: number) => PartChanges;
  /** Where the level at the ear merely rises by the value, dB. */
  readonly adds?: true;
}
